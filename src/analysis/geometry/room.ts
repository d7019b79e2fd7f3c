import { byBandName } from '../../engines/acoustics/bands.ts';
import { reverberation } from '../../engines/acoustics/reverberation.ts';
import { schroederHz } from '../../engines/acoustics/schroeder.ts';
import type { Project } from '../../model/project.ts';
import { reverberationInput } from '../inputs/surfaces.ts';
import type { RoomReadout } from '../types.ts';

const FIVE_HUNDRED = 2;
const ONE_THOUSAND = 3;

/**
 * Volume, boundary, Eyring times by octave and the Schroeder frequency from the mean of the 500 and 1000 Hz times. Times and
 * frequency are infinite where nothing absorbs.
 */
export const roomReadout = (project: Project): RoomReadout => {
  const input = reverberationInput(project);
  const { surfaceM2, eyringS } = reverberation(input);
  return {
    volumeM3: input.volumeM3,
    surfaceM2,
    rt60S: byBandName(eyringS),
    schroederHz: schroederHz((eyringS[FIVE_HUNDRED] + eyringS[ONE_THOUSAND]) / 2, input.volumeM3),
  };
};
