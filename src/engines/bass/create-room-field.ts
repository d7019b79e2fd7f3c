import { createBoxField } from './box-field.ts';
import { createPatchedBoxField } from './patches/patched-box-field.ts';
import { createPrismField } from './prism/prism-field.ts';
import { type Detail, isPrism, type RoomField, type RoomSpec } from './room-field.ts';

/**
 * The field of any room the engine knows: a box, a box with patches, a prism. Only prisms are worked out more or less finely;
 * a box is exact at once.
 */
export const createRoomField = (spec: RoomSpec, detail: Detail): RoomField => {
  if (isPrism(spec)) return createPrismField(spec, detail);
  return spec.patches !== undefined && spec.patches.length > 0 ? createPatchedBoxField(spec) : createBoxField(spec);
};
