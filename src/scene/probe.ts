import type { RootState } from '@react-three/fiber';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Pose } from '../engines/movement/pose.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { ItemRef } from '../model/project.ts';
import { countIds, type ObjectCounts, type PartLabel, renderIds, thingAt } from './gpu/object-ids.ts';
import { type PictureSeen, pictureSeenFrom } from './gpu/picture-seen.ts';
import { aimRay, pick } from './interaction/pick.ts';
import type { StageKit } from './kit.ts';
import type { Box } from './overlays/place-labels.ts';

/** What a test may ask of the stage. The app hangs it on the window where it wants to be asked. */
export interface StageProbe {
  /** The camera as last drawn. */
  camera(): Pose;
  /** A point of the room on the canvas, CSS pixels, and its distance before the camera; null behind it. */
  project(pointM: Vec3): { readonly x: number; readonly y: number; readonly depthM: number } | null;
  labelBoxes(): readonly (Box & { readonly key: string })[];
  freeArea(): Box | null;
  /** The colour at a point of the canvas, CSS pixels, sRGB 0 to 255, drawn afresh. */
  colourAt(x: number, y: number): readonly [number, number, number];
  /** What lies under a point of the canvas, lines and labels aside: an item, the bass floor, or nothing that has a name. */
  under(x: number, y: number): ItemRef | 'floor' | null;
  /** Pixels by `kind:id` of everything named, drawn afresh from where the camera stands. */
  objects(width: number, height: number): ObjectCounts;
  /** What is seen at points of the canvas, CSS pixels: `kind:id` or null. */
  thingsAt(points: readonly (readonly [x: number, y: number])[]): (string | null)[];
  /** The picture's pixels from a seat's eye, with the sitter's own figure and chair and the bass floor left out. */
  pictureSeen(seatId: string, eyeM: Vec3): PictureSeen;
  /** Frames drawn so far. */
  frames(): number;
  /** Nothing is on its way: no damping, no transition, no cut, no coarser picture, no light still to be worked out. */
  resting(): boolean;
  /** GPU objects alive, for leak checks. */
  memory(): { readonly geometries: number; readonly textures: number };
}

let current: StageProbe | null = null;

/** The stage that is mounted, if any. */
export const stageProbe = (): StageProbe | null => current;

export const setStageProbe = (probe: StageProbe | null): void => {
  current = probe;
};

export const createStageProbe = (kit: StageKit, get: () => RootState): StageProbe => {
  const point = new Vector3();
  const pixel = new Uint8Array(4);
  return {
    camera: () => kit.rig.shot.pose,
    project([x, y, z]) {
      const { camera, size } = get();
      point.set(x, y, z).applyMatrix4(camera.matrixWorldInverse);
      const depthM = -point.z;
      if (depthM <= 0) return null;
      point.applyMatrix4(camera.projectionMatrix);
      return { x: ((point.x + 1) / 2) * size.width, y: ((1 - point.y) / 2) * size.height, depthM };
    },
    labelBoxes: () => kit.labels.boxes(),
    freeArea: () => kit.rig.free,
    colourAt(x, y) {
      const { gl, scene, camera } = get();
      gl.render(scene, camera);
      const context = gl.getContext();
      const ratio = gl.getPixelRatio();
      const row = context.drawingBufferHeight - 1 - Math.floor(y * ratio);
      context.readPixels(Math.floor(x * ratio), row, 1, 1, context.RGBA, context.UNSIGNED_BYTE, pixel);
      return [pixel[0], pixel[1], pixel[2]];
    },
    under(x, y) {
      const { scene, camera, size } = get();
      aimRay(camera, x, y, size.width, size.height);
      const hit = pick(scene);
      return hit?.floor ? 'floor' : (hit?.ref ?? null);
    },
    objects(width, height) {
      const { gl, scene, camera } = get();
      return countIds(renderIds(gl, scene, camera as PerspectiveCamera, width, height));
    },
    thingsAt(points) {
      const { gl, scene, camera, size } = get();
      const image = renderIds(gl, scene, camera as PerspectiveCamera, size.width, size.height);
      return points.map(([x, y]) => thingAt(image, x / size.width, y / size.height));
    },
    pictureSeen(seatId, eyeM) {
      const { gl, scene } = get();
      // The bass floor is a drawing about the room, nothing that stands in it.
      const own = ({ kind, id }: PartLabel) =>
        kind === 'floor' || (id === seatId && (kind === 'person' || kind === 'seat'));
      return pictureSeenFrom(gl, scene, eyeM, kit.pictureCorners, own);
    },
    frames: () => kit.frames,
    resting: () => !kit.moving && !kit.changing && !kit.stale && !kit.resolution?.coarse,
    memory() {
      const { geometries, textures } = get().gl.info.memory;
      return { geometries, textures };
    },
  };
};
