import { shareOfHz } from './levels.ts';

/** Where things stand in the ribbon, in CSS pixels: a heading, modes, strips between `top` and `bottom`, an axis. */
export interface RibbonLayout {
  readonly width: number;
  readonly height: number;
  /** The strips' edges: names stand left of them, the colour scale right. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const LEAST_NAMES = 52;
const MOST_NAMES = 104;
/** A letter of a name with its share of the gap to the strips, at the widest they are set. */
const LETTER = 6.6;
const NAME_GAP = 10;
const SCALE = 66;
const HEADING = 31;
const AXIS = 24;

/** Names stand left of the strips, which begin where the longest, of `letters` letters, ends. */
export const ribbonLayout = (width: number, height: number, letters = 0): RibbonLayout => {
  const left = Math.min(MOST_NAMES, Math.max(LEAST_NAMES, Math.ceil(letters * LETTER + NAME_GAP)));
  return {
    width,
    height,
    left,
    right: Math.max(left + 1, width - SCALE),
    top: HEADING,
    bottom: Math.max(HEADING + 1, height - AXIS),
  };
};

export const xOfHz = ({ left, right }: RibbonLayout, hz: number): number => left + shareOfHz(hz) * (right - left);

/** The curve's axis in decibels: on whole 6 dB, so that it holds still while one sweeps. */
export interface LevelAxis {
  readonly lowDb: number;
  readonly highDb: number;
}

const SNAP_DB = 6;
const LEAST_SPAN_DB = 24;
const MOST_SPAN_DB = 96;
/** Quieter than this nothing plays. */
const SILENT_DB = -200;

/** Round the whole of the curves, so that nothing of them is cut off, and of the colours where they have a scale. */
export const levelAxis = (curvesDb: readonly Float64Array[], colours: LevelAxis | null = null): LevelAxis => {
  let top = colours?.highDb ?? Number.NEGATIVE_INFINITY;
  let bottom = colours?.lowDb ?? Number.POSITIVE_INFINITY;
  for (const levelDb of curvesDb) {
    for (const level of levelDb) {
      if (!(level > SILENT_DB)) continue;
      top = Math.max(top, level);
      bottom = Math.min(bottom, level);
    }
  }
  if (top < bottom) return { lowDb: -LEAST_SPAN_DB, highDb: 0 };
  const highDb = Math.ceil(top / SNAP_DB) * SNAP_DB;
  const span = highDb - Math.floor(bottom / SNAP_DB) * SNAP_DB;
  return { lowDb: highDb - Math.min(MOST_SPAN_DB, Math.max(LEAST_SPAN_DB, span)), highDb };
};

/** Where a level lies on the axis: 0 at its low end, 1 at its high end, clamped. */
export const shareOfLevel = (levelDb: number, { lowDb, highDb }: LevelAxis): number =>
  Math.min(1, Math.max(0, (levelDb - lowDb) / (highDb - lowDb)));
