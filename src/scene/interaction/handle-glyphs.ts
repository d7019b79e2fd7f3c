import type { HandleKind } from '../../model/handles/handle.ts';

const ARROWS = 'M-9 0H9M-9 0l4-3.5M-9 0l4 3.5M9 0l-4-3.5M9 0l-4 3.5';
const CROSS = 'M-9 0H9M0-9V9M-9 0l3-2.5M-9 0l3 2.5M9 0l-3-2.5M9 0l-3 2.5M0-9l-2.5 3M0-9l2.5 3M0 9l-2.5-3M0 9l2.5-3';
const RING = 'M-7 0a7 7 0 1 0 14 0a7 7 0 1 0-14 0M-1.5 0a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0-3 0';
const SQUARE = 'M-5.5-5.5H5.5V5.5H-5.5Z';
const TURN = 'M-8 4a9 9 0 0 1 16 0M-8 4l-.5-5M-8 4l4.5-1.8M8 4l.5-5M8 4l-4.5-1.8';

/** A handle's drawing about its middle, and whether it is turned along its axis as the view shows it. */
export const GLYPHS: Readonly<Record<HandleKind, { readonly path: string; readonly turns: boolean }>> = {
  place: { path: CROSS, turns: false },
  groupPlace: { path: CROSS, turns: false },
  projectorPlace: { path: CROSS, turns: false },
  slide: { path: CROSS, turns: false },
  aim: { path: RING, turns: false },
  facing: { path: TURN, turns: false },
  recline: { path: ARROWS, turns: true },
  pictureCorner: { path: SQUARE, turns: false },
  corner: { path: SQUARE, turns: false },
  bend: { path: SQUARE, turns: false },
  height: { path: ARROWS, turns: true },
  groupHeight: { path: ARROWS, turns: true },
  projectorHeight: { path: ARROWS, turns: true },
  pictureHeight: { path: ARROWS, turns: true },
  pictureAcross: { path: ARROWS, turns: true },
  pictureOff: { path: ARROWS, turns: true },
  rowPlace: { path: CROSS, turns: false },
  rowDistance: { path: ARROWS, turns: true },
  riserHeight: { path: ARROWS, turns: true },
  riserFront: { path: ARROWS, turns: true },
  riserBack: { path: ARROWS, turns: true },
  objectSide: { path: ARROWS, turns: true },
  edge: { path: ARROWS, turns: true },
  wall: { path: ARROWS, turns: true },
  ceiling: { path: ARROWS, turns: true },
};
