import type { DecayReadout } from '../../../analysis/types.ts';
import type { Answers, UnitSlices } from '../../../compute/protocol.ts';
import type { Detail, UnitResponses } from '../../../engines/bass/room-field.ts';

/** One answer of the engine and what it was asked for; the latest of its kind. */
export interface Keeping<T> {
  readonly key: string | null;
  readonly detail: Detail;
  /** The answer if it was asked for under this key, however finely. */
  of(key: string | null): T | null;
  /** Whether there is an answer under this key, at least this fine. */
  has(key: string, detail: Detail): boolean;
  put(key: string, value: T, detail?: Detail): void;
}

const keeping = <T>(): Keeping<T> => {
  let kept: { readonly key: string; readonly value: T; readonly detail: Detail } | null = null;
  return {
    get key() {
      return kept?.key ?? null;
    },
    get detail() {
      return kept?.detail ?? 'first';
    },
    of: (key) => (kept !== null && kept.key === key ? kept.value : null),
    has: (key, detail) => kept !== null && kept.key === key && (detail === 'first' || kept.detail === 'fine'),
    put(key, value, detail = 'fine') {
      kept = { key, value, detail };
    },
  };
};

/**
 * The engine's answers as they came, apart from gain, delay and polarity: an edit of those is shown from here and calls no
 * engine.
 */
export interface Kept {
  readonly responses: Keeping<UnitResponses>;
  /** The slice's unit fields by frequency, then by subwoofer. */
  readonly slices: Keeping<readonly UnitSlices['fields'][]>;
  /** The seats at the slice's frequencies. */
  readonly mean: Keeping<UnitResponses>;
  readonly band: Keeping<{ readonly low: UnitResponses; readonly high: UnitResponses }>;
  readonly modes: Keeping<Answers['modes']>;
  /** The seats on the frequencies of the curves. */
  readonly fine: Keeping<UnitResponses>;
  /** The modes' shapes at subwoofers and seats. */
  readonly shapes: Keeping<Answers['shapes']>;
  /** The chosen seat on the line of a response over time, and how long its picture shows. */
  readonly decay: Keeping<{ readonly units: UnitResponses; readonly showsS: number }>;
  /** The picture made of that, as played. */
  readonly decayPicture: Keeping<DecayReadout>;
}

export const emptyKept = (): Kept => ({
  responses: keeping(),
  slices: keeping(),
  mean: keeping(),
  band: keeping(),
  modes: keeping(),
  fine: keeping(),
  shapes: keeping(),
  decay: keeping(),
  decayPicture: keeping(),
});
