import type { Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { roomShape } from '../model/room/shape.ts';
import type { RoomWall } from '../model/room/walls.ts';
import type { ArrangementRow } from '../proposals/subwoofers/arrangements.ts';
import type { Change } from '../proposals/subwoofers/proposal.ts';
import { formatQuantity } from './quantities.ts';
import type { UnitSystem } from './quantities-length.ts';

const ARRANGEMENTS: Readonly<Record<ArrangementRow['id'], string>> = {
  now: 'As it is now',
  'front-middle': 'One, front middle',
  'front-quarter': 'One, a quarter in',
  'front-corner': 'One, front corner',
  'front-corners': 'Two, front corners',
  'front-quarters': 'Two, front quarters',
  'front-back-middles': 'Two, front and back middle',
  'side-middles': 'Two, side middles',
  'opposite-corners': 'Two, opposite corners',
  'four-corners': 'Four, corners',
  'four-middles': 'Four, wall middles',
  'four-quarters': 'Four, front and back quarters',
};

export const arrangementTitle = (id: ArrangementRow['id']): string => ARRANGEMENTS[id];

const NUMBERS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight'];

/** "Three subwoofers". */
export const countTitle = (count: number): string => `${NUMBERS[count] ?? count} subwoofer${count === 1 ? '' : 's'}`;

interface Off {
  readonly wall: RoomWall;
  readonly gapM: number;
}

/** Walls that a plan point looks at squarely, the nearest first. */
const wallsOff = (project: Project, [x, , z]: Vec3): Off[] =>
  roomShape(project)
    .walls.flatMap((wall): Off[] => {
      const alongM = (x - wall.start[0]) * wall.along[0] + (z - wall.start[1]) * wall.along[1];
      if (alongM < -1e-6 || alongM > wall.lengthM + 1e-6) return [];
      return [{ wall, gapM: (wall.start[0] - x) * wall.outward[0] + (wall.start[1] - z) * wall.outward[1] }];
    })
    .filter(({ gapM }) => gapM > -1e-6)
    .sort((a, b) => a.gapM - b.gapM);

/** Nearer to two walls than this is a corner. */
const CORNER_M = 0.6;

/** Where something stands, as a fitter finds it: "front left corner", or "back wall, 1.20 m from the left wall". */
export const placeText = (project: Project, atM: Vec3, units: UnitSystem): string => {
  const [first, ...others] = wallsOff(project, atM);
  if (!first) return 'in the room';
  const across = others.filter(
    ({ wall }) => Math.abs(wall.outward[0] * first.wall.outward[0] + wall.outward[1] * first.wall.outward[1]) < 0.5,
  );
  const second = across[0];
  if (!second) return `${first.wall.surface} wall`;
  if (second.gapM < CORNER_M && first.gapM < CORNER_M) {
    const names = [first.wall.surface, second.wall.surface].sort((a) => (a === 'front' || a === 'back' ? -1 : 1));
    return `${names.join(' ')} corner`;
  }
  const middle = across.length > 1 && Math.abs(across[1].gapM - second.gapM) < 0.03;
  if (middle) return `middle of the ${first.wall.surface} wall`;
  return `${first.wall.surface} wall, ${formatQuantity(second.gapM, 'length', units)} from the ${second.wall.surface} wall`;
};

/** A drive in words: "-2.0 dB, 3.1 ms later, polarity reversed". */
export const driveText = (gainDb: number, delayMs: number, inverted: boolean, units: UnitSystem): string =>
  [
    gainDb === 0 ? 'full gain' : formatQuantity(gainDb, 'decibel', units),
    delayMs === 0 ? 'no delay' : `${formatQuantity(delayMs, 'time', units)} later`,
    inverted ? 'polarity reversed' : 'polarity normal',
  ].join(', ');

export const changeText = (project: Project, change: Change, units: UnitSystem): string => {
  switch (change.what) {
    case 'moved':
      return `${change.id} from ${placeText(project, change.fromM, units)} to ${placeText(project, change.toM, units)}`;
    case 'added':
      return `${change.id}, new: ${placeText(project, change.toM, units)}`;
    case 'removed':
      return `${change.id} goes, from ${placeText(project, change.fromM, units)}`;
    case 'driven':
      return `${change.id}: ${driveText(change.gainDb, change.delayMs, change.inverted, units)}`;
  }
};

/** A step of a search, for the line beside its bar. */
export const doingText = (doing: 'places' | 'search' | 'drives' | 'figures'): string =>
  ({
    places: 'Listening from every place along the walls',
    search: 'Trying every choice of places',
    drives: 'Trying gain, delay and polarity',
    figures: 'Weighing what was found',
  })[doing];
