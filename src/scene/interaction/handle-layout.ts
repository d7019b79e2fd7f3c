import type { Box } from '../overlays/place-labels.ts';

/** Handles stand this far apart, middle to middle: a finger's target is 44 px across. */
export const HANDLE_TARGET_PX = 44;

/** A handle that wants to stand at a point of the canvas, or near it along its own axis, and where it found a place. CSS pixels. */
export interface HandleWish {
  readonly anchorX: number;
  readonly anchorY: number;
  /** Its axis on the canvas, a unit vector; [0, 0] without one. */
  readonly axisX: number;
  readonly axisY: number;
  x: number;
  y: number;
  /** Before: whether it wants a place. After: whether it has one. */
  shown: boolean;
}

const RINGS_PX = [0, 26, 46, 66, 88, 112, 140];
/** Along its own axis to either side, then round the clock. */
const WAYS = 10;
const TURN_X = Float64Array.from({ length: 8 }, (_, k) => Math.cos((k * Math.PI) / 4));
const TURN_Y = Float64Array.from({ length: 8 }, (_, k) => Math.sin((k * Math.PI) / 4));

const clear = (wishes: readonly HandleWish[], count: number, x: number, y: number): boolean => {
  for (let i = 0; i < count; i++) {
    const other = wishes[i];
    if (other.shown && Math.hypot(other.x - x, other.y - y) < HANDLE_TARGET_PX) return false;
  }
  return true;
};

const inside = (free: Box, x: number, y: number): boolean => {
  const half = HANDLE_TARGET_PX / 2;
  return (
    x >= free.left + half &&
    y >= free.top + half &&
    x <= free.left + free.width - half &&
    y <= free.top + free.height - half
  );
};

const place = (wishes: readonly HandleWish[], index: number, free: Box): boolean => {
  const wish = wishes[index];
  const { anchorX, anchorY, axisX, axisY } = wish;
  const from = axisX === 0 && axisY === 0 ? 2 : 0;
  for (let ring = 0; ring < RINGS_PX.length; ring++)
    for (let way = from; way < WAYS; way++) {
      const x = anchorX + (way < 2 ? axisX * (1 - 2 * way) : TURN_X[way - 2]) * RINGS_PX[ring];
      const y = anchorY + (way < 2 ? axisY * (1 - 2 * way) : TURN_Y[way - 2]) * RINGS_PX[ring];
      if (!inside(free, x, y) || !clear(wishes, index, x, y)) continue;
      wish.x = x;
      wish.y = y;
      return true;
    }
  return false;
};

/**
 * A place for every handle that wants one within the free area, none nearer to another than a finger needs: each as near to
 * where it belongs as the earlier ones allow, moved along its own axis first. One that finds none is not shown: it is out
 * of view, or there are too many. Allocates nothing: it runs in every frame.
 */
export const layHandles = (wishes: readonly HandleWish[], free: Box): void => {
  for (let i = 0; i < wishes.length; i++) if (wishes[i].shown) wishes[i].shown = place(wishes, i, free);
};
