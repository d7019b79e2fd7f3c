import type { SlicePlane } from '../engines/bass/room-field.ts';
import type { Project } from '../model/project.ts';
import { roomBox } from '../model/room.ts';

const PITCH_M = 0.06;
const LEAST_COLUMNS = 64;
const LEAST_ROWS = 96;

/** Evenly spaced from one wall to the other, both included. */
const evenly = (fromM: number, toM: number, least: number): Float64Array => {
  const count = Math.max(least, Math.ceil((toM - fromM) / PITCH_M) + 1);
  return Float64Array.from({ length: count }, (_, i) =>
    i === count - 1 ? toM : fromM + ((toM - fromM) * i) / (count - 1),
  );
};

/** The grid of every bass floor of a room: about 0.06 m apart, at least 64 across and 96 along, edges included. */
export const floorGrid = (project: Project): { readonly xM: Float64Array; readonly zM: Float64Array } => {
  const { widthM, lengthM } = roomBox(project);
  return { xM: evenly(-widthM / 2, widthM / 2, LEAST_COLUMNS), zM: evenly(0, lengthM, LEAST_ROWS) };
};

/** The slice as the engine takes it. */
export const floorPlane = (project: Project, heightM: number): SlicePlane => {
  const { xM, zM } = floorGrid(project);
  const { minM } = roomBox(project);
  return { normal: 1, atM: heightM, uAxis: 0, vAxis: 2, uM: xM.map((x) => x - minM[0]), vM: zM };
};
