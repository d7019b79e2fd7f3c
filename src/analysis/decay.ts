import { decayPicture } from '../engines/bass/decay-picture.ts';
import {
  type ImpulseGrid,
  impulseGrid,
  impulseResponse,
  type PlayedDrive,
  playedWeight,
} from '../engines/bass/impulse.ts';
import type { RoomMode, UnitResponses } from '../engines/bass/room-field.ts';
import type { Project } from '../model/project.ts';
import { curveFrequenciesHz } from './curves.ts';
import type { DecayReadout } from './types.ts';

const HIGHEST_HZ = 400;
const HEARD_TO_HZ = 200;
const LEAST_S = 1;
const MOST_S = 2;
/** The response goes on beyond the picture, so that what is cut off at its end does not show in it. */
const SHOWN_SHARE = 0.6;
const TIMES = 101;
/** Every second point of a curve: a 48th of an octave. */
const THINNED = 2;

/** How long a picture shows: a second, or as long as the longest mode takes, at most two. */
export const shownS = (modes: readonly RoomMode[]): number => {
  const longest = modes.reduce((most, { hz, decayS }) => (hz <= HEARD_TO_HZ ? Math.max(most, decayS) : most), 0);
  return Math.min(MOST_S, Math.max(LEAST_S, Math.ceil(longest * 5) / 5));
};

/** How the response behind such a picture is sampled. */
export const decayGrid = (showsS: number): ImpulseGrid => impulseGrid(showsS / SHOWN_SHARE, HIGHEST_HZ);

/** What is sent to every subwoofer, its own high-pass included, in the document's order. */
export const playedDrives = (project: Project): PlayedDrive[] =>
  project.subwoofers.map(({ gainDb, delayMs, inverted, highPassHz }) => ({ gainDb, delayMs, inverted, highPassHz }));

/** What a picture of a decay is made of: plain data, so that a worker can make it. */
export interface DecayQuestion {
  readonly drives: readonly PlayedDrive[];
  /** How long the picture shows, s. */
  readonly showsS: number;
  /** From every subwoofer to one seat on the line of decayGrid(showsS). */
  readonly units: UnitResponses;
}

/**
 * The picture of a seat's decay: what is left of a tone of each frequency some time after it was switched off. As played:
 * with gain, delay, polarity and each subwoofer's own high-pass, without which a sealed model would hold a pressure for ever.
 */
export const decayOf = ({ drives, showsS, units }: DecayQuestion): Omit<DecayReadout, 'seatId'> => {
  const grid = decayGrid(showsS);
  const count = grid.frequenciesHz.length;
  if (units.frequencies !== count) throw new RangeError('the responses are of another line');
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const weight = new Float64Array(2);
  for (let i = 0; i < count; i += 1)
    for (let s = 0; s < drives.length; s += 1) {
      playedWeight(drives[s], grid.frequenciesHz[i], grid.growthPerS, weight);
      const at = s * count + i;
      re[i] += units.re[at] * weight[0] - units.im[at] * weight[1];
      im[i] += units.re[at] * weight[1] + units.im[at] * weight[0];
    }
  const response = impulseResponse(grid, re, im);
  const frequenciesHz = curveFrequenciesHz().filter((_, i) => i % THINNED === 0);
  const timesS = Float64Array.from({ length: TIMES }, (_, i) => (showsS * i) / (TIMES - 1));
  const levelDb = decayPicture(response, grid.samples / grid.durationS, frequenciesHz, timesS);
  return { frequenciesHz, timesS, levelDb };
};
