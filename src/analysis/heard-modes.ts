import { bandDecayS, type ModalTerm, resonantSize, THIRD_OCTAVES } from '../engines/bass/modal-terms.ts';
import type { RoomMode } from '../engines/bass/room-field.ts';
import { driveWeights } from '../engines/bass/superpose.ts';
import type { Project } from '../model/project.ts';
import { soundSpeedOf } from '../model/room.ts';
import { drivesOf } from './inputs/drives.ts';
import { seatIdsInOrder } from './inputs.ts';
import { modeReadouts } from './modes.ts';
import type { HeardModes } from './types.ts';

/** A mode coupled this much less than the strongest adds nothing to a decay: -80 dB. */
const UNHEARD = 1e-4;
/** Quieter than this is as good as nothing, dB. */
const SILENCE_DB = -300;

/**
 * The modes by what a seat hears of each: the level the mode alone would have there at its own frequency, from the present
 * subwoofers as they are driven (modal-terms.ts). A mode with a node at the seat, or one that the subwoofers together do
 * not excite, comes last. Decay by third octave is that of the terms that are heard.
 * @param shapes values at the subwoofers, then at the seats, in the document's order: index mode * places + place
 */
export const heardModes = (
  project: Project,
  seatId: string,
  modes: readonly RoomMode[],
  shapes: Float64Array,
): HeardModes => {
  const drives = drivesOf(project);
  const seats = seatIdsInOrder(project);
  const places = drives.length + seats.length;
  const seat = drives.length + Math.max(0, seats.indexOf(seatId));
  const soundSpeed = soundSpeedOf(project);
  const orders = modeReadouts(modes);
  const terms = modes.slice(0, shapes.length / places).map(({ dampedHz, decayS }, n): ModalTerm => {
    const weights = driveWeights(drives, dampedHz);
    let re = 0;
    let im = 0;
    for (let s = 0; s < drives.length; s += 1) {
      re += weights[2 * s] * shapes[n * places + s];
      im += weights[2 * s + 1] * shapes[n * places + s];
    }
    return { hz: dampedHz, decayS, coupling: Math.hypot(re, im) * Math.abs(shapes[n * places + seat]) };
  });
  const least = UNHEARD * terms.reduce((most, { coupling }) => Math.max(most, coupling), 0);
  const heard = terms.map((term, n) => {
    const size = resonantSize(term, soundSpeed);
    return {
      hz: orders[n].hz,
      order: orders[n].order,
      decayS: term.decayS,
      levelDb: size > 0 ? Math.max(SILENCE_DB, 20 * Math.log10(size)) : SILENCE_DB,
    };
  });
  const thirds = THIRD_OCTAVES.map(({ nominalHz, lowHz, highHz }) => {
    const within = terms.filter(({ hz, coupling }) => hz >= lowHz && hz < highHz && coupling > least);
    return { hz: nominalHz, decayS: bandDecayS(within), modes: within.length };
  });
  return { seatId, modes: heard.sort((a, b) => b.levelDb - a.levelDb), thirds };
};
