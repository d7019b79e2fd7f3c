import { type Intersection, Mesh, type Object3D, Raycaster, Vector3 } from 'three';
import { distance, mix, type Vec3 } from '../../math/vec3.ts';

/** What can stand between an eye and the picture. */
const HIDING = new Set(['person', 'seat', 'row', 'object', 'subwoofer', 'loudspeaker']);
/** A sitter's own head and chair are behind this. */
const OWN_M = 0.22;
/** Loudspeakers and frames at the picture itself hide nothing of it. */
const AT_PICTURE_M = 0.02;

const ray = new Raycaster();
const origin = new Vector3();
const direction = new Vector3();

const hides = (object: Object3D, seatId: string): boolean => {
  for (let at: Object3D | null = object; at; at = at.parent) {
    const { kind, id } = at.userData;
    if (typeof kind === 'string') return HIDING.has(kind) && !(kind !== 'object' && id === seatId);
  }
  return false;
};

/** Everything drawn that can stand before this seat's eye: asked for once, for all its lines. */
export const hidersOf = (scene: Object3D, seatId: string): readonly Object3D[] => {
  const hiders: Object3D[] = [];
  scene.traverse((object) => {
    if (object instanceof Mesh && hides(object, seatId)) hiders.push(object);
  });
  return hiders;
};

const hits: Intersection[] = [];

/** Where the line from an eye to a point of the picture first meets one of these; null when it is clear. */
export const firstHidden = (hiders: readonly Object3D[], eyeM: Vec3, towardsM: Vec3): Vec3 | null => {
  const lengthM = distance(eyeM, towardsM);
  origin.set(eyeM[0], eyeM[1], eyeM[2]);
  direction.set(towardsM[0], towardsM[1], towardsM[2]).sub(origin).normalize();
  ray.set(origin, direction);
  ray.near = OWN_M;
  ray.far = lengthM - AT_PICTURE_M;
  let nearestM = Number.POSITIVE_INFINITY;
  for (const hider of hiders) {
    hits.length = 0;
    for (const hit of ray.intersectObject(hider, false, hits)) nearestM = Math.min(nearestM, hit.distance);
    ray.far = Math.min(ray.far, nearestM);
  }
  return nearestM < lengthM ? mix(eyeM, towardsM, nearestM / lengthM) : null;
};
