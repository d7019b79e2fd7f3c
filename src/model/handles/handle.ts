import type { Vec3 } from '../../math/vec3.ts';
import type { Edit } from '../commands/edit.ts';
import type { ItemRef } from '../project.ts';
import type { Refusal } from '../refusal.ts';
import type { SnapReason } from '../snap/reason.ts';

export type HandleKind =
  | 'place'
  | 'height'
  | 'aim'
  | 'facing'
  | 'recline'
  | 'rowPlace'
  | 'rowDistance'
  | 'riserHeight'
  | 'riserFront'
  | 'riserBack'
  | 'pictureAcross'
  | 'pictureOff'
  | 'pictureHeight'
  | 'pictureCorner'
  | 'projectorPlace'
  | 'projectorHeight'
  | 'objectSide'
  | 'slide'
  | 'edge'
  | 'wall'
  | 'corner'
  | 'ceiling'
  | 'bend'
  | 'groupPlace'
  | 'groupHeight';

/** What a handle can be moved along: the level it lies on, one direction, or a surface of two unit directions. */
export type HandleAxis =
  | { readonly kind: 'level' }
  | { readonly kind: 'line'; readonly direction: Vec3 }
  | { readonly kind: 'surface'; readonly right: Vec3; readonly up: Vec3 };

/** A place by which the hand can change something, as plain data: what moves, along what, by which command. */
export interface Handle {
  /** Steady while the thing stays chosen, for example `loudspeaker:L/height`. */
  readonly id: string;
  readonly kind: HandleKind;
  readonly ref: ItemRef;
  /** What it changes, in a word or two: for ears as well as eyes. */
  readonly label: string;
  readonly atM: Vec3;
  readonly axis: HandleAxis;
  /** The command of src/model/commands it calls. */
  readonly command: string;
  /** Which edge, side, corner or end is meant, where there are several. */
  readonly part?: string;
  /** What it moves, in a word that always stands at it, where another handle of the same drawing may stand beside it. */
  readonly tag?: string;
}

export interface PullOptions {
  /** How near a line has to be to draw the thing, metres; 0 lets go of snapping. */
  readonly reachM: number;
  /** Whether the other half of a pair moves as its mirror image. */
  readonly pairs: boolean;
  /** All that is chosen: a handle of several things moves all of them. */
  readonly chosen: readonly ItemRef[];
}

/** What a pull comes to: the document or why not, and why the thing stopped where it did. */
export interface Pulled {
  readonly edit: Edit;
  readonly reasons: readonly SnapReason[];
  /** What kept it from going all the way, where it went as far as it may. */
  readonly stopped?: Refusal;
}

export const UP: HandleAxis = { kind: 'line', direction: [0, 1, 0] };
export const ALONG: HandleAxis = { kind: 'line', direction: [0, 0, 1] };
export const ACROSS: HandleAxis = { kind: 'line', direction: [1, 0, 0] };
export const LEVEL: HandleAxis = { kind: 'level' };

export const handle = (
  ref: ItemRef,
  kind: HandleKind,
  label: string,
  atM: Vec3,
  axis: HandleAxis,
  command: string,
  part?: string,
): Handle => ({
  id: `${ref.kind}:${ref.id}/${kind}${part === undefined ? '' : `:${part}`}`,
  kind,
  ref,
  label,
  atM,
  axis,
  command,
  ...(part === undefined ? {} : { part }),
});
