import { valuesAt } from '../axis-modes.ts';
import { answerOfPatches } from '../patches/coupled-system.ts';
import type { UnitResponses } from '../room-field.ts';
import { NEAREST_M } from '../screened.ts';
import { type SourceTerms, sourceTerms } from './near-field.ts';
import type { PrismPatches } from './patch-coupling.ts';
import { intoPrism, liesWithin, type PrismGeometry } from './prism-geometry.ts';
import type { PrismState, PrismStates } from './prism-state.ts';
import type { Section } from './section.ts';
import { SCREEN_PER_M, screened, sumScreened } from './source-images.ts';
import { rigidProduct, setLoad } from './source-load.ts';
import type { SourceShelf } from './source-shelf.ts';

export interface PrismResponses {
  at(sources: Float64Array, receivers: Float64Array, frequenciesHz: Float64Array, growthPerS: number): UnitResponses;
  /** Of the receivers' answers kept. */
  bytes(): number;
}

/** Bytes of receivers' answers kept; beyond, they are worked out anew each time. */
const KEPT_BYTES = 20e6;

interface Receivers {
  readonly points: Float64Array;
  readonly count: number;
  /** What patches see of a receiver: the same as of a source, which may change places with it. Empty where there are none. */
  readonly terms: readonly SourceTerms[];
  /** phi_i per receiver, receiver x size. */
  readonly values: Float64Array;
  /** By state: A_n^-1 phi(r), re, im at 2 ((n count + r) size + i). */
  answers: WeakMap<PrismState, Float64Array>;
  /** By state: what the patches have to do with every receiver, re, im per patch function. */
  onPatches: WeakMap<PrismState, Float64Array>;
  /** Of the answers, as long as their states last. */
  bytes: number;
}

export const createPrismResponses = (
  section: Section,
  states: PrismStates,
  shelf: SourceShelf,
  patches: PrismPatches | null,
): PrismResponses => {
  const { geometry, size, orders } = section;
  let kept: Receivers | null = null;

  const receiversAt = (points: Float64Array): Receivers => {
    if (kept !== null && sameNumbers(kept.points, points)) return kept;
    const count = points.length / 3;
    const places = new Float64Array(2 * count);
    for (let r = 0; r < count; r++) {
      places[2 * r] = points[3 * r];
      places[2 * r + 1] = points[3 * r + 1];
    }
    kept = {
      points,
      count,
      values: section.basis.valuesAt(places),
      terms: patches === null ? [] : termsAt(section, points),
      answers: new WeakMap(),
      onPatches: new WeakMap(),
      bytes: 0,
    };
    return kept;
  };

  const answersOf = (receivers: Receivers, state: PrismState, keep: boolean): Float64Array => {
    const known = receivers.answers.get(state);
    if (known !== undefined) return known;
    const answers = receiverAnswers(section, states, receivers, state);
    if (keep) {
      receivers.answers.set(state, answers);
      receivers.bytes += answers.byteLength;
    }
    return answers;
  };

  const at: PrismResponses['at'] = (sourcesM, receiversM, frequenciesHz, growthPerS) => {
    const sources = intoPrism(geometry, sourcesM);
    const receivers = receiversAt(intoPrism(geometry, receiversM));
    const sourceCount = sources.length / 3;
    const count = receivers.count;
    const frequencies = frequenciesHz.length;
    const keep = 16 * orders * count * size * frequencies <= KEPT_BYTES;
    const terms = Array.from({ length: sourceCount }, (_, s) =>
      shelf.at(sources[3 * s], sources[3 * s + 1], sources[3 * s + 2]),
    );
    const moved = new Uint8Array(sourceCount * count);
    const rests = terms.map((source, s) => pairRests(section, source, receivers, moved, s * count));
    const re = new Float64Array(sourceCount * count * frequencies);
    const im = new Float64Array(re.length);
    const rowsZ = new Float64Array(2 * orders * count);
    const ownZ = new Float64Array(2 * orders);
    const load = new Float64Array(2 * size);
    for (let f = 0; f < frequencies; f++) {
      const state = states.at(frequenciesHz[f], growthPerS);
      const answers = answersOf(receivers, state, keep);
      for (let r = 0; r < count; r++) valuesAt(state.even, receivers.points[3 * r + 2], orders, rowsZ, 2 * orders * r);
      const tauRe = state.kRe ** 2 - state.kIm ** 2 + SCREEN_PER_M ** 2;
      const tauIm = 2 * state.kRe * state.kIm;
      for (let s = 0; s < sourceCount; s++) {
        valuesAt(state.even, terms[s].z, orders, ownZ, 0);
        for (let n = 0; n < orders; n++) {
          setLoad(section, terms[s], state, n, load);
          addOrder(section, n, load, answers, rowsZ, ownZ, count, re, im, s * count * frequencies + f, frequencies);
        }
        for (let r = 0; r < count; r++) {
          const to = (s * count + r) * frequencies + f;
          re[to] += rests[s][2 * r] + tauRe * rests[s][2 * r + 1];
          im[to] += tauIm * rests[s][2 * r + 1];
        }
      }
      if (patches !== null) subtractPatches(section, patches, state, terms, receivers, re, im, f, frequencies);
      states.trim();
    }
    return { sources: sourceCount, receivers: count, frequencies, re, im, moved };
  };
  return { at, bytes: () => kept?.bytes ?? 0 };
};

export const sameNumbers = (a: Float64Array, b: Float64Array): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i]);

const termsAt = (section: Section, points: Float64Array): SourceTerms[] =>
  Array.from({ length: points.length / 3 }, (_, r) =>
    sourceTerms(section, points[3 * r], points[3 * r + 1], points[3 * r + 2]),
  );

const receiverAnswers = (
  section: Section,
  states: PrismStates,
  receivers: Receivers,
  state: PrismState,
): Float64Array => {
  const { size, orders, functions } = section;
  const { count, values } = receivers;
  const answers = new Float64Array(2 * orders * count * size);
  const sides = new Float64Array(2 * size * count);
  for (let n = 0; n < orders; n++) {
    sides.fill(0);
    for (let i = 0; i < functions[n]; i++)
      for (let r = 0; r < count; r++) sides[2 * (i * count + r)] = values[r * size + i];
    states.solve(state, n, sides, count);
    for (let r = 0; r < count; r++) {
      const to = 2 * (n * count + r) * size;
      for (let i = 0; i < functions[n]; i++) {
        answers[to + 2 * i] = sides[2 * (i * count + r)];
        answers[to + 2 * i + 1] = sides[2 * (i * count + r) + 1];
      }
    }
  }
  return answers;
};

/** Adds 4 pi Z_n(z) Z_n(z0) load . answer of every receiver. */
const addOrder = (
  { size, orders, functions }: Section,
  n: number,
  load: Float64Array,
  answers: Float64Array,
  rowsZ: Float64Array,
  ownZ: Float64Array,
  count: number,
  re: Float64Array,
  im: Float64Array,
  to: number,
  step: number,
): void => {
  const end = 2 * functions[n];
  for (let r = 0; r < count; r++) {
    const from = 2 * (n * count + r) * size;
    let sumRe = 0;
    let sumIm = 0;
    for (let i = 0; i < end; i += 2) {
      const aRe = answers[from + i];
      const aIm = answers[from + i + 1];
      sumRe += load[i] * aRe - load[i + 1] * aIm;
      sumIm += load[i] * aIm + load[i + 1] * aRe;
    }
    const z = 2 * (orders * r + n);
    const zRe = 4 * Math.PI * (rowsZ[z] * ownZ[2 * n] - rowsZ[z + 1] * ownZ[2 * n + 1]);
    const zIm = 4 * Math.PI * (rowsZ[z] * ownZ[2 * n + 1] + rowsZ[z + 1] * ownZ[2 * n]);
    re[to + r * step] += sumRe * zRe - sumIm * zIm;
    im[to + r * step] += sumRe * zIm + sumIm * zRe;
  }
};

/** H -= 4 pi v(receiver) . y(source) at one frequency (patches/coupled-system.ts). */
const subtractPatches = (
  section: Section,
  patches: PrismPatches,
  state: PrismState,
  sources: readonly SourceTerms[],
  receivers: Receivers,
  re: Float64Array,
  im: Float64Array,
  f: number,
  frequencies: number,
): void => {
  const own = patches.at(state);
  if (own.coupled === null) return;
  const width = 2 * own.layout.functions.count;
  const load = new Float64Array(2 * section.size);
  let shown = receivers.onPatches.get(state);
  if (shown === undefined) {
    shown = new Float64Array(width * receivers.count);
    const { terms } = receivers;
    const loadOf = (n: number, r: number): Float64Array => {
      setLoad(section, terms[r], state, n, load);
      return load;
    };
    patches.couplings(
      own,
      state,
      terms.map(({ z }) => z),
      loadOf,
      shown,
    );
    for (let r = 0; r < receivers.count; r++)
      patches.addNear(own, state, terms[r], shown.subarray(width * r, width * (r + 1)));
    receivers.onPatches.set(state, shown);
  }
  const answers = new Float64Array(width * sources.length);
  const loadOf = (n: number, s: number): Float64Array => {
    setLoad(section, sources[s], state, n, load);
    return load;
  };
  const zM = sources.map(({ z }) => z);
  patches.couplings(own, state, zM, loadOf, answers);
  sources.forEach((source, s) => {
    const answer = answers.subarray(width * s, width * (s + 1));
    patches.addNear(own, state, source, answer);
    if (own.coupled !== null) answerOfPatches(own.coupled, answer);
    for (let r = 0; r < receivers.count; r++) {
      let sumRe = 0;
      let sumIm = 0;
      for (let a = 0, b = width * r; a < width; a += 2, b += 2) {
        sumRe += answer[a] * shown[b] - answer[a + 1] * shown[b + 1];
        sumIm += answer[a] * shown[b + 1] + answer[a + 1] * shown[b];
      }
      const to = (s * receivers.count + r) * frequencies + f;
      re[to] -= 4 * Math.PI * sumRe;
      im[to] -= 4 * Math.PI * sumIm;
    }
  });
};

/**
 * What the modes carried do not show of a source at every receiver, near and slope: the screened images less their share
 * in the modes. A receiver within 0.1 m is taken at 0.1 m; the modes' part, which is even there, stays at its own place.
 */
const pairRests = (
  section: Section,
  source: SourceTerms,
  receivers: Receivers,
  moved: Uint8Array,
  offset: number,
): Float64Array => {
  const { geometry, size, orders, functions } = section;
  const rests = new Float64Array(2 * receivers.count);
  for (let r = 0; r < receivers.count; r++) {
    const point = receivers.points.subarray(3 * r, 3 * r + 3);
    let near = 0;
    let slope = 0;
    for (let n = 0; n < orders; n++) {
      let sum = 0;
      let sumSlope = 0;
      for (let i = 0; i < functions[n]; i++) {
        sum += source.a[n * size + i] * receivers.values[r * size + i];
        sumSlope += source.slope[n * size + i] * receivers.values[r * size + i];
      }
      const product = rigidProduct(n, point[2], source.z, geometry.lengthM);
      near += product * sum;
      slope += product * sumSlope;
    }
    let place: ArrayLike<number> = point;
    if (Math.hypot(point[0] - source.x, point[1] - source.y, point[2] - source.z) < NEAREST_M) {
      moved[offset + r] = 1;
      place = movedOut(geometry, source, point);
    }
    sumScreened(source.plan, source.ends, place[0], place[1], place[2]);
    rests[2 * r] = screened.near - near;
    rests[2 * r + 1] = screened.slope - slope;
  }
  return rests;
};

/** The point 0.1 m from the source towards the receiver, or along the document's x when they coincide, turned back into the room. */
const movedOut = (geometry: PrismGeometry, source: SourceTerms, point: ArrayLike<number>): [number, number, number] => {
  const gap = [point[0] - source.x, point[1] - source.y, point[2] - source.z];
  const r = Math.hypot(gap[0], gap[1], gap[2]);
  const alongX = geometry.axis === 0 ? [0, 0, 1] : [1, 0, 0];
  const toward = r < 1e-9 ? alongX : gap.map((part) => part / r);
  const step = (sign: number): [number, number, number] => [
    source.x + sign * NEAREST_M * toward[0],
    source.y + sign * NEAREST_M * toward[1],
    source.z + sign * NEAREST_M * toward[2],
  ];
  const inside = ([x, y, z]: [number, number, number]): boolean =>
    liesWithin(geometry, x, y) && z >= 0 && z <= geometry.lengthM;
  const out = step(1);
  return inside(out) ? out : step(-1);
};
