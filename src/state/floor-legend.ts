import type { BassFloor } from '../analysis/types.ts';
import { type LevelScale, levelScale } from '../math/level-scale.ts';

const scales = new WeakMap<BassFloor, LevelScale>();
let shown: LevelScale | null = null;

/** The scale a bass floor is drawn over: one answer a floor, so that map, legend and ribbon always agree. */
export const floorLegend = (floor: BassFloor): LevelScale => {
  const known = scales.get(floor);
  if (known) return known;
  shown = levelScale(floor.levelDb, shown);
  scales.set(floor, shown);
  return shown;
};
