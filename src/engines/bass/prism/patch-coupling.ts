import { type AxisModes, valuesAt } from '../axis-modes.ts';
import { symmetricKernel } from '../kernels/symmetric-kernel.ts';
import { type CoupledPatches, couplePatches } from '../patches/coupled-system.ts';
import { dotRows } from '../plan/row-products.ts';
import type { SourceTerms } from './near-field.ts';
import type { PrismPatch } from './patch-division.ts';
import { createPatchLayouts, type PrismPatchLayout } from './patch-layout.ts';
import type { PrismState, PrismStates } from './prism-state.ts';
import type { Section } from './section.ts';
import { SCREEN_PER_M, screened, sumScreened } from './source-images.ts';
import { rigidProduct } from './source-load.ts';

/** Patches at one wavenumber. */
export interface PrismPatchState {
  readonly layout: PrismPatchLayout;
  /** Per order A_n^-1 times the section parts, the last function first: re, im at 2 ((functions - 1 - i) parts + part). */
  readonly solved: readonly Float64Array[];
  /** Parts along the axis times the damped even modes, re, im at 2 (part orders + n). */
  readonly along: Float64Array;
  /** Null when the system is singular. */
  readonly coupled: CoupledPatches | null;
}

export interface PrismPatches {
  at(state: PrismState): PrismPatchState;
  /**
   * v of coupled-system.ts for fields at the places `zM` along the axis, whose load of order n (re, im per function) `loadOf` gives,
   * times Z_n(z): into `out`, re, im at 2 (field count + patch function).
   */
  couplings(
    own: PrismPatchState,
    state: PrismState,
    zM: ArrayLike<number>,
    loadOf: (n: number, field: number) => Float64Array,
    out: Float64Array,
  ): void;
  /** Of the solved parts. */
  bytes(): number;
  /** Adds what a source's near field does on the patches, not shown by the modes. */
  addNear(own: PrismPatchState, state: PrismState, source: SourceTerms, out: Float64Array): void;
}

/** Bytes of solved parts kept. */
const KEPT_BYTES = 24e6;

export const createPrismPatches = (
  section: Section,
  states: PrismStates,
  patches: readonly PrismPatch[],
): PrismPatches => {
  const { size, orders, functions } = section;
  const layoutFor = createPatchLayouts(section, patches);
  const known = new Map<PrismState, PrismPatchState>();
  const rests = new WeakMap<SourceTerms, Map<PrismPatchLayout, Float64Array>>();
  const bytes = (): number => {
    let held = 0;
    for (const one of known.values()) held += solvedBytes(one);
    return held;
  };
  return {
    bytes,
    at: (state) => {
      let own = known.get(state);
      if (own === undefined) own = solvePatches(section, states, layoutFor(state.kRe), state);
      else known.delete(state);
      known.set(state, own);
      let held = bytes();
      for (const [oldest, one] of known) {
        if (held <= KEPT_BYTES || known.size === 1) break;
        known.delete(oldest);
        held -= solvedBytes(one);
      }
      return own;
    },
    couplings: ({ layout, solved, along }, state, zM, loadOf, out) => {
      const parts = layout.section.length;
      const count = layout.functions.count;
      const fields = zM.length;
      const atZ = new Float64Array(2 * orders * fields);
      for (let s = 0; s < fields; s++) valuesAt(state.even, zM[s], orders, atZ, 2 * orders * s);
      // loads as pairs of real columns, re and im of each field
      const loads = new Float64Array(2 * fields * size);
      const sums = new Float64Array(4 * fields * parts);
      out.fill(0, 0, 2 * count * fields);
      for (let n = 0; n < orders; n++) {
        for (let s = 0; s < fields; s++) {
          const load = loadOf(n, s);
          for (let i = 0, to = 2 * (fields * (functions[n] - 1) + s); i < functions[n]; i++, to -= 2 * fields) {
            loads[to] = load[2 * i];
            loads[to + 1] = load[2 * i + 1];
          }
        }
        symmetricKernel().products(functions[n], loads, 2 * fields, solved[n], parts, sums);
        for (let s = 0; s < fields; s++) {
          const real = 4 * parts * s;
          const imaginary = real + 2 * parts;
          const zRe = atZ[2 * (orders * s + n)];
          const zIm = atZ[2 * (orders * s + n) + 1];
          for (let m = 0; m < 2 * parts; m += 2) {
            const re = sums[real + m] - sums[imaginary + m + 1];
            const im = sums[real + m + 1] + sums[imaginary + m];
            sums[real + m] = re * zRe - im * zIm;
            sums[real + m + 1] = re * zIm + im * zRe;
          }
          for (let a = 0, to = 2 * count * s; a < count; a++, to += 2) {
            const m = real + 2 * layout.sectionOf[a];
            const z = 2 * (layout.alongOf[a] * orders + n);
            out[to] += sums[m] * along[z] - sums[m + 1] * along[z + 1];
            out[to + 1] += sums[m] * along[z + 1] + sums[m + 1] * along[z];
          }
        }
      }
    },
    addNear: ({ layout }, state, source, out) => {
      let byLayout = rests.get(source);
      if (byLayout === undefined) {
        byLayout = new Map();
        rests.set(source, byLayout);
      }
      let rest = byLayout.get(layout);
      if (rest === undefined) {
        rest = nearOnPatches(section, layout, source);
        byLayout.set(layout, rest);
      }
      const tauRe = state.kRe ** 2 - state.kIm ** 2 + SCREEN_PER_M ** 2;
      const tauIm = 2 * state.kRe * state.kIm;
      for (let a = 0; a < layout.functions.count; a++) {
        out[2 * a] += rest[2 * a] + tauRe * rest[2 * a + 1];
        out[2 * a + 1] += tauIm * rest[2 * a + 1];
      }
    },
  };
};

const solvedBytes = ({ solved }: PrismPatchState): number => solved.reduce((sum, one) => sum + one.byteLength, 0);

/** The patches at one wavenumber, by the functions of `layout`. */
export const solvePatches = (
  section: Section,
  states: PrismStates,
  layout: PrismPatchLayout,
  state: PrismState,
): PrismPatchState => {
  const { size, orders, functions } = section;
  const parts = layout.section.length;
  const count = layout.functions.count;
  const solved: Float64Array[] = [];
  const along = alongModes(section, layout, state.even);
  const couplings = new Float64Array(2 * count * count);
  const between = new Float64Array(2 * parts * parts);
  for (let n = 0; n < orders; n++) {
    const loads = layout.byFunction.subarray((size - functions[n]) * parts);
    const sides = new Float64Array(2 * loads.length);
    for (let i = 0; i < loads.length; i++) sides[2 * i] = loads[i];
    states.solveDescending(state, n, sides, parts);
    symmetricKernel().products(functions[n], loads, parts, sides, parts, between);
    addOrder(section, layout, along, n, between, couplings);
    solved.push(sides);
  }
  addTails(layout, state.kRe, state.kIm, couplings);
  const coupled = couplePatches(count, couplings, layout.functions.delta, state.kRe, state.kIm);
  return { layout, solved, along, coupled };
};

/** Adds what is left out of modes and orders. */
export const addTails = (
  { tail: { rest, rise } }: PrismPatchLayout,
  kRe: number,
  kIm: number,
  couplings: Float64Array,
): void => {
  const [re, im] = [kRe * kRe - kIm * kIm, 2 * kRe * kIm];
  for (let i = 0; i < rest.length; i++) {
    couplings[2 * i] += rest[i] + re * rise[i];
    couplings[2 * i + 1] += im * rise[i];
  }
};

/**
 * Adds an order's couplings, on and right of the diagonal: those of the section's parts, `between`, times its course along the axis
 * at both.
 */
export const addOrder = (
  { orders }: Section,
  layout: PrismPatchLayout,
  along: Float64Array,
  n: number,
  between: Float64Array,
  couplings: Float64Array,
): void => {
  const { sectionOf, alongOf } = layout;
  const parts = layout.section.length;
  const count = layout.functions.count;
  const courses = layout.along.length;
  const both = new Float64Array(2 * courses * courses);
  for (let p = 0, to = 0; p < courses; p++) {
    const zRe = along[2 * (p * orders + n)];
    const zIm = along[2 * (p * orders + n) + 1];
    for (let q = 0; q < courses; q++, to += 2) {
      const at = 2 * (q * orders + n);
      both[to] = zRe * along[at] - zIm * along[at + 1];
      both[to + 1] = zRe * along[at + 1] + zIm * along[at];
    }
  }
  for (let a = 0; a < count; a++) {
    const row = sectionOf[a] * parts;
    const course = alongOf[a] * courses;
    for (let b = a, to = 2 * (a * count + a); b < count; b++, to += 2) {
      const at = 2 * (row + sectionOf[b]);
      const z = 2 * (course + alongOf[b]);
      couplings[to] += between[at] * both[z] - between[at + 1] * both[z + 1];
      couplings[to + 1] += between[at] * both[z + 1] + between[at + 1] * both[z];
    }
  }
};

export const alongModes = ({ orders }: Section, layout: PrismPatchLayout, even: AxisModes): Float64Array => {
  const out = new Float64Array(2 * orders * layout.along.length);
  const row = new Float64Array(2 * orders);
  layout.along.forEach(({ atM, weights }, part) => {
    for (let j = 0; j < atM.length; j++) {
      valuesAt(even, atM[j], orders, row, 0);
      for (let n = 0; n < 2 * orders; n++) out[2 * orders * part + n] += weights[j] * row[n];
    }
  });
  return out;
};

/** Integrals over the patch functions of what the modes do not show of a source (near and slope), over 4 pi. */
const nearOnPatches = (section: Section, layout: PrismPatchLayout, source: SourceTerms): Float64Array => {
  const { size, orders, geometry } = section;
  const out = new Float64Array(2 * layout.functions.count);
  const sums = new Float64Array(orders);
  const slopes = new Float64Array(orders);
  for (const { start, count, pointsM, values, weighted } of layout.places) {
    for (let p = 0; 3 * p < pointsM.length; p++) {
      // functions that an order does not carry have no share
      const shown = values.subarray(p * size, (p + 1) * size);
      dotRows(source.a, orders, size, shown, sums);
      dotRows(source.slope, orders, size, shown, slopes);
      let near = 0;
      let slope = 0;
      for (let n = 0; n < orders; n++) {
        const product = rigidProduct(n, pointsM[3 * p + 2], source.z, geometry.lengthM);
        near -= product * sums[n];
        slope -= product * slopes[n];
      }
      sumScreened(source.plan, source.ends, pointsM[3 * p], pointsM[3 * p + 1], pointsM[3 * p + 2]);
      near = (near + screened.near) / (4 * Math.PI);
      slope = (slope + screened.slope) / (4 * Math.PI);
      for (let f = 0; f < count; f++) {
        out[2 * (start + f)] += weighted[p * count + f] * near;
        out[2 * (start + f) + 1] += weighted[p * count + f] * slope;
      }
    }
  }
  return out;
};
