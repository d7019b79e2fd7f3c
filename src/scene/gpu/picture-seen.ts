import { PerspectiveCamera, type Scene, type WebGLRenderer } from 'three';
import type { Vec3 } from '../../math/vec3.ts';
import { countObjects, type Naming, type PartLabel } from './object-ids.ts';

/** Pixels of the picture's face: those in sight from a seat, and all there would be with nothing in the way. */
export interface PictureSeen {
  readonly seen: number;
  readonly whole: number;
}

const SIZE = 512;
const NEAR_M = 0.03;
const FAR_M = 60;
/** Wide enough for the whole picture from a seat a third of its width away. */
const FOV_DEG = 112;

const isFace = ({ kind, part }: PartLabel): boolean => kind === 'picture' && part === 'face';

/**
 * Counts the picture's pixels from an eye: the drawn scene's own answer to the share of the picture that is seen.
 * `without` names what is left out: the sitter's own figure and chair.
 */
export const pictureSeenFrom = (
  renderer: WebGLRenderer,
  scene: Scene,
  eyeM: Vec3,
  pictureCentreM: Vec3,
  without: (label: PartLabel) => boolean,
): PictureSeen => {
  const camera = new PerspectiveCamera(FOV_DEG, 1, NEAR_M, FAR_M);
  camera.position.set(eyeM[0], eyeM[1], eyeM[2]);
  camera.lookAt(pictureCentreM[0], pictureCentreM[1], pictureCentreM[2]);
  camera.updateMatrixWorld();
  const amongAll: Naming = (label) => (isFace(label) ? 'face' : without(label) ? null : 'rest');
  const alone: Naming = (label) => (isFace(label) ? 'face' : null);
  return {
    seen: countObjects(renderer, scene, camera, SIZE, SIZE, amongAll).face ?? 0,
    whole: countObjects(renderer, scene, camera, SIZE, SIZE, alone).face ?? 0,
  };
};
