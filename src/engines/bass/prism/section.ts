import { gaussRule } from '../patches/gauss.ts';
import type { PlanBasis } from '../plan/plan-basis.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import { SCREEN_PER_M } from './source-images.ts';

/** A stretch of an edge of one admittance over the whole even axis. */
export interface EdgeStretch {
  readonly edge: number;
  readonly fromM: number;
  readonly toM: number;
  readonly re: number;
  readonly im: number;
}

/** The cross-section with its walls, as one basis sees it; independent of frequency. */
export interface Section {
  readonly geometry: PrismGeometry;
  readonly basis: PlanBasis;
  readonly size: number;
  readonly lambda: Float64Array;
  /** Integral of beta phi_i phi_j along all edges, re and im apart, size x size; `im` is null when all betas are real. */
  readonly wallRe: Float64Array;
  readonly wallIm: Float64Array | null;
  /**
   * Modes of the even axis that are carried, and per mode the functions that are (the first ones). The answers to the walls'
   * loads are needed by all of them: without, orders just short of travelling are wrong by decibels where a wall guides
   * them (stiffness) or takes much.
   */
  readonly orders: number;
  readonly functions: Int32Array;
  /** sigma_n^2 = s^2 + (n pi / length)^2 of the rigid even axis. */
  readonly sigma2: Float64Array;
  /** Quadrature along the edges: x, y, outward x, y, weight, beta re, im; PLACE numbers each. */
  readonly places: Float64Array;
  /** Every function at every place, places x size. */
  readonly atPlaces: Float64Array;
}

export const PLACE = 7;
/** Quadrature of the near field along the edges: panels of at most this length with three points. */
const PANEL_M = 0.22;
const POINTS = 3;

export const createSection = (
  geometry: PrismGeometry,
  basis: PlanBasis,
  stretches: readonly EdgeStretch[],
  highestHz: number,
): Section => {
  const { size, lambda } = basis;
  const wallRe = new Float64Array(size * size);
  const wallIm = stretches.some(({ im }) => im !== 0) ? new Float64Array(size * size) : null;
  const numbers: number[] = [];
  const rule = gaussRule(POINTS);
  for (const { edge, fromM, toM, re, im } of stretches) {
    const { from, along, outward, lengthM } = geometry.edges[edge];
    const whole = fromM <= 0 && toM >= lengthM;
    if (re !== 0 || im !== 0) {
      const matrix = whole ? basis.edgeMatrix(edge) : basis.edgeMatrix(edge, fromM, toM);
      for (let i = 0; i < matrix.length; i++) wallRe[i] += re * matrix[i];
      if (wallIm !== null) for (let i = 0; i < matrix.length; i++) wallIm[i] += im * matrix[i];
    }
    const panels = Math.max(1, Math.ceil((toM - fromM) / PANEL_M));
    const half = (toM - fromM) / panels / 2;
    for (let p = 0; p < panels; p++) {
      for (let g = 0; g < POINTS; g++) {
        const t = fromM + half * (2 * p + 1 + rule.nodes[g]);
        numbers.push(
          from[0] + t * along[0],
          from[1] + t * along[1],
          outward[0],
          outward[1],
          half * rule.weights[g],
          re,
          im,
        );
      }
    }
  }
  const places = Float64Array.from(numbers);
  const points = new Float64Array((2 * places.length) / PLACE);
  for (let q = 0; 2 * q < points.length; q++) {
    points[2 * q] = places[PLACE * q];
    points[2 * q + 1] = places[PLACE * q + 1];
  }
  const highest2 = ((2 * Math.PI * highestHz) / geometry.soundSpeed) ** 2;
  const step = Math.PI / geometry.lengthM;
  const orders = Math.floor(Math.sqrt(highest2) / step) + 1;
  const most = Math.max(highest2, lambda[size - 1]);
  const functions = new Int32Array(orders);
  const sigma2 = new Float64Array(orders);
  for (let n = 0; n < orders; n++) {
    const own = (n * step) ** 2;
    sigma2[n] = SCREEN_PER_M * SCREEN_PER_M + own;
    while (functions[n] < size && lambda[functions[n]] + own <= most * (1 + 1e-12)) functions[n]++;
  }
  return {
    geometry,
    basis,
    size,
    lambda,
    wallRe,
    wallIm,
    orders,
    functions,
    sigma2,
    places,
    atPlaces: basis.valuesAt(points),
  };
};
