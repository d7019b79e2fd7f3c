import { createContext, useContext } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Vec3 } from '../math/vec3.ts';
import { rendererHere } from './gpu/renderer.ts';
import { createHandStore } from './interaction/hand-store.ts';
import { HandleBoard } from './interaction/handle-board.ts';
import { LabelBoard } from './overlays/label-board.ts';
import type { Box } from './overlays/place-labels.ts';
import type { Resolution } from './rigs/resolution.ts';
import { Rig } from './rigs/rig.ts';

/** What one stage's parts share below React: the rig, the veil over the canvas, and what is counted. */
export class StageKit {
  readonly rig = new Rig();
  readonly labels = new LabelBoard();
  readonly handles = new HandleBoard();
  /** What the hand is doing. */
  readonly hand = createHandStore();
  /** Who draws. */
  readonly renderer = rendererHere();
  /** Something around the camera changed: the rig reads its surroundings before the next frame. */
  stale = true;
  frames = 0;
  /** How finely it is drawn; null before the first frame. */
  resolution: Pick<Resolution, 'coarse'> | null = null;
  /** The camera moved in the last frame. */
  moving = false;
  /** Light or walls of the room were still changing in the last frame. */
  changing = false;
  /** The dark sheet a cut from seat to seat fades through. */
  veil: HTMLElement | null = null;
  /** The picture's corners, for what must stay clear of it. */
  pictureCorners: readonly Vec3[] = [];
  private readonly point = new Vector3();

  /** The rectangle on the canvas that holds the picture as this camera sees it; null when it is out of view. */
  pictureBox(camera: PerspectiveCamera): Box | null {
    const area = this.rig.free;
    if (!area) return null;
    let left = Number.POSITIVE_INFINITY;
    let right = Number.NEGATIVE_INFINITY;
    let top = Number.POSITIVE_INFINITY;
    let bottom = Number.NEGATIVE_INFINITY;
    for (const corner of this.pictureCorners) {
      this.point.set(corner[0], corner[1], corner[2]).applyMatrix4(camera.matrixWorldInverse);
      if (this.point.z > -camera.near) return null;
      this.point.applyMatrix4(camera.projectionMatrix);
      const x = ((this.point.x + 1) / 2) * area.canvasWidth;
      const y = ((1 - this.point.y) / 2) * area.canvasHeight;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
    return left < right ? { left, top, width: right - left, height: bottom - top } : null;
  }
}

const KitContext = createContext<StageKit | null>(null);
export const KitProvider = KitContext.Provider;

export const useKit = (): StageKit => {
  const kit = useContext(KitContext);
  if (!kit) throw new Error('a part of the stage was mounted outside it');
  return kit;
};
