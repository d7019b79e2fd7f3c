/** The range levels are coloured over; contours stand every `stepDb`, heavier every second one. */
export interface LevelScale {
  readonly lowDb: number;
  readonly highDb: number;
  readonly stepDb: number;
}

/** Either span holds what is shown, or the wide one and the quietest tenth beyond it shares one colour. */
const SPAN_DB = { narrow: 24, wide: 36 };
const SNAP_DB = 3;
const STEP_DB = 3;
/** The loudest 25th, of a map at the mouths of sources, would stretch the scale for all the rest. */
const TOP_SHARE = 0.96;
/** Nulls, the quietest tenth, would stretch it for all the rest as well. */
const LOW_SHARE = 0.1;
/** How far the top may leave the present scale before the scale follows: over it a little, under it by two snaps. */
const OVER_DB = 1.5;
const UNDER_DB = 6;
/** How far what is shown may reach beyond the narrow span, or fall short of it, before the present span is given up. */
const BEYOND_DB = 3;
/** Quieter than this nothing plays. */
const SILENT_DB = -200;

/** The levels that are heard, ascending: NaN stands for outside the room, -300 dB for silence. */
const heard = (levelsDb: ArrayLike<number>): Float64Array =>
  Float64Array.from(levelsDb)
    .filter((level) => level > SILENT_DB)
    .sort();

const atShare = (ascending: Float64Array, share: number): number =>
  ascending[Math.min(ascending.length - 1, Math.floor(share * ascending.length))];

/** On whole 3 dB over the level; the present one while that still fits, so that it does not jump under a moving hand. */
const snapped = (topDb: number, present: number | null): number => {
  if (present !== null && topDb <= present + OVER_DB && topDb > present - UNDER_DB) return present;
  // Adding 0 turns a negative zero into a plain one: the legend prints it.
  return Math.ceil(topDb / SNAP_DB) * SNAP_DB + 0;
};

/** The top of one map's levels, snapped; `present` where nothing is heard. */
export const mapTopDb = (levelsDb: Float32Array, present: number | null): number => {
  const ascending = heard(levelsDb);
  return ascending.length === 0 ? (present ?? 0) : snapped(atShare(ascending, TOP_SHARE), present);
};

/**
 * One scale for the seats' curves and every map shown with them, so that a colour means one level in all of them and
 * keeps its meaning while the frequency is swept: from the seats' top 24 dB down, or 36 dB where less would leave more
 * than a tenth below its end. A map louder than any seat ever is keeps the scale's end there.
 * @param previous the scale shown before: kept while it still fits
 */
export const levelScale = (seatsDb: readonly Float64Array[], previous: LevelScale | null = null): LevelScale => {
  const ascending = heard(seatsDb.flatMap((levels) => Array.from(levels)));
  if (ascending.length === 0) return previous ?? { lowDb: -SPAN_DB.narrow, highDb: 0, stepDb: STEP_DB };
  const topDb = atShare(ascending, TOP_SHARE);
  const quietDb = atShare(ascending, LOW_SHARE);
  const highDb = snapped(topDb, previous?.highDb ?? null);
  const wasWide = previous !== null && previous.highDb - previous.lowDb > SPAN_DB.narrow;
  const slackDb = previous === null ? 0 : wasWide ? -BEYOND_DB : BEYOND_DB;
  const spanDb = highDb - quietDb > SPAN_DB.narrow + slackDb ? SPAN_DB.wide : SPAN_DB.narrow;
  const lowDb = highDb - spanDb;
  return previous?.highDb === highDb && previous.lowDb === lowDb ? previous : { lowDb, highDb, stepDb: STEP_DB };
};

/** Spans a map may have to itself, and how closely its contours then stand. */
const OWN_SPANS: readonly { readonly spanDb: number; readonly stepDb: number }[] = [
  { spanDb: 6, stepDb: 1 },
  { spanDb: 12, stepDb: 1 },
  { spanDb: 24, stepDb: STEP_DB },
  { spanDb: SPAN_DB.wide, stepDb: STEP_DB },
];

/**
 * The scale of one map alone, so that a quiet or an even one uses all colours: from its own top, on whole 3 dB, down over the
 * least span that holds all but its loudest 25th and quietest tenth. Contours every decibel where that is 12 dB or less.
 */
export const ownScale = (mapDb: Float32Array): LevelScale => {
  const ascending = heard(mapDb);
  if (ascending.length === 0) return { lowDb: -SPAN_DB.narrow, highDb: 0, stepDb: STEP_DB };
  const highDb = snapped(atShare(ascending, TOP_SHARE), null);
  const depthDb = highDb - atShare(ascending, LOW_SHARE);
  const { spanDb, stepDb } = OWN_SPANS.find(({ spanDb }) => depthDb <= spanDb) ?? OWN_SPANS[OWN_SPANS.length - 1];
  return { lowDb: highDb - spanDb, highDb, stepDb };
};

/** Where a level falls on the scale: 0 at its low end, 1 at its high end, clamped. */
export const shareOf = (levelDb: number, scale: LevelScale): number =>
  Math.min(1, Math.max(0, (levelDb - scale.lowDb) / (scale.highDb - scale.lowDb)));
