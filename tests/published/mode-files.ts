import { readFileSync } from 'node:fs';
import type { BoxSpec, RoomMode } from '../../src/engines/bass/room-field.ts';
import type { PrismFile } from './prism-files.ts';

/** Damped modes of a prism with patches as the reference files write them. */
export interface ModeFile extends Pick<PrismFile, 'constants' | 'room' | 'walls'> {
  patches: NonNullable<PrismFile['patches']>;
  modes: { k: [number, number] }[];
}

export const loadModes = (name: string): ModeFile =>
  JSON.parse(readFileSync(new URL(`../fixtures/bass/${name}.json`, import.meta.url), 'utf8')) as ModeFile;

/** A file's rectangle as a box of x, y and height: the file counts walls round the plan, and along each of them. */
export const asBox = ({ room, constants, walls, patches }: ModeFile): BoxSpec => {
  const [wide, long] = room.polygon_m[2];
  const numbers = [2, 1, 3, 0, 4, 5];
  return {
    sizeM: [wide, long, room.height_m],
    soundSpeed: constants.c_m_s,
    admittance: [3, 1, 0, 2, 4, 5].map((wall) => walls[wall].beta),
    patches: patches.map(({ wall, from_m, to_m, beta }) => {
      const turned = wall === 2 ? wide : wall === 3 ? long : null;
      return {
        wall: numbers[wall],
        fromM: turned === null ? from_m : [turned - to_m[0], from_m[1]],
        toM: turned === null ? to_m : [turned - from_m[0], to_m[1]],
        admittance: beta,
      };
    }),
  };
};

/** Per mode of a file: how far the nearest of `modes` in the plane of k is off, Re in Hz and the decay relative. */
export const decayErrors = (
  { constants: { c_m_s: c }, modes: wanted }: Pick<ModeFile, 'constants' | 'modes'>,
  modes: readonly RoomMode[],
): { hz: number; decay: number }[] => {
  const left = [...modes];
  return wanted.map(({ k: [re, im] }) => {
    const hz = (re * c) / (2 * Math.PI);
    const deltaHz = (im * c) / (2 * Math.PI);
    const gap = (mode: RoomMode): number =>
      Math.hypot(mode.dampedHz - hz, (3 * Math.LN10) / mode.decayS / (2 * Math.PI) - deltaHz);
    const nearest = left.reduce((best, mode) => (gap(mode) < gap(best) ? mode : best));
    // each mode answers for one of the file's
    left.splice(left.indexOf(nearest), 1);
    return {
      hz: Math.abs(nearest.dampedHz - hz),
      decay: Math.abs((nearest.decayS * 2 * Math.PI * deltaHz) / (3 * Math.LN10) - 1),
    };
  });
};
