import type { SnapReason } from './reason.ts';

export type Axis = 0 | 1 | 2;

/** A value along one axis worth stopping at. */
export interface SnapLine {
  readonly axis: Axis;
  readonly atM: number;
  /** It draws what comes nearer than this. */
  readonly reachM: number;
  /** 0 where the place itself means something, 1 where it repeats another, 2 for round figures. */
  readonly rank: 0 | 1 | 2;
  readonly reason: SnapReason;
}

const CENTIMETRE = 100;

/** Whole centimetres, the same way on both sides of nought: a tape measures no finer. */
export const wholeCm = (valueM: number): number => {
  const cm = Math.sign(valueM) * Math.round(Math.abs(valueM) * CENTIMETRE);
  return cm === 0 ? 0 : cm / CENTIMETRE;
};

/** Sums of decimals leave dust behind; a tenth of a millimetre is finer than anything that is built. */
export const undusted = (valueM: number): number => {
  const tenths = Math.sign(valueM) * Math.round(Math.abs(valueM) * 10_000);
  return tenths === 0 ? 0 : tenths / 10_000;
};

/** Where nothing draws a value: whole centimetres, or with snapping let go (a reach of 0) a tenth of a millimetre. */
export const fineM = (valueM: number, reachM: number): number => (reachM > 0 ? wholeCm(valueM) : undusted(valueM));

/** Of two lines as near as this the first is meant, whatever the last binary digit says. */
const ALIKE_M = 1e-9;

/** The line that draws a value along one axis: the most meaningful one within its reach, then the nearest. */
export const lineFor = (valueM: number, axis: Axis, lines: readonly SnapLine[]): SnapLine | null => {
  let best: SnapLine | null = null;
  for (const line of lines) {
    const away = Math.abs(line.atM - valueM);
    if (line.axis !== axis || away > line.reachM) continue;
    const nearer = best !== null && line.rank === best.rank && away < Math.abs(best.atM - valueM) - ALIKE_M;
    if (best === null || line.rank < best.rank || nearer) best = line;
  }
  return best;
};
