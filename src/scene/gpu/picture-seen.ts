import { MathUtils, PerspectiveCamera, type Scene, Vector3, type WebGLRenderer } from 'three';
import type { Vec3 } from '../../math/vec3.ts';
import { countIds, type Naming, type PartLabel, renderIds } from './object-ids.ts';

/** Pixels of the picture's face: those in sight from a seat, and all there would be with nothing in the way. */
export interface PictureSeen {
  readonly seen: number;
  readonly whole: number;
}

const SIZE = 720;
const NEAR_M = 0.03;
const FAR_M = 60;
/** The picture fills the image but for this much. */
const MARGIN = 1.03;

/** A camera at an eye whose image is filled by the picture. */
const cameraFor = (eyeM: Vec3, corners: readonly Vec3[]): PerspectiveCamera => {
  const camera = new PerspectiveCamera(90, 1, NEAR_M, FAR_M);
  camera.position.set(eyeM[0], eyeM[1], eyeM[2]);
  const points = corners.map(([x, y, z]) => new Vector3(x, y, z));
  const middle = points.reduce((sum, point) => sum.addScaledVector(point, 1 / points.length), new Vector3());
  camera.lookAt(middle);
  camera.updateMatrixWorld();
  const tangents = points.map((point) => {
    point.applyMatrix4(camera.matrixWorldInverse);
    return Math.max(Math.abs(point.x), Math.abs(point.y)) / -point.z;
  });
  camera.fov = MathUtils.radToDeg(2 * Math.atan(MARGIN * Math.max(...tangents)));
  camera.updateProjectionMatrix();
  return camera;
};

const isFace = ({ kind, part }: PartLabel): boolean => kind === 'picture' && part === 'face';

/**
 * Counts the picture's pixels from an eye: the drawn scene's own answer to the share of the picture that is seen.
 * `without` names what is left out: the sitter's own figure and chair.
 */
export const pictureSeenFrom = (
  renderer: WebGLRenderer,
  scene: Scene,
  eyeM: Vec3,
  corners: readonly Vec3[],
  without: (label: PartLabel) => boolean,
): PictureSeen => {
  const camera = cameraFor(eyeM, corners);
  const amongAll: Naming = (label) => (isFace(label) ? 'face' : without(label) ? null : 'rest');
  const alone: Naming = (label) => (isFace(label) ? 'face' : null);
  const faceOf = (naming: Naming) => countIds(renderIds(renderer, scene, camera, SIZE, SIZE, naming)).face ?? 0;
  return { seen: faceOf(amongAll), whole: faceOf(alone) };
};
