import type { Box } from '../overlays/place-labels.ts';

/** Handles stand this far apart, middle to middle: a finger's target is 44 px across. */
export const HANDLE_TARGET_PX = 44;

/** A handle that wants to stand at a point of the canvas, or near it along its own axis. CSS pixels. */
export interface HandleWish {
  readonly x: number;
  readonly y: number;
  /** Its axis on the canvas, a unit vector; [0, 0] without one. */
  readonly axisX: number;
  readonly axisY: number;
}

export interface HandlePlace {
  readonly x: number;
  readonly y: number;
}

const RINGS_PX = [0, 26, 46, 66, 88, 112, 140];
const TURNS = Array.from({ length: 8 }, (_, k): readonly [number, number] => [
  Math.cos((k * Math.PI) / 4),
  Math.sin((k * Math.PI) / 4),
]);

const clear = (taken: readonly HandlePlace[], x: number, y: number): boolean =>
  taken.every((other) => Math.hypot(other.x - x, other.y - y) >= HANDLE_TARGET_PX);

const inside = (free: Box, x: number, y: number): boolean => {
  const half = HANDLE_TARGET_PX / 2;
  return (
    x >= free.left + half &&
    y >= free.top + half &&
    x <= free.left + free.width - half &&
    y <= free.top + free.height - half
  );
};

const placeFor = (wish: HandleWish, free: Box, taken: readonly HandlePlace[]): HandlePlace | null => {
  const ways: (readonly [number, number])[] =
    wish.axisX === 0 && wish.axisY === 0
      ? []
      : [
          [wish.axisX, wish.axisY],
          [-wish.axisX, -wish.axisY],
        ];
  for (const ring of RINGS_PX)
    for (const [dx, dy] of [...ways, ...TURNS]) {
      const x = wish.x + dx * ring;
      const y = wish.y + dy * ring;
      if (inside(free, x, y) && clear(taken, x, y)) return { x, y };
    }
  return null;
};

/**
 * A place for every handle within the free area, none nearer to another than a finger needs: each as near to where it
 * belongs as the earlier ones allow, moved along its own axis first. Null for one that finds none: it is out of view, or
 * there are too many.
 */
export const layHandles = (wishes: readonly HandleWish[], free: Box): (HandlePlace | null)[] => {
  const taken: HandlePlace[] = [];
  return wishes.map((wish) => {
    const place = placeFor(wish, free, taken);
    if (place) taken.push(place);
    return place;
  });
};
