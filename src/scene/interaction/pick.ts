import { type Camera, type Intersection, type Object3D, Raycaster, Vector2, Vector3 } from 'three';
import type { Vec3 } from '../../math/vec3.ts';
import type { ItemKind, ItemRef } from '../../model/project.ts';
import type { Ray } from './handle-motion.ts';

/** What a ray through a point of the canvas meets. */
export interface Hit {
  /** Null for the bass floor and for what belongs to no item. */
  readonly ref: ItemRef | null;
  readonly floor: boolean;
  /** It is a wall, the floor or the ceiling of the room itself. */
  readonly shell: boolean;
  readonly atM: Vec3;
}

/** Which item a drawn thing stands for. */
const ITEM: Readonly<Record<string, ItemKind>> = {
  seat: 'seat',
  person: 'seat',
  row: 'row',
  riser: 'row',
  subwoofer: 'subwoofer',
  loudspeaker: 'loudspeaker',
  object: 'object',
  picture: 'picture',
  projector: 'picture',
  opening: 'opening',
  patch: 'patch',
};

const raycaster = new Raycaster();
const point = new Vector2();
const normal = new Vector3();

const nameOf = (object: Object3D): { readonly kind: string; readonly id: string } | null => {
  for (let at: Object3D | null = object; at; at = at.parent) {
    const { kind, id } = at.userData;
    if (typeof kind === 'string' && typeof id === 'string') return { kind, id };
  }
  return null;
};

const shown = (object: Object3D): boolean => {
  for (let at: Object3D | null = object; at; at = at.parent) if (!at.visible) return false;
  return true;
};

/** Walls are cut away from outside, so only a face that looks back at the eye can be touched. */
const facesEye = ({ face, object }: Intersection): boolean =>
  face ? normal.copy(face.normal).transformDirection(object.matrixWorld).dot(raycaster.ray.direction) < 0 : false;

/** Aims at a point of the canvas, CSS pixels. */
export const aimRay = (camera: Camera, x: number, y: number, width: number, height: number): void => {
  point.set((2 * x) / width - 1, 1 - (2 * y) / height);
  raycaster.setFromCamera(point, camera);
  raycaster.near = 0;
  raycaster.far = Number.POSITIVE_INFINITY;
};

/** The nearest thing the aimed ray meets. */
export const pick = (scene: Object3D): Hit | null => {
  for (const hit of raycaster.intersectObject(scene, true)) {
    const name = nameOf(hit.object);
    if (!name || !shown(hit.object)) continue;
    const atM: Vec3 = [hit.point.x, hit.point.y, hit.point.z];
    if (name.kind === 'floor') return { ref: null, floor: true, shell: false, atM };
    const kind = ITEM[name.kind];
    if (kind) return { ref: { kind, id: kind === 'picture' ? 'picture' : name.id }, floor: false, shell: false, atM };
    if (facesEye(hit)) return { ref: null, floor: false, shell: true, atM };
  }
  return null;
};

/** The aimed ray. */
export const aimedRay = (): Ray => {
  const { origin, direction } = raycaster.ray;
  return { originM: [origin.x, origin.y, origin.z], direction: [direction.x, direction.y, direction.z] };
};
