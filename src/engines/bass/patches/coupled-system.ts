import { factoriseComplex, solveComplex } from '../complex-lu.ts';
import { symmetricKernel } from '../kernels/symmetric-kernel.ts';

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
 *
 * Solved as y = (W + 1 / j k D)^-1 v, a symmetric system of half the work. Where its pivots fail, as they may only where some
 * patches absorb more than their walls and others less, 1 + j k W D is solved with pivots exchanged.
 */
export interface CoupledPatches {
  readonly count: number;
  /** Packed L D L^T of the symmetric system (kernels/symmetric-plain.ts), or an LU of the other with its pivots. */
  readonly numbers: Float64Array;
  readonly rows: Int32Array | null;
  /** j k D per function, re, im. */
  readonly load: Float64Array;
}

/**
 * Factorises the system of the patches. `couplings` holds the symmetric W row by row as re, im, of which what
 * lies on and right of the diagonal is read, and is taken over; `delta` D per
 * function as re, im; k in 1/m. Null when the system is singular (a mode of the room exactly at k).
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
  const packed = packedSystem(count, couplings, load);
  if (symmetricKernel().factorise(count, packed)) return { count, numbers: packed, rows: null, load };
  for (let a = count - 1; a >= 0; a--) {
    for (let b = 0; b < count; b++) {
      const i = 2 * (a * count + b);
      const from = b < a ? 2 * (b * count + a) : i;
      const re = couplings[from];
      const im = couplings[from + 1];
      couplings[i] = re * load[2 * b] - im * load[2 * b + 1] + (a === b ? 1 : 0);
      couplings[i + 1] = re * load[2 * b + 1] + im * load[2 * b];
    }
  }
  const rows = new Int32Array(count);
  return factoriseComplex(count, couplings, rows) ? { count, numbers: couplings, rows, load } : null;
};

/** The upper triangle of W + 1 / load; a load of nothing makes it infinite, which no factorisation takes. */
const packedSystem = (count: number, couplings: Float64Array, load: Float64Array): Float64Array => {
  const packed = new Float64Array(count * (count + 1));
  for (let a = 0, at = 0; a < count; a++) {
    const row = couplings.subarray(2 * (a * count + a), 2 * (a + 1) * count);
    packed.set(row, at);
    const square = load[2 * a] * load[2 * a] + load[2 * a + 1] * load[2 * a + 1];
    packed[at] += load[2 * a] / square;
    packed[at + 1] -= load[2 * a + 1] / square;
    at += row.length;
  }
  return packed;
};

/** Turns v at `values[offset...]` (re, im per function) into y = j k D (1 + j k W D)^-1 v, in place. */
export const answerOfPatches = (patches: CoupledPatches, values: Float64Array, offset = 0): void => {
  const { count, numbers, rows, load } = patches;
  if (rows === null) {
    symmetricKernel().solve(count, numbers, values.subarray(offset, offset + 2 * count), 1);
    return;
  }
  solveComplex(count, numbers, rows, values, offset);
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
