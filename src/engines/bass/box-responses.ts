import { AXES, type BoxGeometry, type BoxState, readyTerms } from './box-state.ts';
import { BOTH, LEFT, RIGHT } from './closed-axis.ts';
import { type Pairs, planPairs } from './pairs.ts';
import {
  bytesOfTables,
  clearTables,
  emptyTables,
  fillTables,
  type PointSet,
  type PointTables,
  pointSet,
} from './point-tables.ts';
import type { UnitResponses } from './room-field.ts';
import { SCREEN_PER_M } from './screened.ts';
import type { StateCache } from './state-cache.ts';
import { termsWithin } from './transverse-terms.ts';
import { cutKappa2, newCut, setCut } from './truncation.ts';

/** Unit responses of one box; keeps the tables of receivers that were asked for before: a moved source costs only itself. */
export interface BoxResponses {
  at(sources: Float64Array, receivers: Float64Array, frequenciesHz: Float64Array, growthPerS: number): UnitResponses;
  bytesFor(state: BoxState): number;
}

const sameNumbers = (a: Float64Array, b: Float64Array): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i]);

/**
 * The formula of box-field.ts, pair by pair, from tables: a source's row holds Y_m Z_n times one half of g, a receiver's row
 * the other half (closed-axis.ts), so that a pair costs one complex product a term.
 */
export const createBoxResponses = (geometry: BoxGeometry, cache: StateCache): BoxResponses => {
  let receiverSet: PointSet = pointSet(new Float64Array(0));
  /** One table for all frequencies while the receivers are new; kept per state once they are asked for again. */
  let passing: PointTables = emptyTables(receiverSet);
  const tablesOf = new WeakMap<BoxState, PointTables>();

  const receiverTables = (state: BoxState, asBefore: boolean): PointTables => {
    if (!asBefore) {
      clearTables(passing);
      return passing;
    }
    const known = tablesOf.get(state);
    if (known?.set === receiverSet) return known;
    if (known?.set.count === receiverSet.count) {
      known.set = receiverSet;
      clearTables(known);
      return known;
    }
    const fresh = emptyTables(receiverSet);
    tablesOf.set(state, fresh);
    return fresh;
  };

  const bytesFor = (state: BoxState): number => {
    const tables = tablesOf.get(state);
    return tables === undefined ? 0 : bytesOfTables(tables);
  };

  const at: BoxResponses['at'] = (sourcesM, receiversM, frequenciesHz, growthPerS) => {
    const pairs = planPairs(geometry, sourcesM, receiversM);
    const asBefore = sameNumbers(pairs.receivers, receiverSet.positions);
    if (!asBefore) {
      receiverSet = pointSet(pairs.receivers);
      if (passing.set.count === receiverSet.count) passing.set = receiverSet;
      else passing = emptyTables(receiverSet);
    }
    const sourceTables = emptyTables(pointSet(pairs.sources));
    const plan = newPlan(pairs, receiverSet.count, asBefore);
    const count = pairs.sourceCount * pairs.receiverCount;
    const frequencies = frequenciesHz.length;
    const re = new Float64Array(count * frequencies);
    const im = new Float64Array(count * frequencies);
    for (let f = 0; f < frequencies; f++) {
      const state = cache.at(frequenciesHz[f], growthPerS);
      countTerms(geometry, state, pairs, plan);
      for (const axis of AXES) if (plan.most[axis] > 0) readyTerms(geometry, state, axis, plan.most[axis]);
      const receivers = receiverTables(state, asBefore);
      clearTables(sourceTables);
      fillTables(geometry, state, plan.sourceNeed, plan.sourceSides, true, sourceTables);
      fillTables(geometry, state, plan.receiverNeed, plan.receiverSides, false, receivers);
      sumPairs(pairs, plan, state, sourceTables, receivers, re, im, f, frequencies);
    }
    cache.trim(bytesFor);
    return {
      sources: pairs.sourceCount,
      receivers: pairs.receiverCount,
      frequencies,
      re,
      im,
      moved: pairs.moved,
    };
  };
  return { at, bytesFor };
};

interface Plan {
  /** 1 for each axis that some pair closes. */
  readonly closed: Uint8Array;
  /** Terms per pair at the present frequency. */
  readonly terms: Int32Array;
  /** Most terms of any pair, per closed axis. */
  readonly most: Int32Array;
  readonly sourceNeed: readonly Int32Array[];
  readonly receiverNeed: readonly Int32Array[];
  readonly sourceSides: readonly Uint8Array[];
  readonly receiverSides: readonly Uint8Array[];
}

/** Receivers that are `kept` get both sides: the next source may lie on the other. */
const newPlan = (pairs: Pairs, receivers: number, kept: boolean): Plan => {
  const plan: Plan = {
    closed: new Uint8Array(3),
    terms: new Int32Array(pairs.axis.length),
    most: new Int32Array(3),
    sourceNeed: AXES.map(() => new Int32Array(pairs.sourceCount)),
    receiverNeed: AXES.map(() => new Int32Array(receivers)),
    sourceSides: AXES.map(() => new Uint8Array(pairs.sourceCount)),
    receiverSides: AXES.map(() => new Uint8Array(receivers).fill(kept ? BOTH : 0)),
  };
  for (let p = 0; p < pairs.axis.length; p++) {
    const source = Math.floor(p / pairs.receiverCount);
    plan.closed[pairs.axis[p]] = 1;
    plan.sourceSides[pairs.axis[p]][source] |= pairs.beyond[p] === 1 ? LEFT : RIGHT;
    plan.receiverSides[pairs.axis[p]][pairs.at[p]] |= pairs.beyond[p] === 1 ? RIGHT : LEFT;
  }
  return plan;
};

const cuts = AXES.map(newCut);

/** Decides where each pair's sum is cut and how many terms each point must offer. */
const countTerms = (geometry: BoxGeometry, state: BoxState, pairs: Pairs, plan: Plan): void => {
  plan.most.fill(0);
  for (const axis of AXES) {
    plan.sourceNeed[axis].fill(0);
    plan.receiverNeed[axis].fill(0);
  }
  for (const axis of AXES) if (plan.closed[axis] === 1) setCut(geometry, state, axis, cuts[axis]);
  for (let p = 0; p < plan.terms.length; p++) {
    const axis = pairs.axis[p] as 0 | 1 | 2;
    const terms = geometry.terms(axis);
    const reach = pairs.reach[p];
    const count = reach > geometry.wholeAbove ? terms.count : termsWithin(terms, cutKappa2(cuts[axis], reach));
    plan.terms[p] = count;
    if (count > plan.most[axis]) plan.most[axis] = count;
    const source = Math.floor(p / pairs.receiverCount);
    const receiver = pairs.at[p];
    if (count > plan.sourceNeed[axis][source]) plan.sourceNeed[axis][source] = count;
    if (count > plan.receiverNeed[axis][receiver]) plan.receiverNeed[axis][receiver] = count;
  }
};

const sumPairs = (
  pairs: Pairs,
  plan: Plan,
  state: BoxState,
  sources: PointTables,
  receivers: PointTables,
  re: Float64Array,
  im: Float64Array,
  f: number,
  frequencies: number,
): void => {
  const fourPi = 4 * Math.PI;
  const screenRe = state.kRe * state.kRe - state.kIm * state.kIm + SCREEN_PER_M * SCREEN_PER_M;
  const screenIm = 2 * state.kRe * state.kIm;
  for (let p = 0; p < plan.terms.length; p++) {
    const axis = pairs.axis[p];
    const a = sources.data[axis];
    const b = receivers.data[axis];
    const source = Math.floor(p / pairs.receiverCount);
    let i = 4 * sources.capacity[axis] * source;
    let j = 4 * receivers.capacity[axis] * pairs.at[p];
    if (pairs.beyond[p] === 1) j += 2;
    else i += 2;
    let sumRe = 0;
    let sumIm = 0;
    for (let t = plan.terms[p]; t > 0; t--, i += 4, j += 4) {
      const aRe = a[i];
      const aIm = a[i + 1];
      const bRe = b[j];
      const bIm = b[j + 1];
      sumRe += aRe * bRe - aIm * bIm;
      sumIm += aRe * bIm + aIm * bRe;
    }
    const slope = pairs.rests[2 * p + 1];
    re[p * frequencies + f] = fourPi * sumRe + pairs.rests[2 * p] + screenRe * slope;
    im[p * frequencies + f] = fourPi * sumIm + screenIm * slope;
  }
};
