import type { SlicePlane } from '../../engines/bass/room-field.ts';
import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { floorGrid, floorPlane } from '../bass-floor.ts';
import type { Cut } from './wish.ts';

const PITCH_M = 0.06;
const LEAST_HEIGHTS = 32;

/**
 * A slice's grid in the document's axes: u is x (of a slice along the room: z), v is z (of a standing slice: the height).
 */
export interface SliceGrid {
  readonly uM: Float64Array;
  readonly vM: Float64Array;
}

const heights = (toM: number): Float64Array => {
  const count = Math.max(LEAST_HEIGHTS, Math.ceil(toM / PITCH_M) + 1);
  return Float64Array.from({ length: count }, (_, i) => (toM * i) / (count - 1));
};

/** Points about 0.06 m apart from wall to wall, edges included. */
export const sliceGrid = (project: Project, { normal }: Cut): SliceGrid => {
  const { xM, zM } = floorGrid(project);
  if (normal === 'y') return { uM: xM, vM: zM };
  return { uM: normal === 'z' ? xM : zM, vM: heights(roomShape(project).highestM) };
};

/** The same points as the engine takes them. */
export const enginePlane = (project: Project, cut: Cut): SlicePlane => {
  if (cut.normal === 'y') return floorPlane(project, cut.atM);
  const { uM, vM } = sliceGrid(project, cut);
  const [leastX, , leastZ] = roomShape(project).minM;
  return cut.normal === 'z'
    ? { normal: 2, atM: cut.atM - leastZ, uAxis: 0, vAxis: 1, uM: uM.map((x) => x - leastX), vM }
    : { normal: 0, atM: cut.atM - leastX, uAxis: 2, vAxis: 1, uM: uM.map((z) => z - leastZ), vM };
};
