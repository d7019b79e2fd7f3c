import type { DecayReadout } from '../../analysis/types.ts';
import { CIVIDIS_BYTES, cividisIndex } from '../../math/cividis.ts';
import { fixed } from '../../words/quantities-length.ts';
import { hzOfShare, levelAt } from '../ribbon/levels.ts';

/** Decibels from the top of a decay's scale to its bottom, and between its contours. */
export const DECAY_SPAN_DB = 60;
export const DECAY_STEP_DB = 6;
const SNAP_DB = 6;
const LIGHT = [240, 232, 220] as const;
const DARK = [20, 17, 15] as const;

/** The top of a decay's scale: its loudest, on whole 6 dB. */
export const decayTopDb = ({ levelDb }: DecayReadout): number =>
  Math.ceil(levelDb.reduce((most, level) => Math.max(most, level), -300) / SNAP_DB) * SNAP_DB;

/** The level some time after a tone stopped, straight between the picture's points. */
export const decayAt = (decay: DecayReadout, hz: number, timeS: number): number => {
  const { frequenciesHz, timesS, levelDb } = decay;
  const place = Math.min(timesS.length - 1, (timeS / timesS[timesS.length - 1]) * (timesS.length - 1));
  const row = Math.min(timesS.length - 2, Math.floor(place));
  const count = frequenciesHz.length;
  const at = (r: number) => levelAt(frequenciesHz, Float64Array.from(levelDb.subarray(r * count, (r + 1) * count)), hz);
  return at(row) + (place - row) * (at(row + 1) - at(row));
};

/** Steps of a time axis, seconds, with the decimals they are written with. */
const TIME_STEPS = [
  { stepS: 0.02, decimals: 2 },
  { stepS: 0.05, decimals: 2 },
  { stepS: 0.1, decimals: 1 },
  { stepS: 0.2, decimals: 1 },
  { stepS: 0.5, decimals: 1 },
  { stepS: 1, decimals: 0 },
  { stepS: 2, decimals: 0 },
  { stepS: 5, decimals: 0 },
] as const;
const MOST_TICKS = 6;

/** Round times along a decay's axis, written as they are, the last with its unit. */
export const timeTicks = (lastS: number): readonly { readonly timeS: number; readonly text: string }[] => {
  const { stepS, decimals } =
    TIME_STEPS.find(({ stepS }) => lastS / stepS <= MOST_TICKS) ?? TIME_STEPS[TIME_STEPS.length - 1];
  const count = Math.floor(lastS / stepS + 1e-6);
  return Array.from({ length: count + 1 }, (_, i) => {
    const written = fixed(i * stepS, decimals);
    return { timeS: i * stepS, text: i === count ? `${written} s` : written };
  });
};

const step = (from: number, to: number, x: number): number => {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return t * t * (3 - 2 * t);
};

/** The levels laid out on pixels: columns over 20 to 200 Hz, rows over time, straight between points. */
const levelsOnPixels = ({ frequenciesHz, timesS, levelDb }: DecayReadout, columns: number, rows: number) => {
  const count = frequenciesHz.length;
  const out = new Float32Array(columns * rows);
  const places = Float64Array.from({ length: columns }, (_, x) => {
    const hz = hzOfShare((x + 0.5) / columns);
    return Math.min(
      count - 1.001,
      Math.max(0, Math.log(hz / frequenciesHz[0]) / Math.log(frequenciesHz[1] / frequenciesHz[0])),
    );
  });
  for (let y = 0; y < rows; y++) {
    const place = Math.min(timesS.length - 1.001, ((y + 0.5) / rows) * (timesS.length - 1));
    const row = Math.floor(place);
    const down = place - row;
    for (let x = 0; x < columns; x++) {
      const i = Math.floor(places[x]);
      const right = places[x] - i;
      const at = row * count + i;
      const near = levelDb[at] + right * (levelDb[at + 1] - levelDb[at]);
      const far = levelDb[at + count] + right * (levelDb[at + count + 1] - levelDb[at + count]);
      out[y * columns + x] = near + down * (far - near);
    }
  }
  return out;
};

/** The picture as pixels, by the level map, with contours every 6 dB and a heavier one every 12. */
export const decayPixels = (
  decay: DecayReadout,
  topDb: number,
  columns: number,
  rows: number,
): Uint8ClampedArray<ArrayBuffer> => {
  const levels = levelsOnPixels(decay, columns, rows);
  const pixels = new Uint8ClampedArray(columns * rows * 4);
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const at = y * columns + x;
      const level = levels[at];
      const across = x + 1 < columns ? levels[at + 1] - level : 0;
      const down = y + 1 < rows ? levels[at + columns] - level : 0;
      const slope = Math.max(1e-6, Math.hypot(across, down));
      const share = Math.min(1, Math.max(0, (level - topDb) / DECAY_SPAN_DB + 1));
      const contour = (every: number, half: number) => {
        const away = Math.abs(level / every - Math.round(level / every)) * every;
        return (1 - step(half - 0.5, half + 0.5, away / slope)) * (1 - step(every * 0.15, every * 0.4, slope));
      };
      const line = share > 0 ? Math.max(0.3 * contour(DECAY_STEP_DB, 0.5), 0.6 * contour(2 * DECAY_STEP_DB, 0.8)) : 0;
      const ink = share < 0.42 ? LIGHT : DARK;
      const entry = cividisIndex(share) * 3;
      for (let k = 0; k < 3; k++) pixels[at * 4 + k] = CIVIDIS_BYTES[entry + k] * (1 - line) + ink[k] * line;
      pixels[at * 4 + 3] = 255;
    }
  return pixels;
};
