import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { seatPoses } from '../../model/seating.ts';

/** How a slice lies: level; standing from side wall to side wall; standing from the picture to the back. */
export type SlicePlaneName = 'level' | 'across' | 'along';
/** What its colours say: level; signed pressure; level less the seats' mean. */
export type SliceAs = 'level' | 'pressure' | 'difference';

/** What a person asks the bass floor to show. */
export interface SliceWish {
  readonly plane: SlicePlaneName;
  /** Of a level slice: the chosen seat's ears, the carpet, or metres. */
  readonly height: 'ear' | 'carpet' | number;
  /** Where a slice across the room stands, the document's z; null for the chosen seat's ears. */
  readonly acrossZM: number | null;
  /** Where a slice along the room stands, the document's x; null for the chosen seat's ears. */
  readonly alongXM: number | null;
  readonly span: 'one' | 'band';
  readonly bandHz: readonly [number, number];
  readonly as: SliceAs;
}

/** Where a slice really is, in the document's axes. */
export interface Cut {
  readonly normal: 'x' | 'y' | 'z';
  readonly atM: number;
}

/** The carpet is not the floor itself but where a hand would lie on it. */
const CARPET_M = 0.02;
/** A slice keeps this far from the walls it is parallel to. */
const WALL_M = 0.01;

const earsOf = (project: Project, seatId: string): Vec3 => {
  const poses = seatPoses(project);
  return (poses.find(({ seat }) => seat.id === seatId) ?? poses[0]).earM;
};

const between = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** The plane a wish means, inside the room's bounds. */
export const cutOf = (project: Project, wish: SliceWish, seatId: string): Cut => {
  const { minM, maxM } = roomShape(project);
  const ear = earsOf(project, seatId);
  const inside = (value: number, axis: 0 | 1 | 2) => between(value, minM[axis] + WALL_M, maxM[axis] - WALL_M);
  if (wish.plane === 'across') return { normal: 'z', atM: inside(wish.acrossZM ?? ear[2], 2) };
  if (wish.plane === 'along') return { normal: 'x', atM: inside(wish.alongXM ?? ear[0], 0) };
  const { height } = wish;
  return { normal: 'y', atM: inside(height === 'ear' ? ear[1] : height === 'carpet' ? CARPET_M : height, 1) };
};

/** Frequencies a band's mean is taken over: enough for a picture, few enough for a moving hand. */
const BAND_POINTS = 12;

/** A band, if one is meant: the sign of a pressure belongs to one frequency. */
export const bandOf = ({ span, bandHz, as }: SliceWish): readonly [number, number] | null =>
  span === 'band' && as !== 'pressure' ? bandHz : null;

/** The frequencies of a slice: the cursor's, or the middles of twelve equal parts of the band's octaves. */
export const sliceFrequenciesHz = (wish: SliceWish, frequencyHz: number): Float64Array => {
  const band = bandOf(wish);
  if (!band) return Float64Array.of(frequencyHz);
  const [low, high] = band;
  return Float64Array.from({ length: BAND_POINTS }, (_, i) => low * (high / low) ** ((i + 0.5) / BAND_POINTS));
};
