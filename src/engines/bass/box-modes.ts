import { solveOne } from './axis-solver.ts';
import { AXES, type BoxGeometry } from './box-state.ts';
import { type FreeDecay, freeDecay, rings } from './free-decay.ts';
import type { BoxMode } from './room-field.ts';

const MOST_STEPS = 40;
/** Share of the walls' full admittance taken on at a time, in units of beta. */
const BETA_STEP = 0.05;
/** A step that moves k by more than this share led to another mode. */
const FARTHEST_STEP = 0.2;

/** A mode between rigid walls. */
export type RigidBoxMode = Pick<BoxMode, 'hz' | 'order'>;

/** Rigid eigenfrequencies of the box above 0 Hz up to `maxHz`, ascending. */
export const rigidBoxModes = ({ sizeM, soundSpeed }: BoxGeometry, maxHz: number): RigidBoxMode[] => {
  const most = sizeM.map((length) => Math.floor((2 * maxHz * length) / soundSpeed + 1e-9));
  const found: RigidBoxMode[] = [];
  for (let l = 0; l <= most[0]; l++) {
    for (let m = 0; m <= most[1]; m++) {
      for (let n = 0; n <= most[2]; n++) {
        const hz = (soundSpeed / 2) * Math.hypot(l / sizeM[0], m / sizeM[1], n / sizeM[2]);
        if (hz === 0 || hz > maxHz) continue;
        found.push({ hz, order: [l, m, n] });
      }
    }
  }
  return found.sort((a, b) => a.hz - b.hz);
};

/** The rigid modes above 0 Hz up to `maxHz`, each with the decay of its damped mode. */
export const boxModes = (geometry: BoxGeometry, maxHz: number): BoxMode[] =>
  rigidBoxModes(geometry, maxHz).map((mode) => ({ ...mode, ...dampedMode(geometry, mode.order) }));

/**
 * Free decay of one mode: k with k^2 = sum of w_i(k) / L_i^2, complex, by Newton's method while the walls go from rigid to
 * their admittance; delta = c Im k for e^(+j omega t). Where the mode dissolves (walls that absorb everything) the
 * first-order estimate delta = (c / 2) sum eps_i Re(beta_i0 + beta_i1) / L_i stands in.
 */
const dampedMode = (geometry: BoxGeometry, order: readonly [number, number, number]): FreeDecay => {
  const { sizeM, soundSpeed, beta } = geometry;
  const rigidK = Math.PI * Math.hypot(order[0] / sizeM[0], order[1] / sizeM[1], order[2] / sizeM[2]);
  const rigidHz = (rigidK * soundSpeed) / (2 * Math.PI);
  let kRe = rigidK;
  let kIm = 0;
  if (geometry.rigid) return { dampedHz: rigidHz, decayS: Number.POSITIVE_INFINITY };
  let firstOrder = 0;
  let largest = 0;
  for (const axis of AXES) {
    const eps = order[axis] === 0 ? 1 : 2;
    firstOrder += ((soundSpeed / 2) * eps * (beta[axis][0] + beta[axis][2])) / sizeM[axis];
    for (const i of [0, 2]) largest = Math.max(largest, Math.hypot(beta[axis][i], beta[axis][i + 1]));
  }
  const solved: Tracked[] = AXES.map((axis) => ({
    b: new Float64Array(4),
    w: Float64Array.of((order[axis] * Math.PI) ** 2, 0, 0, 0),
  }));
  const steps = Math.ceil(largest / BETA_STEP);
  let found = true;
  for (let step = 1; step <= steps && found; step++) {
    found = false;
    const [fromRe, fromIm] = [kRe, kIm];
    for (let i = 0; i < MOST_STEPS; i++) {
      // f(k) = k^2 - sum w / L^2 and k f'(k), with dw/dlnk from the axis solver
      let fRe = kRe * kRe - kIm * kIm;
      let fIm = 2 * kRe * kIm;
      let gRe = 2 * fRe;
      let gIm = 2 * fIm;
      let followed = true;
      for (const axis of AXES) {
        followed = track(solved[axis], order[axis], beta[axis], step / steps, kRe, kIm, sizeM[axis]) && followed;
        const per = 1 / sizeM[axis] ** 2;
        const { w } = solved[axis];
        fRe -= w[0] * per;
        fIm -= w[1] * per;
        gRe -= w[2] * per;
        gIm -= w[3] * per;
      }
      const scale = gRe * gRe + gIm * gIm;
      const dRe = (fRe * gRe + fIm * gIm) / scale;
      const dIm = (fIm * gRe - fRe * gIm) / scale;
      const nextRe = kRe - (kRe * dRe - kIm * dIm);
      kIm -= kRe * dIm + kIm * dRe;
      kRe = nextRe;
      if (!followed || !Number.isFinite(kRe + kIm)) break;
      if (dRe * dRe + dIm * dIm < 1e-26) {
        found =
          rings(kRe, kIm, rigidK) &&
          Math.hypot(kRe - fromRe, kIm - fromIm) < FARTHEST_STEP * Math.hypot(fromRe, fromIm);
        break;
      }
    }
  }
  return freeDecay(found ? [kRe, kIm] : null, firstOrder, rigidHz, soundSpeed);
};

interface Tracked {
  readonly b: Float64Array;
  /** w re, im and dw/dlnk re, im. */
  readonly w: Float64Array;
}

const next = new Float64Array(4);

/** Moves one axis' eigenvalue on to walls t beta at k. */
const track = (
  tracked: Tracked,
  n: number,
  beta: Float64Array,
  t: number,
  kRe: number,
  kIm: number,
  lengthM: number,
): boolean => {
  for (let i = 0; i < 4; i += 2) {
    next[i] = -(kRe * beta[i + 1] + kIm * beta[i]) * t * lengthM;
    next[i + 1] = (kRe * beta[i] - kIm * beta[i + 1]) * t * lengthM;
  }
  const found = solveOne(n, next, tracked.w, tracked);
  tracked.b.set(next);
  return found;
};
