import { createBoxField } from './box-field.ts';
import { evenBox } from './patches/even-box.ts';
import { createPatchedBoxField } from './patches/patched-box-field.ts';
import { createPrismField, preparePrism } from './prism/prism-field.ts';
import { type Detail, isPrism, type RoomField, type RoomSpec } from './room-field.ts';

/** Whether the first picture of a room is its last: a box without patches is exact at once. */
export const isExactAtOnce = (spec: RoomSpec): boolean => !isPrism(spec) && (spec.patches ?? []).length === 0;

/**
 * The field of any room the engine knows: a box, a box with patches, a prism. For a first picture prisms are worked out less
 * finely, and a box has its patches spread over their walls.
 */
export const createRoomField = (spec: RoomSpec, detail: Detail): RoomField => {
  if (isPrism(spec)) return createPrismField(spec, detail);
  if (isExactAtOnce(spec)) return createBoxField(spec);
  return detail === 'first' ? createBoxField(evenBox(spec)) : createPatchedBoxField(spec);
};

/**
 * What a field takes longest for at first, bit by bit: each step some 10 to 50 ms. With `modesToHz` what `modes` needs to there. A
 * field made, or asked for its modes, after the last step finds it done. Boxes need nothing.
 */
export function* prepareRoom(spec: RoomSpec, detail: Detail, modesToHz = 0): Generator<void, void> {
  if (isPrism(spec)) yield* preparePrism(spec, detail, modesToHz);
}
