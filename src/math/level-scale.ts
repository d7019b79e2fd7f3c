/** The range a level map is drawn over; contours stand every `stepDb`, heavier every second one. */
export interface LevelScale {
  readonly lowDb: number;
  readonly highDb: number;
  readonly stepDb: number;
}

/** Most of a floor at the ears lies within 18 dB of its top; nulls deeper than this share one colour. */
const SPAN_DB = 24;
const SNAP_DB = 3;
const STEP_DB = 3;
/** The loudest 25th of a map lies at the mouths of sources and would stretch the scale for all the rest. */
const TOP_SHARE = 0.96;
/** How far the top may leave the present scale before the scale follows: over it a little, under it by two snaps. */
const OVER_DB = 1.5;
const UNDER_DB = 6;

/** The level that a 25th of the map exceeds; NaN, which stands for outside the room, is left out. */
const topOf = (levelsDb: Float32Array): number => {
  const ascending = levelsDb.filter((level) => !Number.isNaN(level)).sort();
  return ascending[Math.min(ascending.length - 1, Math.floor(TOP_SHARE * ascending.length))];
};

/**
 * 24 dB under the map's top, snapped to whole 3 dB.
 * @param previous the scale shown before: kept while it still fits, so that it does not jump under a moving hand
 */
export const levelScale = (levelsDb: Float32Array, previous: LevelScale | null = null): LevelScale => {
  const topDb = topOf(levelsDb);
  if (!Number.isFinite(topDb)) return previous ?? { lowDb: -SPAN_DB, highDb: 0, stepDb: STEP_DB };
  if (previous && topDb <= previous.highDb + OVER_DB && topDb > previous.highDb - UNDER_DB) return previous;
  // Adding 0 turns a negative zero into a plain one: the legend prints it.
  const highDb = Math.ceil(topDb / SNAP_DB) * SNAP_DB + 0;
  return { lowDb: highDb - SPAN_DB, highDb, stepDb: STEP_DB };
};

/** Where a level falls on the scale: 0 at its low end, 1 at its high end, clamped. */
export const shareOf = (levelDb: number, scale: LevelScale): number =>
  Math.min(1, Math.max(0, (levelDb - scale.lowDb) / (scale.highDb - scale.lowDb)));
