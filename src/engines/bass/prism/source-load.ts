import type { SourceTerms } from './near-field.ts';
import type { PrismState } from './prism-state.ts';
import type { Section } from './section.ts';
import { SCREEN_PER_M } from './source-images.ts';

/** phi(r0) - j k (b + tau b') of one order into `load`, re, im per function. */
export const setLoad = (
  section: Section,
  source: SourceTerms,
  state: PrismState,
  n: number,
  load: Float64Array,
): void => {
  const { size, functions } = section;
  const { kRe, kIm } = state;
  const tauRe = kRe * kRe - kIm * kIm + SCREEN_PER_M ** 2;
  const tauIm = 2 * kRe * kIm;
  // j k tau
  const jkRe = -kIm;
  const jkIm = kRe;
  const jktRe = jkRe * tauRe - jkIm * tauIm;
  const jktIm = jkRe * tauIm + jkIm * tauRe;
  const { values, wallRe, wallIm, wallSlopeRe, wallSlopeIm } = source;
  const start = n * size;
  for (let i = 0; i < functions[n]; i++) {
    const b = wallRe[start + i];
    const d = wallSlopeRe[start + i];
    load[2 * i] = values[i] - (jkRe * b + jktRe * d);
    load[2 * i + 1] = -(jkIm * b + jktIm * d);
  }
  if (wallIm === null || wallSlopeIm === null) return;
  for (let i = 0; i < functions[n]; i++) {
    const b = wallIm[start + i];
    const d = wallSlopeIm[start + i];
    load[2 * i] += jkIm * b + jktIm * d;
    load[2 * i + 1] -= jkRe * b + jktRe * d;
  }
};

/** cos(n pi z / L) cos(n pi z0 / L) times 4 pi over the norm of the rigid mode. */
export const rigidProduct = (n: number, z: number, z0: number, lengthM: number): number => {
  const step = (n * Math.PI) / lengthM;
  return ((n === 0 ? 1 : 2) * 4 * Math.PI * Math.cos(step * z) * Math.cos(step * z0)) / lengthM;
};
