import { type Object3D, Raycaster, Vector3 } from 'three';
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

/** Where the line from an eye to a point of the picture first meets something drawn; null when it is clear. */
export const firstHidden = (scene: Object3D, seatId: string, eyeM: Vec3, towardsM: Vec3): Vec3 | null => {
  const lengthM = distance(eyeM, towardsM);
  origin.set(eyeM[0], eyeM[1], eyeM[2]);
  direction.set(towardsM[0], towardsM[1], towardsM[2]).sub(origin).normalize();
  ray.set(origin, direction);
  ray.near = OWN_M;
  ray.far = lengthM - AT_PICTURE_M;
  const hit = ray.intersectObject(scene, true).find(({ object }) => hides(object, seatId));
  return hit ? mix(eyeM, towardsM, hit.distance / lengthM) : null;
};
