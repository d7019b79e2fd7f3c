import type { Rig } from '../rigs/rig.ts';

export interface CanvasPoint {
  readonly x: number;
  readonly y: number;
}

const ORBIT_DEG_PER_PX = 0.28;
const WHEEL = 0.0012;
const LINE_PX = 16;

/** One finger or button: round the room, or the seated head; the thing under the hand follows it. */
export const dragView = (rig: Rig, dx: number, dy: number, canvasHeight: number): void => {
  if (rig.overlooking) {
    rig.turn(dx * ORBIT_DEG_PER_PX, -dy * ORBIT_DEG_PER_PX);
    return;
  }
  const degPerPx = rig.shot.pose.fovYDeg / canvasHeight;
  rig.turn(-dx * degPerPx, dy * degPerPx);
};

/** Two fingers: their middle moves the view, their distance brings it nearer. */
export const pinchView = (
  rig: Rig,
  last: readonly [CanvasPoint, CanvasPoint],
  next: readonly [CanvasPoint, CanvasPoint],
): void => {
  const span = ([a, b]: readonly [CanvasPoint, CanvasPoint]) => Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));
  const dx = (next[0].x + next[1].x - last[0].x - last[1].x) / 2;
  const dy = (next[0].y + next[1].y - last[0].y - last[1].y) / 2;
  rig.zoom(span(last) / span(next));
  rig.pan(dx, dy);
};

export const wheelView = (rig: Rig, { deltaY, deltaMode }: WheelEvent): void => {
  rig.zoom(Math.exp(Math.max(-240, Math.min(240, deltaMode === 1 ? deltaY * LINE_PX : deltaY)) * WHEEL));
};
