import { type BoxGeometry, type BoxState, bytesOfState, solveState, workingK } from './box-state.ts';

/** States of one room by wavenumber, least recently used dropped first. */
export interface StateCache {
  /** The state at omega = 2 pi hz - j growth; a RangeError outside 0 < hz <= 600. */
  at(hz: number, growthPerS: number): BoxState;
  /** Drops the oldest states until the limit is kept; `extraBytes` tells what else is held for a state. */
  trim(extraBytes: (state: BoxState) => number): void;
  /** Bytes of all states and what else is held for them. */
  bytes(extraBytes: (state: BoxState) => number): number;
  readonly size: number;
}

/** Frequencies the engine answers for; the transverse sums are cut at 900 Hz, 1.5 times the highest. */
const HIGHEST_HZ = 600;

export const createStateCache = (geometry: BoxGeometry, limitBytes: number): StateCache => {
  const states = new Map<string, BoxState>();
  const held = (extraBytes: (state: BoxState) => number): number => {
    let total = 0;
    for (const state of states.values()) total += bytesOfState(state) + extraBytes(state);
    return total;
  };
  let latest: BoxState | null = null;
  return {
    at: (hz, growthPerS) => {
      if (!(hz > 0 && hz <= HIGHEST_HZ))
        throw new RangeError(`frequency ${hz} Hz; allowed: above 0 to ${HIGHEST_HZ} Hz`);
      const key = `${hz}/${growthPerS}`;
      const known = states.get(key);
      if (known !== undefined) {
        states.delete(key);
        states.set(key, known);
        latest = known;
        return known;
      }
      const scale = (2 * Math.PI) / geometry.soundSpeed;
      const [kRe, kIm] = workingK(geometry, hz * scale, -growthPerS / geometry.soundSpeed);
      const state = solveState(geometry, kRe, kIm, worthFollowing(latest, kRe, kIm) ? latest : null);
      states.set(key, state);
      latest = state;
      return state;
    },
    trim: (extraBytes) => {
      let total = held(extraBytes);
      for (const [key, state] of states) {
        if (total <= limitBytes || states.size === 1) return;
        states.delete(key);
        total -= bytesOfState(state) + extraBytes(state);
      }
    },
    bytes: held,
    get size() {
      return states.size;
    },
  };
};

/** A neighbour helps when the way from it is shorter than the way from rigid walls. */
const worthFollowing = (state: BoxState | null, kRe: number, kIm: number): boolean =>
  state !== null && Math.hypot(kRe - state.kRe, kIm - state.kIm) < 0.5 * Math.hypot(kRe, kIm);
