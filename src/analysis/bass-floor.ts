import type { SlicePlane } from '../engines/bass/room-field.ts';
import { driveWeights } from '../engines/bass/superpose.ts';
import type { Project } from '../model/project.ts';
import { roomBox } from '../model/room.ts';
import { seatPoses } from '../model/seating.ts';
import { drivesOf } from './inputs/drives.ts';
import type { BassFloor } from './types.ts';

/** The engine's own number for silence. */
const SILENCE_DB = -300;

const PITCH_M = 0.06;
const LEAST_COLUMNS = 64;
const LEAST_ROWS = 96;

/** The carpet is not the floor itself but where a hand would lie on it. */
const CARPET_M = 0.02;

/** The height of the slice in metres: the ears of a seat (of the first where there is none of that name), or the carpet. */
export const floorHeightM = (project: Project, at: 'ear' | 'carpet', seatId: string): number => {
  if (at === 'carpet') return CARPET_M;
  const poses = seatPoses(project);
  return (poses.find(({ seat }) => seat.id === seatId) ?? poses[0]).earM[1];
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

/** The slice as the engine takes it. */
export const floorPlane = (project: Project, heightM: number): SlicePlane => {
  const { xM, zM } = floorGrid(project);
  const { minM } = roomBox(project);
  return { normal: 1, atM: heightM, uAxis: 0, vAxis: 2, uM: xM.map((x) => x - minM[0]), vM: zM };
};

/** One subwoofer's complex field over the floor's grid, at 0 dB and undelayed. */
export interface UnitField {
  readonly re: Float32Array | Float64Array;
  readonly im: Float32Array | Float64Array;
}

/**
 * The level of all subwoofers together over a horizontal slice, dB against the free field at 1 m of one at 0 dB, from one
 * unit field a subwoofer and the document's drives. -300 dB, which stands for silence, everywhere without subwoofers.
 */
export const bassFloor = (
  project: Project,
  heightM: number,
  frequencyHz: number,
  fields: readonly UnitField[],
): BassFloor => {
  const { xM, zM } = floorGrid(project);
  const drives = drivesOf(project);
  const weights = driveWeights(drives, frequencyHz);
  const levelDb = new Float32Array(xM.length * zM.length);
  for (let i = 0; i < levelDb.length; i += 1) {
    let re = 0;
    let im = 0;
    for (let s = 0; s < fields.length; s += 1) {
      const a = fields[s].re[i];
      const b = fields[s].im[i];
      re += weights[2 * s] * a - weights[2 * s + 1] * b;
      im += weights[2 * s] * b + weights[2 * s + 1] * a;
    }
    levelDb[i] = Math.max(SILENCE_DB, 10 * Math.log10(re * re + im * im));
  }
  return { frequencyHz, heightM, xM, zM, levelDb };
};
