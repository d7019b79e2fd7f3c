import { AXES, type BoxGeometry, EPSILON } from './box-state.ts';
import type { Axis } from './room-field.ts';
import { NEAREST_M, rest, setRestOfPair } from './screened.ts';

/** Source and receiver pairs of one request, with all that does not depend on frequency. */
export interface Pairs {
  readonly sources: Float64Array;
  /** The receivers, followed by positions moved out of a source's nearest 0.1 m. */
  readonly receivers: Float64Array;
  readonly sourceCount: number;
  readonly receiverCount: number;
  /** Per pair (source * receiverCount + receiver): index into `receivers`. */
  readonly at: Int32Array;
  readonly moved: Uint8Array;
  /** Closed axis. */
  readonly axis: Uint8Array;
  /** ln(1 / eps) / separation along the closed axis, 1/m. */
  readonly reach: Float64Array;
  /** 1 where the receiver lies beyond the source along the closed axis. */
  readonly beyond: Uint8Array;
  /** Screened rest of the pairs whose sum reaches the cut, near and slope per pair; 0 elsewhere. */
  readonly rests: Float64Array;
}

const REACH = Math.log(1 / EPSILON);

const clampInto = (positions: Float64Array, sizeM: readonly number[]): Float64Array =>
  positions.map((x, i) => Math.min(sizeM[i % 3], Math.max(0, x)));

/** Positions a field is asked for, with points outside the walls brought onto them. */
export const insideBox = (geometry: BoxGeometry, positions: Float64Array): Float64Array =>
  clampInto(positions, geometry.sizeM);

/** The point 0.1 m from the source towards the receiver, or along x when they coincide, turned back into the room. */
const moveOut = (sizeM: readonly number[], source: Float64Array, receiver: Float64Array): [number, number, number] => {
  const gap = [receiver[0] - source[0], receiver[1] - source[1], receiver[2] - source[2]];
  const r = Math.hypot(gap[0], gap[1], gap[2]);
  const toward = r < 1e-9 ? [1, 0, 0] : [gap[0] / r, gap[1] / r, gap[2] / r];
  const moved = AXES.map((axis) => {
    const x = source[axis] + NEAREST_M * toward[axis];
    return x < 0 || x > sizeM[axis] ? source[axis] - NEAREST_M * toward[axis] : x;
  });
  return [moved[0], moved[1], moved[2]];
};

/** Middle of the range that responses are asked for; only used to estimate what a sum will cost. */
const TYPICAL_HZ = 80;

/**
 * The axis to close: the one whose transverse sum, cut at (k^2 + reach^2), has the fewest terms, their number being
 * proportional to that times the cross-section; the widest separation when even that sum reaches the cut.
 */
const closedAxis = (geometry: BoxGeometry, source: ArrayLike<number>, receiver: ArrayLike<number>): Axis => {
  const k2 = ((2 * Math.PI * TYPICAL_HZ) / geometry.soundSpeed) ** 2;
  let widest: Axis = 0;
  let cheapest: Axis = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const axis of AXES) {
    const gap = Math.abs(receiver[axis] - source[axis]);
    if (gap > Math.abs(receiver[widest] - source[widest])) widest = axis;
    const reach = REACH / gap;
    const cost = (k2 + reach * reach) / geometry.sizeM[axis];
    if (reach <= geometry.wholeAbove && cost < least) {
      least = cost;
      cheapest = axis;
    }
  }
  return least < Number.POSITIVE_INFINITY ? cheapest : widest;
};

export const planPairs = (geometry: BoxGeometry, sourcesM: Float64Array, receiversM: Float64Array): Pairs => {
  const { sizeM } = geometry;
  const sources = insideBox(geometry, sourcesM);
  const plain = insideBox(geometry, receiversM);
  const sourceCount = sources.length / 3;
  const receiverCount = plain.length / 3;
  const count = sourceCount * receiverCount;
  const at = new Int32Array(count);
  const moved = new Uint8Array(count);
  const axis = new Uint8Array(count);
  const reach = new Float64Array(count);
  const beyond = new Uint8Array(count);
  const rests = new Float64Array(2 * count);
  const extra: number[] = [];
  for (let s = 0; s < sourceCount; s++) {
    const source = sources.subarray(3 * s, 3 * s + 3);
    for (let r = 0; r < receiverCount; r++) {
      const p = s * receiverCount + r;
      let receiver: ArrayLike<number> = plain.subarray(3 * r, 3 * r + 3);
      at[p] = r;
      if (Math.hypot(receiver[0] - source[0], receiver[1] - source[1], receiver[2] - source[2]) < NEAREST_M) {
        receiver = moveOut(sizeM, source, plain.subarray(3 * r, 3 * r + 3));
        at[p] = receiverCount + extra.length / 3;
        moved[p] = 1;
        extra.push(receiver[0], receiver[1], receiver[2]);
      }
      const closed = closedAxis(geometry, source, receiver);
      axis[p] = closed;
      beyond[p] = receiver[closed] >= source[closed] ? 1 : 0;
      reach[p] = REACH / Math.abs(receiver[closed] - source[closed]);
      if (reach[p] <= geometry.wholeAbove) continue;
      setRestOfPair(geometry, closed, source, receiver);
      rests[2 * p] = rest.near;
      rests[2 * p + 1] = rest.slope;
    }
  }
  const receivers = new Float64Array(plain.length + extra.length);
  receivers.set(plain);
  receivers.set(extra, plain.length);
  return { sources, receivers, sourceCount, receiverCount, at, moved, axis, reach, beyond, rests };
};
