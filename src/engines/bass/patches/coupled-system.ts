import { factoriseComplex, solveComplex } from '../complex-lu.ts';

/**
 * Walls that carry patches, by full coupling to a background field G0 that satisfies the even walls. Green's second
 * identity gives, for walls dp/dn = -j k beta p,
 *
 *   p(r) = p0(r) - j k sum over patches of (beta_patch - beta_wall) integral over the patch of G0(r, r') p(r') dS'
 *
 * With p on the patches as a sum of orthonormal functions phi_a (integral of phi_a phi_b dS = 1 or 0), D = beta_patch -
 * beta_wall of each function's patch, and
 *
 *   W_ab = integral of phi_a(r) G0(r, r') phi_b(r') dS dS',     v_a(r) = integral of phi_a(r') G0(r', r) dS'
 *
 * Galerkin's method makes it c = (1 + j k W D)^-1 v(source) and
 *
 *   G(r, s) = G0(r, s) - v(r) . y(s),     y(s) = j k D (1 + j k W D)^-1 v(s)
 *
 * symmetric in r and s as W is, so that y may be kept for the receivers while sources move. Derived; errors of p on the
 * patches enter the field squared. Nothing here knows what room G0 belongs to.
 */
export interface CoupledPatches {
  readonly count: number;
  readonly lu: Float64Array;
  readonly rows: Int32Array;
  /** j k D per function, re, im. */
  readonly load: Float64Array;
}

/**
 * Factorises 1 + j k W D. `couplings` holds W row by row as re, im and is taken over; `delta` D per function as re, im;
 * k in 1/m. Null when the system is singular (a mode of the room exactly at k).
 */
export const couplePatches = (
  count: number,
  couplings: Float64Array,
  delta: Float64Array,
  kRe: number,
  kIm: number,
): CoupledPatches | null => {
  const load = new Float64Array(2 * count);
  for (let a = 0; a < count; a++) {
    load[2 * a] = -(kRe * delta[2 * a + 1] + kIm * delta[2 * a]);
    load[2 * a + 1] = kRe * delta[2 * a] - kIm * delta[2 * a + 1];
  }
  for (let a = 0; a < count; a++) {
    for (let b = 0; b < count; b++) {
      const i = 2 * (a * count + b);
      const re = couplings[i];
      const im = couplings[i + 1];
      couplings[i] = re * load[2 * b] - im * load[2 * b + 1] + (a === b ? 1 : 0);
      couplings[i + 1] = re * load[2 * b + 1] + im * load[2 * b];
    }
  }
  const rows = new Int32Array(count);
  return factoriseComplex(count, couplings, rows) ? { count, lu: couplings, rows, load } : null;
};

/** Turns v at `values[offset...]` (re, im per function) into y = j k D (1 + j k W D)^-1 v, in place. */
export const answerOfPatches = (patches: CoupledPatches, values: Float64Array, offset = 0): void => {
  const { count, lu, rows, load } = patches;
  solveComplex(count, lu, rows, values, offset);
  for (let a = 0; a < count; a++) {
    const i = offset + 2 * a;
    const re = values[i];
    const im = values[i + 1];
    values[i] = re * load[2 * a] - im * load[2 * a + 1];
    values[i + 1] = re * load[2 * a + 1] + im * load[2 * a];
  }
};

/** Bytes a factorised system takes. */
export const bytesOfCoupled = (count: number): number => 16 * count * count + 20 * count + 200;
