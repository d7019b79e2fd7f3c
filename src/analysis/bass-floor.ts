import type { RoomField } from '../engines/bass/room-field.ts';
import type { Project } from '../model/project.ts';
import { roomBox } from '../model/room.ts';
import { seatPoses } from '../model/seating.ts';
import { drivesOf, driveWeights } from './inputs/drives.ts';
import { sourceTriples } from './inputs.ts';
import type { BassFloor } from './types.ts';

const PITCH_M = 0.06;
const LEAST_COLUMNS = 64;
const LEAST_ROWS = 96;

/** The carpet is not the floor itself but where a hand would lie on it. */
const CARPET_M = 0.02;

/** Where the bass floor lies: at the ears of a seat, or on the carpet. */
export type FloorHeight = { readonly seat: string } | 'carpet';

/** The height of the slice in metres. Throws for a seat that is not there. */
export const floorHeightM = (project: Project, at: FloorHeight): number => {
  if (at === 'carpet') return CARPET_M;
  const pose = seatPoses(project).find(({ seat }) => seat.id === at.seat);
  if (!pose) throw new RangeError(`no seat "${at.seat}"`);
  return pose.earM[1];
};

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

/**
 * The level of all subwoofers together over a horizontal slice at one frequency, dB against the free field at 1 m of one at
 * 0 dB; `field` is the room's nominal one. Minus infinity everywhere without subwoofers.
 */
export const bassFloor = (project: Project, field: RoomField, at: FloorHeight, frequencyHz: number): BassFloor => {
  const { xM, zM } = floorGrid(project);
  const heightM = floorHeightM(project, at);
  const drives = drivesOf(project);
  const levelDb = new Float32Array(xM.length * zM.length);
  if (drives.length === 0) return { frequencyHz, heightM, xM, zM, levelDb: levelDb.fill(Number.NEGATIVE_INFINITY) };
  const { minM } = roomBox(project);
  const uM = xM.map((x) => x - minM[0]);
  const weights = driveWeights(drives, frequencyHz, new Float64Array(2 * drives.length));
  const plane = { normal: 1, atM: heightM, uAxis: 0, vAxis: 2, uM, vM: zM } as const;
  const { re, im } = field.slice(plane, sourceTriples(project), weights, frequencyHz);
  for (let i = 0; i < levelDb.length; i += 1) levelDb[i] = 10 * Math.log10(re[i] * re[i] + im[i] * im[i]);
  return { frequencyHz, heightM, xM, zM, levelDb };
};
