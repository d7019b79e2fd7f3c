import type { Camera, Object3D } from 'three';
import type { CanvasPoint } from './camera-hand.ts';
import type { HeldHandle } from './handle-board.ts';
import type { Hit } from './pick.ts';

/** A press that moves less than this is a click. */
const CLICK_PX = 4;
/** A finger is less steady than a mouse. */
const TAP_PX = 9;

/** One press on the canvas, from going down to letting go. */
export interface Press extends CanvasPoint {
  readonly hit: Hit | null;
  readonly held: HeldHandle | null;
  readonly pans: boolean;
  readonly boxes: boolean;
  readonly touch: boolean;
  moved: boolean;
  /** A long press has done its work: letting go does nothing more. */
  done: boolean;
}

/** Whether a press has gone so far that it is a drag. */
export const isDrag = (press: Press, { x, y }: CanvasPoint): boolean =>
  Math.hypot(x - press.x, y - press.y) >= (press.touch ? TAP_PX : CLICK_PX);

/** What the hand reaches into: the drawn scene and its camera. */
export interface HandScene {
  readonly scene: Object3D;
  readonly camera: Camera;
}
