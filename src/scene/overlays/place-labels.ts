/** A rectangle on the canvas, CSS pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A label that wants a place near its anchor. */
export interface LabelWish {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Higher goes first; equal ones in order of nearness. */
  readonly priority: number;
  readonly depthM: number;
  /** Where it stood last, to stay there if it can; -1 for nowhere. */
  lastPlace: number;
  /** The answer: its upper left corner, or not shown. */
  left: number;
  top: number;
  shown: boolean;
}

/** Kept clear between labels. */
export const LABEL_GAP_PX = 3;
const RINGS_PX = [9, 26, 46, 72];
/** Above and below first, then the corners, then the sides: which way the label's box lies from its anchor. */
const WAYS: readonly (readonly [number, number])[] = [
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [1, 0],
  [-1, 0],
];
export const PLACES = RINGS_PX.length * WAYS.length;

const meets = (a: Box, left: number, top: number, width: number, height: number, gap: number): boolean =>
  left < a.left + a.width + gap &&
  a.left < left + width + gap &&
  top < a.top + a.height + gap &&
  a.top < top + height + gap;

const inside = (free: Box, left: number, top: number, width: number, height: number): boolean =>
  left >= free.left &&
  top >= free.top &&
  left + width <= free.left + free.width &&
  top + height <= free.top + free.height;

const tryPlace = (wish: LabelWish, place: number, free: Box, taken: readonly Box[]): boolean => {
  const away = RINGS_PX[Math.floor(place / WAYS.length)];
  const [x, y] = WAYS[place % WAYS.length];
  const left = Math.round(wish.x - wish.width / 2 + x * (wish.width / 2 + away));
  const top = Math.round(wish.y - wish.height / 2 + y * (wish.height / 2 + away));
  if (!inside(free, left, top, wish.width, wish.height)) return false;
  for (const box of taken) if (meets(box, left, top, wish.width, wish.height, LABEL_GAP_PX)) return false;
  wish.left = left;
  wish.top = top;
  wish.lastPlace = place;
  wish.shown = true;
  return true;
};

/** Labels may cover this share of the free area and no more: on a small screen the least important stay away. */
const MOST_COVERED = 0.1;

/**
 * Finds each label a place within the free area where it meets no other and nothing to be kept clear; who finds none is
 * not shown. Sorts the wishes in place: the more important choose first, and each tries its last place before others.
 */
export const placeLabels = (wishes: LabelWish[], free: Box, clear: readonly Box[]): void => {
  wishes.sort((a, b) => b.priority - a.priority || a.depthM - b.depthM);
  const taken: Box[] = [...clear];
  let left = MOST_COVERED * free.width * free.height;
  for (const wish of wishes) {
    wish.shown = false;
    left -= wish.width * wish.height;
    if (left < 0) continue;
    let placed = wish.lastPlace >= 0 && tryPlace(wish, wish.lastPlace, free, taken);
    for (let place = 0; place < PLACES && !placed; place++) placed = tryPlace(wish, place, free, taken);
    if (placed) taken.push({ left: wish.left, top: wish.top, width: wish.width, height: wish.height });
    else wish.lastPlace = -1;
  }
};
