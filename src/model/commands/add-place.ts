import type { Vec3 } from '../../math/vec3.ts';
import { type Extent, extentOf } from '../extents.ts';
import type { ItemRef, Project } from '../project.ts';
import { frameOf, pointOn } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { type Edit, refuseWords } from './edit.ts';

/** A thing added: the document with it, and which it is. */
export interface Added {
  readonly edit: Edit;
  readonly item: ItemRef | null;
  /** What was added with it, when several things come at once. */
  readonly also?: readonly ItemRef[];
}

/** Whole centimetres. */
export const centimetres = (valueM: number): number => Math.round(valueM * 100) / 100 + 0;

const SLACK_M = 1e-6;

const meet = (a: Extent, b: Extent): boolean =>
  [0, 1, 2].every((axis) => a.minM[axis] < b.maxM[axis] - SLACK_M && a.maxM[axis] > b.minM[axis] + SLACK_M);

export const around = ([x, y, z]: Vec3, [width, height, depth]: Vec3): Extent => ({
  minM: [x - width / 2, y - height / 2, z - depth / 2],
  maxM: [x + width / 2, y + height / 2, z + depth / 2],
});

/** In front of a way through a wall this much floor is kept clear. */
const DOORWAY_M = 0.9;

const doorways = (project: Project): Extent[] =>
  project.room.openings
    .filter(({ kind, bottomM }) => kind !== 'window' && bottomM < 0.3)
    .flatMap((opening) => {
      const frame = frameOf(project, opening);
      if (!frame) return [];
      const corners = [opening.fromM, opening.fromM + opening.widthM].flatMap((along) => {
        const [x, , z] = pointOn(frame, along, 0);
        return [
          [x, z],
          [x + frame.n[0] * DOORWAY_M, z + frame.n[2] * DOORWAY_M],
        ];
      });
      const xs = corners.map(([x]) => x);
      const zs = corners.map(([, z]) => z);
      return [
        {
          minM: [Math.min(...xs), 0, Math.min(...zs)] as const,
          maxM: [Math.max(...xs), opening.heightM, Math.max(...zs)] as const,
        },
      ];
    });

/** The room that is taken already: cabinets, chairs, objects, the picture, and the floor before doors. */
export const taken = (project: Project): readonly Extent[] => {
  const refs: ItemRef[] = [
    ...project.loudspeakers.map(({ id }): ItemRef => ({ kind: 'loudspeaker', id })),
    ...project.subwoofers.map(({ id }): ItemRef => ({ kind: 'subwoofer', id })),
    ...project.room.objects.map(({ id }): ItemRef => ({ kind: 'object', id })),
    ...project.rows.flatMap((row) => row.seats.map(({ id }): ItemRef => ({ kind: 'seat', id }))),
    { kind: 'picture', id: 'picture' },
  ];
  return [...refs.flatMap((ref) => extentOf(project, ref) ?? []), ...doorways(project)];
};

/** Whether a box of this size about a point lies in the room and meets nothing that stands there. */
export const isFree = (project: Project, others: readonly Extent[], atM: Vec3, sizeM: Vec3): boolean => {
  const half: Vec3 = [sizeM[0] / 2, sizeM[1] / 2, sizeM[2] / 2];
  return roomShape(project).contains(atM, half) && !others.some((other) => meet(around(atM, sizeM), other));
};

/**
 * The first of the places that is free; where none is, the first that lies in the room at all, so that adding never fails
 * for want of space: what overlaps is shown by a finding.
 */
export const firstFree = (project: Project, places: readonly Vec3[], sizeM: Vec3): Vec3 => {
  const others = taken(project);
  const half: Vec3 = [sizeM[0] / 2, sizeM[1] / 2, sizeM[2] / 2];
  const shape = roomShape(project);
  const free = places.find((atM) => isFree(project, others, atM, sizeM));
  return free ?? places.find((atM) => shape.contains(atM, half)) ?? shape.nearestInside(places[0], half);
};

/** Places on the floor in a grid, the nearest to a wish first. */
export const floorGrid = (project: Project, [wishX, wishZ]: readonly [number, number], yM: number): Vec3[] => {
  const { minM, maxM } = roomShape(project);
  const STEP_M = 0.2;
  const places: Vec3[] = [];
  for (let x = minM[0] + STEP_M; x < maxM[0]; x += STEP_M)
    for (let z = minM[2] + STEP_M; z < maxM[2]; z += STEP_M) places.push([centimetres(x), yM, centimetres(z)]);
  const away = ([x, , z]: Vec3): number => Math.hypot(x - wishX, z - wishZ);
  return [[wishX, yM, wishZ], ...places.sort((a, b) => away(a) - away(b))];
};

export const nowhere = (field: string, words: string): Added => ({
  edit: refuseWords(field, undefined, words),
  item: null,
});
