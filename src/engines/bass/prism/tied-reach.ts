import type { PrismSpec } from '../room-field.ts';
import { weylTopHz } from './basis-size.ts';
import { type PrismGeometry, prismGeometry } from './prism-geometry.ts';

/** Modes this near in frequency are tied together exactly, those beyond as they answer at the middle. */
export const BAND_HZ = 25;
/** More of them than this are not tied: their work grows with the cube of their number. First order stands in. */
export const MOST_TIED = 120;
/** Functions of the plan up to this multiple of the highest wavenumber wanted take part. */
export const REACH = 1.35;
/** With more of them than this (plans above some 120 m2) every mode is damped by itself, to first order. */
export const MOST_COUPLED = 260;

const STEP_HZ = 5;

/** Modes of the room below a frequency, by Weyl's estimate with its surface term: V k^3 / 6 pi^2 + S k^2 / 16 pi. */
const modesBelow = ({ areaM2, lengthM, edges, soundSpeed }: PrismGeometry, hz: number): number => {
  const k = (2 * Math.PI * Math.max(hz, 0)) / soundSpeed;
  const perimeterM = edges.reduce((sum, edge) => sum + edge.lengthM, 0);
  const surfaceM2 = 2 * areaM2 + perimeterM * lengthM;
  return (areaM2 * lengthM * k ** 3) / (6 * Math.PI ** 2) + (surfaceM2 * k ** 2) / (16 * Math.PI);
};

/**
 * The frequency to which the decays of a prism's modes take its patches as they act together, Hz, looked for up to `topHz`;
 * above it, each is taken by itself, in first order. About right, by counts of modes: 0 where the plan is too large for any.
 */
export const tiedToHz = (spec: PrismSpec, topHz: number): number => {
  const geometry = prismGeometry(spec);
  if (weylTopHz(geometry, MOST_COUPLED) < REACH * topHz) return 0;
  let hz = 0;
  while (hz < topHz && modesBelow(geometry, hz + BAND_HZ) - modesBelow(geometry, hz - BAND_HZ) <= MOST_TIED)
    hz += STEP_HZ;
  return Math.min(hz, topHz);
};
