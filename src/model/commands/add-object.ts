import type { Vec3 } from '../../math/vec3.ts';
import { freeId } from '../items.ts';
import type { Project } from '../project.ts';
import { lowestOver } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { type Added, centimetres, firstFree, floorGrid } from './add-place.ts';
import { addItem } from './items.ts';

export type ObjectKind = 'box' | 'beam' | 'column' | 'table' | 'lamp';

const NAMES: Readonly<Record<ObjectKind, string>> = {
  box: 'Cabinet',
  beam: 'Beam',
  column: 'Column',
  table: 'Table',
  lamp: 'Lamp',
};

const OFF_M = 0.02;

interface Body {
  readonly sizeM: Vec3;
  readonly places: readonly Vec3[];
}

/** Sizes are common practice; places begin where such a thing usually stands: by a wall, beside the seats, overhead. */
const bodyOf = (project: Project, kind: ObjectKind): Body => {
  const { minM, maxM, lowestM } = roomShape(project);
  const [widthM, lengthM] = [maxM[0] - minM[0], maxM[2] - minM[2]];
  const middle: readonly [number, number] = [minM[0] + widthM / 2, minM[2] + lengthM / 2];
  const row = project.rows[0];
  const eyes = row?.eyeZM ?? middle[1];
  const beside = (sizeM: Vec3): readonly Vec3[] => {
    const right = Math.max(...(row?.seats.map(({ xM }) => xM) ?? [0])) + (row?.seat.widthM ?? 0) / 2;
    return floorGrid(project, [centimetres(right + sizeM[0] / 2 + 0.05), centimetres(eyes)], sizeM[1] / 2);
  };
  switch (kind) {
    case 'box': {
      const sizeM: Vec3 = [0.9, 0.75, 0.4];
      return { sizeM, places: floorGrid(project, [maxM[0] - sizeM[0] / 2 - OFF_M, middle[1]], sizeM[1] / 2) };
    }
    case 'table': {
      const sizeM: Vec3 = [0.45, 0.5, 0.45];
      return { sizeM, places: beside(sizeM) };
    }
    case 'lamp': {
      const sizeM: Vec3 = [0.4, 1.5, 0.4];
      return { sizeM, places: floorGrid(project, [minM[0] + 0.25, maxM[2] - 0.25], sizeM[1] / 2) };
    }
    case 'beam': {
      const sizeM: Vec3 = [centimetres(widthM - 2 * OFF_M), 0.2, 0.15];
      const spots = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].map((share): Vec3 => {
        const z = centimetres(minM[2] + share * lengthM);
        const top = lowestOver(project, minM[0], maxM[0], z - sizeM[2] / 2, z + sizeM[2] / 2);
        return [middle[0], Math.max(sizeM[1] / 2, top - sizeM[1] / 2), z];
      });
      return { sizeM, places: spots };
    }
    case 'column': {
      const sizeM: Vec3 = [0.3, lowestM, 0.3];
      const wish: readonly [number, number] = [minM[0] + 0.17, maxM[2] - 0.17];
      return { sizeM, places: floorGrid(project, wish, lowestM / 2) };
    }
  }
};

const millimetres = (valueM: number): number => Math.round(valueM * 1000) / 1000 + 0;

/** Furniture or a part of the building where it is out of the way. */
export const addObject = (project: Project, kind: ObjectKind): Added => {
  const { sizeM, places } = bodyOf(project, kind);
  const atM = firstFree(project, places, sizeM);
  const id = freeId(project, 'object', `${kind}-1`);
  const corner = (sign: 1 | -1) => atM.map((value, axis) => millimetres(value + (sign * sizeM[axis]) / 2));
  const edit = addItem(project, 'object', { id, kind, name: NAMES[kind], minM: corner(-1), maxM: corner(1) });
  return { edit, item: edit.ok ? { kind: 'object', id } : null };
};
