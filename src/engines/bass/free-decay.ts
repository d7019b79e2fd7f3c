/** A free oscillation of the room as people read it. */
export interface FreeDecay {
  /** Re(omega) / 2 pi. */
  readonly dampedHz: number;
  /** 3 ln 10 / Im(omega); Infinity where nothing absorbs. */
  readonly decayS: number;
}

/** A damped mode this much off its rigid frequency is no longer that mode. */
const FARTHEST = 1 / 3;

/**
 * A mode rings as long as it turns further than it dies, Im k < Re k (less than 55 dB lost in a swing), and stays near its
 * rigid wavenumber. Walls that absorb nearly everything let it creep back without a swing instead; what is then left of it are
 * roots with Re k near 0, some of them slow, that no one hears and no subwoofer drives.
 */
export const rings = (kRe: number, kIm: number, rigidK: number): boolean =>
  kIm < kRe && Math.abs(kRe - rigidK) < FARTHEST * rigidK;

/**
 * The decay of a mode that was followed to k (null where it was lost), delta = c Im k for e^(+j omega t). Where it does not
 * ring any more the first-order estimate `firstOrderPerS` = delta stands in, at the rigid frequency. One rule for boxes and prisms.
 */
export const freeDecay = (
  k: ArrayLike<number> | null,
  firstOrderPerS: number,
  rigidHz: number,
  soundSpeed: number,
): FreeDecay => {
  const toHz = soundSpeed / (2 * Math.PI);
  const plausible = k !== null && rings(k[0], k[1], rigidHz / toHz) && soundSpeed * k[1] >= -1e-9 * firstOrderPerS;
  const delta = plausible ? Math.max(0, soundSpeed * k[1]) : firstOrderPerS;
  return {
    dampedHz: plausible ? k[0] * toHz : rigidHz,
    decayS: delta > 0 ? (3 * Math.LN10) / delta : Number.POSITIVE_INFINITY,
  };
};
