import { boxModes } from './box-modes.ts';
import type { BoxGeometry } from './box-state.ts';
import { rigidShape } from './screened.ts';

/** Values of the box's rigid shapes at points, in the order of its modes: see RoomField. */
export const boxShapes = (geometry: BoxGeometry, maxHz: number, pointsM: Float64Array): Float64Array => {
  const { sizeM } = geometry;
  const points = pointsM.length / 3;
  const modes = boxModes(geometry, maxHz);
  const values = new Float64Array(modes.length * points);
  modes.forEach(({ order }, mode) => {
    for (let point = 0; point < points; point++) {
      let value = 1;
      for (const axis of [0, 1, 2] as const) {
        const at = Math.min(sizeM[axis], Math.max(0, pointsM[3 * point + axis]));
        value *= rigidShape(order[axis], at, sizeM[axis]);
      }
      values[mode * points + point] = value;
    }
  });
  return values;
};
