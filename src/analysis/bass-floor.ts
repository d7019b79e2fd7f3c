import type { SlicePlane } from '../engines/bass/room-field.ts';
import type { Project } from '../model/project.ts';
import { roomShape } from '../model/room/shape.ts';

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

/** The grid of every bass floor, over the bounds of its room: about 0.06 m apart, at least 64 across and 96 along, edges included. */
export const floorGrid = (project: Project): { readonly xM: Float64Array; readonly zM: Float64Array } => {
  const { minM, maxM } = roomShape(project);
  return { xM: evenly(minM[0], maxM[0], LEAST_COLUMNS), zM: evenly(minM[2], maxM[2], LEAST_ROWS) };
};

/** The slice as the engine takes it. */
export const floorPlane = (project: Project, heightM: number): SlicePlane => {
  const { xM, zM } = floorGrid(project);
  const { minM } = roomShape(project);
  const [leastX, , leastZ] = minM;
  return {
    normal: 1,
    atM: heightM,
    uAxis: 0,
    vAxis: 2,
    uM: xM.map((x) => x - leastX),
    vM: zM.map((z) => z - leastZ),
  };
};
