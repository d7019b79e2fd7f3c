import { valuesAt } from '../axis-modes.ts';
import { type CoupledPatches, couplePatches } from '../patches/coupled-system.ts';
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
  /** A_n^-1 times the section parts, re, im at 2 ((n parts + part) size + i). */
  readonly solved: Float64Array;
  /** Parts along the axis times the damped even modes, re, im at 2 (part orders + n). */
  readonly along: Float64Array;
  /** Null when the system is singular. */
  readonly coupled: CoupledPatches | null;
}

export interface PrismPatches {
  at(state: PrismState): PrismPatchState;
  /**
   * v of coupled-system.ts for a field whose load of order n (re, im per function) is given by `loadOf`, times Z_n(z): into
   * `out`, re, im per patch function.
   */
  couplings(
    own: PrismPatchState,
    state: PrismState,
    z: number,
    loadOf: (n: number) => Float64Array,
    out: Float64Array,
  ): void;
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
  const ownZ = new Float64Array(2 * orders);
  return {
    at: (state) => {
      let own = known.get(state);
      if (own === undefined) own = couple(section, states, layoutFor(state.kRe), state);
      else known.delete(state);
      known.set(state, own);
      let held = 0;
      for (const { solved } of known.values()) held += solved.byteLength;
      for (const [oldest, { solved }] of known) {
        if (held <= KEPT_BYTES || known.size === 1) break;
        known.delete(oldest);
        held -= solved.byteLength;
      }
      return own;
    },
    couplings: ({ layout, solved, along }, state, z, loadOf, out) => {
      const parts = layout.section.length;
      const count = layout.functions.count;
      const sums = new Float64Array(2 * parts);
      out.fill(0, 0, 2 * count);
      valuesAt(state.even, z, orders, ownZ, 0);
      for (let n = 0; n < orders; n++) {
        const load = loadOf(n);
        for (let m = 0; m < parts; m++) {
          let re = 0;
          let im = 0;
          for (let i = 0, o = 2 * (n * parts + m) * size; i < 2 * functions[n]; i += 2, o += 2) {
            re += load[i] * solved[o] - load[i + 1] * solved[o + 1];
            im += load[i] * solved[o + 1] + load[i + 1] * solved[o];
          }
          sums[2 * m] = re * ownZ[2 * n] - im * ownZ[2 * n + 1];
          sums[2 * m + 1] = re * ownZ[2 * n + 1] + im * ownZ[2 * n];
        }
        for (let a = 0; a < count; a++) {
          const m = 2 * layout.sectionOf[a];
          const z0 = 2 * (layout.alongOf[a] * orders + n);
          out[2 * a] += sums[m] * along[z0] - sums[m + 1] * along[z0 + 1];
          out[2 * a + 1] += sums[m] * along[z0 + 1] + sums[m + 1] * along[z0];
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

const couple = (
  section: Section,
  states: PrismStates,
  layout: PrismPatchLayout,
  state: PrismState,
): PrismPatchState => {
  const { size, orders, functions } = section;
  const parts = layout.section.length;
  const count = layout.functions.count;
  const solved = new Float64Array(2 * orders * parts * size);
  const sides = new Float64Array(2 * size * parts);
  for (let n = 0; n < orders; n++) {
    sides.fill(0);
    for (let m = 0; m < parts; m++)
      for (let i = 0; i < functions[n]; i++) sides[2 * (i * parts + m)] = layout.section[m][i];
    states.solve(state, n, sides, parts);
    for (let m = 0; m < parts; m++) {
      const to = 2 * (n * parts + m) * size;
      for (let i = 0; i < functions[n]; i++) {
        solved[to + 2 * i] = sides[2 * (i * parts + m)];
        solved[to + 2 * i + 1] = sides[2 * (i * parts + m) + 1];
      }
    }
  }
  const along = alongModes(section, layout, state);
  const couplings = new Float64Array(2 * count * count);
  const between = new Float64Array(2 * parts * parts);
  for (let n = 0; n < orders; n++) {
    for (let m = 0; m < parts; m++) {
      for (let l = 0; l <= m; l++) {
        let re = 0;
        let im = 0;
        for (let i = 0, o = 2 * (n * parts + l) * size; i < functions[n]; i++, o += 2) {
          re += layout.section[m][i] * solved[o];
          im += layout.section[m][i] * solved[o + 1];
        }
        for (const at of [2 * (m * parts + l), 2 * (l * parts + m)]) {
          between[at] = re;
          between[at + 1] = im;
        }
      }
    }
    for (let a = 0; a < count; a++) {
      for (let b = 0; b < count; b++) {
        const at = 2 * (layout.sectionOf[a] * parts + layout.sectionOf[b]);
        const za = 2 * (layout.alongOf[a] * orders + n);
        const zb = 2 * (layout.alongOf[b] * orders + n);
        const zRe = along[za] * along[zb] - along[za + 1] * along[zb + 1];
        const zIm = along[za] * along[zb + 1] + along[za + 1] * along[zb];
        const to = 2 * (a * count + b);
        couplings[to] += between[at] * zRe - between[at + 1] * zIm;
        couplings[to + 1] += between[at] * zIm + between[at + 1] * zRe;
      }
    }
  }
  for (let i = 0; i < count * count; i++) couplings[2 * i] += layout.tail[i];
  const coupled = couplePatches(count, couplings, layout.functions.delta, state.kRe, state.kIm);
  return { layout, solved, along, coupled };
};

const alongModes = ({ orders }: Section, layout: PrismPatchLayout, state: PrismState): Float64Array => {
  const out = new Float64Array(2 * orders * layout.along.length);
  const row = new Float64Array(2 * orders);
  layout.along.forEach(({ atM, weights }, part) => {
    for (let j = 0; j < atM.length; j++) {
      valuesAt(state.even, atM[j], orders, row, 0);
      for (let n = 0; n < 2 * orders; n++) out[2 * orders * part + n] += weights[j] * row[n];
    }
  });
  return out;
};

/** Integrals over the patch functions of what the modes do not show of a source (near and slope), over 4 pi. */
const nearOnPatches = (section: Section, layout: PrismPatchLayout, source: SourceTerms): Float64Array => {
  const { size, orders, functions, geometry } = section;
  const out = new Float64Array(2 * layout.functions.count);
  const sums = new Float64Array(2 * orders);
  for (const { start, count, pointsM, values, weighted } of layout.places) {
    for (let p = 0; 3 * p < pointsM.length; p++) {
      sums.fill(0);
      let near = 0;
      let slope = 0;
      for (let n = 0; n < orders; n++) {
        let a = 0;
        let b = 0;
        for (let i = 0; i < functions[n]; i++) {
          a += source.a[n * size + i] * values[p * size + i];
          b += source.slope[n * size + i] * values[p * size + i];
        }
        const product = rigidProduct(n, pointsM[3 * p + 2], source.z, geometry.lengthM);
        near -= product * a;
        slope -= product * b;
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
