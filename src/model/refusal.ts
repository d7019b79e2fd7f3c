/** What a field would have accepted, as data: words and units are made in src/words. */
export type Allowed =
  | {
      readonly kind: 'range';
      readonly min?: number;
      readonly max?: number;
      readonly whole?: boolean;
      /** How its numbers are written, where the field holds no number of its own. */
      readonly quantity?: 'length';
    }
  | { readonly kind: 'choice'; readonly values: readonly (string | number | boolean)[] }
  /** Text of so many characters, or a list of so many entries. */
  | { readonly kind: 'count'; readonly of: string; readonly min: number; readonly max: number }
  /** A place in the room: within its bounds and, where it is those that are passed, its walls or its ceiling there. */
  | {
      readonly kind: 'inside';
      readonly minM: readonly number[];
      readonly maxM: readonly number[];
      readonly past?: 'walls' | { readonly ceilingM: number };
    }
  | { readonly kind: 'words'; readonly words: string }
  /** Nothing: the room is open for change in another tab. */
  | { readonly kind: 'otherTab' };

/** Why a file or an edit was not accepted. */
export interface Refusal {
  /** The path from the top of the project, for example `loudspeakers[3].id`. */
  readonly field: string;
  /** The value as it was found; undefined where nothing was. */
  readonly holds: unknown;
  /** Goes before the value when its sense is not plain from the field, for example "an ear at". */
  readonly lead?: string;
  /** Follows the value, for example "already used by loudspeakers[0]". */
  readonly aside?: string;
  readonly allowed: Allowed;
}
