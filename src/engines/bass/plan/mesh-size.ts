import type { PlanOutline } from './plan-outline.ts';

/** Distance of pi / w from a whole number from which on a corner is graded in full; nearer to it the rough part is small. */
const FULLY_ROUGH = 0.2;

/** Beside an edge shorter than the mesh, elements are at most this many times as long as it, so that none is a needle. */
const LONGEST_NEEDLE = 3;
/** Edges shorter than this share of the mesh count as that long: what so small a notch does to a mode is smaller still. */
const LEAST_EDGE = 0.05;

/** Wanted length of an element's side at a place, m. */
export type SizeAt = (u: number, v: number) => number;

export interface Grading {
  /** Length away from corners, m. */
  readonly meshM: number;
  /** The smaller, the finer the elements at corners where the field is not smooth. */
  readonly cornerShare: number;
  /** Growth of the length with the distance from such a corner. */
  readonly slope: number;
}

/**
 * Elements that shrink towards the corners where a mode is not smooth. At a corner of interior angle w the field goes like
 * r^(pi / w) (Grisvard, Elliptic Problems in Nonsmooth Domains, 1985; from memory), smooth only where pi / w is a whole number;
 * an element of side h there leaves a relative error of order h^(2 pi / w) in an eigenvalue, so that h = meshM share^(w / 2 pi)
 * spends the same error at every corner.
 * Nearly straight and nearly smooth corners are graded less: the part of a mode that is not smooth vanishes with them.
 */
export const gradedSize = (outline: PlanOutline, { meshM, cornerShare, slope }: Grading): SizeAt => {
  const rough: number[] = [];
  for (let i = 0; i < outline.count; i++) {
    const order = Math.PI / outline.angles[i];
    const strength = Math.min(1, Math.abs(order - Math.round(order)) / FULLY_ROUGH);
    if (strength < 0.005) continue;
    rough.push(outline.corners[2 * i], outline.corners[2 * i + 1], meshM * cornerShare ** ((0.5 * strength) / order));
  }
  const short: number[] = [];
  for (let i = 0; i < outline.count; i++) {
    const next = (i + 1) % outline.count;
    const [au, av, bu, bv] = [i, next].flatMap((k) => Array.from(outline.corners.subarray(2 * k, 2 * k + 2)));
    const length = Math.hypot(bu - au, bv - av);
    const side = LONGEST_NEEDLE * Math.max(length, LEAST_EDGE * meshM);
    if (side < meshM) short.push((au + bu) / 2, (av + bv) / 2, side, length / 2);
  }
  return (u, v) => {
    let size = meshM;
    for (let i = 0; i < short.length; i += 4) {
      const away = Math.max(0, Math.hypot(u - short[i], v - short[i + 1]) - short[i + 3]);
      size = Math.min(size, short[i + 2] + away);
    }
    for (let i = 0; i < rough.length; i += 3) {
      const away = Math.hypot(u - rough[i], v - rough[i + 1]);
      size = Math.min(size, rough[i + 2] + slope * away);
    }
    return size;
  };
};

/** Points that cut the stretch from a to b into pieces of the wanted length: metres from a, both ends included. */
export const cutEdge = (au: number, av: number, bu: number, bv: number, sizeAt: SizeAt): Float64Array => {
  const length = Math.hypot(bu - au, bv - av);
  const samples = 256;
  const pieces = new Float64Array(samples + 1);
  for (let i = 1; i <= samples; i++) {
    const t = (i - 0.5) / samples;
    pieces[i] = pieces[i - 1] + length / samples / sizeAt(au + t * (bu - au), av + t * (bv - av));
  }
  const count = Math.max(1, Math.ceil(pieces[samples] - 0.2));
  const cuts = new Float64Array(count + 1);
  let i = 0;
  for (let cut = 1; cut < count; cut++) {
    const wanted = (cut * pieces[samples]) / count;
    while (pieces[i + 1] < wanted) i++;
    cuts[cut] = (length * (i + (wanted - pieces[i]) / (pieces[i + 1] - pieces[i]))) / samples;
  }
  cuts[count] = length;
  return cuts;
};
