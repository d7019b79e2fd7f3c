import type { UnitResponses } from '../../engines/bass/room-field.ts';
import { driveWeights, superpose } from '../../engines/bass/superpose.ts';
import type { Project } from '../../model/project.ts';
import { drivesOf } from '../inputs/drives.ts';
import type { BassSlice } from '../types.ts';
import { sliceGrid } from './grid.ts';
import { bandOf, type Cut, type SliceWish } from './wish.ts';

/** The engine's own number for silence. */
const SILENCE_DB = -300;
const SILENCE = 10 ** (SILENCE_DB / 10);

/** One subwoofer's complex field over a slice's grid, at 0 dB and undelayed. */
export interface UnitField {
  readonly re: Float32Array | Float64Array;
  readonly im: Float32Array | Float64Array;
}

/** What a slice was asked for. */
export interface SliceQuestion {
  readonly wish: SliceWish;
  readonly cut: Cut;
  /** The cursor's frequency. */
  readonly frequencyHz: number;
  readonly frequenciesHz: Float64Array;
}

/** All driven fields together, complex, into `re` and `im`. */
const sum = (fields: readonly UnitField[], weights: Float64Array, re: Float32Array, im: Float32Array): void => {
  re.fill(0);
  im.fill(0);
  for (let s = 0; s < fields.length; s += 1) {
    const [wRe, wIm] = [weights[2 * s], weights[2 * s + 1]];
    const field = fields[s];
    for (let i = 0; i < re.length; i += 1) {
      re[i] += wRe * field.re[i] - wIm * field.im[i];
      im[i] += wRe * field.im[i] + wIm * field.re[i];
    }
  }
};

/**
 * All subwoofers together over a slice, from one unit field a frequency and subwoofer and the document's drives. Levels are
 * dB against the free field at 1 m of one subwoofer at 0 dB; over several frequencies the mean of the energies. -300 dB
 * stands for silence, NaN for a point outside the room. The complex field is kept where there is one frequency.
 * @param meanDb the seats' mean level (seatsMeanDb), null where it was not asked for
 */
export const bassSlice = (
  project: Project,
  { wish, cut, frequencyHz, frequenciesHz }: SliceQuestion,
  fields: readonly (readonly UnitField[])[],
  meanDb: number | null,
): BassSlice => {
  const { uM, vM } = sliceGrid(project, cut);
  const drives = drivesOf(project);
  const count = uM.length * vM.length;
  const re = new Float32Array(count);
  const im = new Float32Array(count);
  const levelDb = new Float32Array(count);
  for (let f = 0; f < frequenciesHz.length; f += 1) {
    sum(fields[f], driveWeights(drives, frequenciesHz[f]), re, im);
    for (let i = 0; i < count; i += 1) levelDb[i] += re[i] * re[i] + im[i] * im[i];
  }
  for (let i = 0; i < count; i += 1) {
    const energy = levelDb[i] / frequenciesHz.length;
    levelDb[i] = energy < SILENCE ? SILENCE_DB : 10 * Math.log10(energy);
  }
  const single = frequenciesHz.length === 1;
  return {
    cut,
    as: wish.as,
    frequencyHz,
    bandHz: bandOf(wish),
    uM,
    vM,
    levelDb,
    pressure: single ? { re, im } : null,
    meanDb,
  };
};

/**
 * The mean over the seats of their levels in dB, each seat's the mean of its energies over the frequencies: what the
 * difference is taken from. Null without seats.
 */
export const seatsMeanDb = (project: Project, units: UnitResponses, frequenciesHz: Float64Array): number | null => {
  const { receivers, frequencies, re, im } = superpose(units, drivesOf(project), frequenciesHz);
  if (receivers === 0) return null;
  let total = 0;
  for (let seat = 0; seat < receivers; seat += 1) {
    let energy = 0;
    for (let f = 0; f < frequencies; f += 1) {
      const at = seat * frequencies + f;
      energy += re[at] * re[at] + im[at] * im[at];
    }
    total += 10 * Math.log10(Math.max(SILENCE, energy / frequencies));
  }
  return total / receivers;
};
