import { extentOf, middleOf } from '../model/extents.ts';
import type { ItemRef, Project } from '../model/project.ts';
import { roomShape } from '../model/room/shape.ts';
import { undusted } from '../model/snap/lines.ts';
import { formatLength, type UnitSystem } from './quantities-length.ts';

/** Nearer to the middle line than this is on it. */
const ON_LINE_M = 0.005;

const acrossText = (xM: number, units: UnitSystem): string => {
  if (Math.abs(xM) < ON_LINE_M) return 'on the middle line';
  return `${formatLength(Math.abs(xM), units)} ${xM < 0 ? 'left' : 'right'} of the middle`;
};

/** Where a thing stands, in a few words and in the person's units; empty for what has no place of its own. */
export const placeText = (project: Project, ref: ItemRef, units: UnitSystem): string => {
  const length = (valueM: number): string => formatLength(valueM, units);
  const fromFront = (zM: number): string => `${length(undusted(zM - roomShape(project).minM[2]))} from the front wall`;
  const { kind, id } = ref;
  if (kind === 'loudspeaker' || kind === 'subwoofer') {
    const found = (kind === 'loudspeaker' ? project.loudspeakers : project.subwoofers).find((one) => one.id === id);
    if (!found) return '';
    const [x, y, z] = found.atM;
    return `${acrossText(x, units)}, ${length(y)} high, ${fromFront(z)}`;
  }
  if (kind === 'row' || kind === 'seat') {
    const row = project.rows.find((one) => one.id === id || one.seats.some((seat) => seat.id === id));
    const seat = kind === 'seat' ? row?.seats.find((one) => one.id === id) : undefined;
    if (!row) return '';
    const eyes = `eyes ${fromFront(seat?.eyeZM ?? row.eyeZM)}`;
    if (seat) return `${acrossText(seat.xM, units)}, ${eyes}`;
    return row.floorM > 0 ? `${eyes}, on a riser of ${length(row.floorM)}` : eyes;
  }
  if (kind === 'opening' || kind === 'patch') {
    const found = (kind === 'opening' ? project.room.openings : project.room.patches).find((one) => one.id === id);
    return found ? `from ${length(found.fromM)} along, ${length(found.bottomM)} up` : '';
  }
  if (kind === 'picture') {
    const { centreXM, bottomM, offFrontWallM } = project.picture;
    return `${acrossText(centreXM, units)}, bottom ${length(bottomM)} high, ${length(offFrontWallM)} off the wall`;
  }
  const extent = extentOf(project, ref);
  if (!extent) return '';
  const [x, , z] = middleOf(extent);
  return `${acrossText(x, units)}, ${length(extent.minM[1])} above the floor, ${fromFront(z)}`;
};
