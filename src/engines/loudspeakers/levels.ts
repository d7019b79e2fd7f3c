import { type Pattern, patternGainDb } from './directivity.ts';

/** The least distance used for a level: nearer, a loudspeaker is no point source and the law has no meaning. */
export const leastDistanceM = 0.1;

/** Level of a point source at a distance against 1 m, free field: -20 log10 d. Distances under 0.1 m count as 0.1 m. */
export const distanceGainDb = (distanceM: number): number => -20 * Math.log10(Math.max(distanceM, leastDistanceM));

/**
 * Direct sound at an ear against the same loudspeaker's on-axis free field at 1 m, dB: distance and pattern (1 kHz octave)
 * only; no room, no obstruction.
 */
export const levelDb = (distanceM: number, pattern: Pattern, offAxisDeg: number): number =>
  distanceGainDb(distanceM) + patternGainDb(pattern, offAxisDeg);

/**
 * The greatest direct level at that ear, dB: `level` plus the sensitivity (dB at 1 W, 1 m) plus 10 log10 of the watts. It
 * leaves out the loss of output as the voice coil heats.
 */
export const maxLevelDb = (level: number, sensitivityDb: number, watts: number): number =>
  level + sensitivityDb + 10 * Math.log10(watts);

/** How levels differ between seats, dB: greatest less least, and standard deviation with divisor n - 1 (null for one). */
export interface LevelSpread {
  readonly maxMinDb: number;
  readonly deviationDb: number | null;
}

/** The spread of one loudspeaker's level over the seats; null without seats. */
export const levelSpread = (levelsDb: readonly number[]): LevelSpread | null => {
  const n = levelsDb.length;
  if (n === 0) return null;
  const mean = levelsDb.reduce((sum, l) => sum + l, 0) / n;
  const squares = levelsDb.reduce((sum, l) => sum + (l - mean) ** 2, 0);
  return {
    maxMinDb: Math.max(...levelsDb) - Math.min(...levelsDb),
    deviationDb: n === 1 ? null : Math.sqrt(squares / (n - 1)),
  };
};

/** The delay in milliseconds for each loudspeaker that makes all arrive with the farthest: (d_far - d) / c, never negative. */
export const alignmentDelaysMs = (distancesM: readonly number[], speedMS: number): number[] => {
  const farthest = Math.max(...distancesM);
  return distancesM.map((d) => ((farthest - d) / speedMS) * 1000);
};

/** The trim in dB for each loudspeaker that brings all to the quietest: never above 0. */
export const trimsDb = (levelsDb: readonly number[]): number[] => {
  const quietest = Math.min(...levelsDb);
  return levelsDb.map((l) => quietest - l);
};
