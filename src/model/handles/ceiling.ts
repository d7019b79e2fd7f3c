import { dot, type Vec3 } from '../../math/vec3.ts';
import { moveCeilingBend, raiseCeiling } from '../commands/ceiling.ts';
import type { ItemRef, Project } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { fineM } from '../snap/lines.ts';
import type { SnapReason } from '../snap/reason.ts';
import { type Handle, type HandleAxis, handle, type Pulled, UP } from './handle.ts';

/** Bends are taken hold of where this share of the ceiling lies before them, clear of the handle that lifts all of it. */
const BEND_SHARE = 0.3;

const ACROSS_X: HandleAxis = { kind: 'surface', right: [1, 0, 0], up: [0, 1, 0] };
const ALONG_Z: HandleAxis = { kind: 'surface', right: [0, 0, 1], up: [0, 1, 0] };

/** The bends of a ceiling, [place, height]: its points, of a slope its ends. */
const bendsOf = (project: Project): readonly (readonly [number, number])[] => {
  const { ceiling } = project.room;
  if (ceiling.shape === 'flat') return [];
  if (ceiling.shape === 'profile') return ceiling.pointsM;
  const { minM, maxM } = roomShape(project);
  const axis = ceiling.across === 'x' ? 0 : 2;
  return [
    [minM[axis], ceiling.startHeightM],
    [maxM[axis], ceiling.endHeightM],
  ];
};

/** The ceiling as a whole goes up and down; every bend of a profile over the room's section, an end of a slope up and down. */
export const ceilingHandles = (project: Project, ref: ItemRef): Handle[] => {
  const { minM, maxM, ceilingAtM } = roomShape(project);
  const { ceiling } = project.room;
  const [x, z] = [(minM[0] + maxM[0]) / 2, (minM[2] + maxM[2]) / 2];
  const whole = handle(ref, 'ceiling', 'Ceiling height', [x, ceilingAtM(x, z), z], UP, 'raiseCeiling');
  if (ceiling.shape === 'flat') return [whole];
  const across = ceiling.across === 'x' ? 0 : 2;
  const other = across === 0 ? 2 : 0;
  const elsewhere = minM[other] + BEND_SHARE * (maxM[other] - minM[other]);
  const section = across === 0 ? ACROSS_X : ALONG_Z;
  const axis = ceiling.shape === 'slope' ? UP : section;
  const label = ceiling.shape === 'slope' ? 'End of the slope' : 'Bend of the ceiling';
  const bends = bendsOf(project).map(([place, heightM], i) => {
    const at = Math.min(Math.max(place, minM[across]), maxM[across]);
    const atM: Vec3 = across === 0 ? [at, heightM, elsewhere] : [elsewhere, heightM, at];
    return handle(ref, 'bend', label, atM, axis, 'moveCeilingBend', String(i));
  });
  return [whole, ...bends];
};

export const pullCeiling = (start: Project, byM: Vec3, reachM: number): Pulled => {
  const { highestM } = roomShape(start);
  return { edit: raiseCeiling(start, fineM(highestM + byM[1], reachM) - highestM), reasons: [] };
};

/** A bend drawn to the height of the bends beside it. */
export const pullBend = (start: Project, { part, axis }: Handle, byM: Vec3, reachM: number): Pulled => {
  const index = Number(part);
  const bends = bendsOf(start);
  const bend = bends[index];
  if (!bend) return { edit: { ok: true, project: start }, reasons: [] };
  const along = axis.kind === 'surface' ? dot(byM, axis.right) : 0;
  const placeM = along === 0 ? bend[0] : fineM(bend[0] + along, reachM);
  const wantedM = bend[1] + byM[1];
  const levelM = [bends[index - 1], bends[index + 1]]
    .flatMap((one) => (one ? [one[1]] : []))
    .find((heightM) => Math.abs(heightM - wantedM) <= reachM);
  const edit = moveCeilingBend(start, index, [placeM, levelM ?? fineM(wantedM, reachM)]);
  const reasons: SnapReason[] = levelM === undefined ? [] : [{ kind: 'levelBend' }];
  return { edit, reasons };
};
