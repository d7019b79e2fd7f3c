import { extentOf, joined, middleOf } from '../extents.ts';
import { isLocked, keysOf } from '../items.ts';
import type { ItemRef, Project } from '../project.ts';
import { type Handle, handle, LEVEL, UP } from './handle.ts';
import { onSurfaceHandles, surfaceHandles } from './surfaces.ts';
import {
  loudspeakerHandles,
  objectHandles,
  pictureHandles,
  rowHandles,
  seatHandles,
  subwooferHandles,
} from './things.ts';

const handlesOfOne = (project: Project, ref: ItemRef): Handle[] => {
  switch (ref.kind) {
    case 'loudspeaker':
      return loudspeakerHandles(project, ref);
    case 'subwoofer':
      return subwooferHandles(project, ref);
    case 'seat':
      return seatHandles(project, ref);
    case 'row':
      return rowHandles(project, ref);
    case 'object':
      return objectHandles(project, ref);
    case 'picture':
      return pictureHandles(project, ref);
    case 'opening':
    case 'patch':
      return onSurfaceHandles(project, ref);
    case 'surface':
      return surfaceHandles(project, ref);
  }
};

const OVER_M = 0.14;
const RISES = new Set<ItemRef['kind']>(['loudspeaker', 'subwoofer', 'object', 'picture']);

/**
 * Every handle of what is chosen. Several things have one handle for their place and, where all of them can rise, one for
 * their height. What is locked has none.
 */
export const handlesFor = (project: Project, chosen: readonly ItemRef[]): Handle[] => {
  const [first] = chosen;
  if (!first || chosen.some((ref) => isLocked(project, ref))) return [];
  if (chosen.length === 1) return keysOf(project, first) ? handlesOfOne(project, first) : [];
  const extent = joined(chosen.flatMap((ref) => extentOf(project, ref) ?? []));
  if (!extent) return [];
  const [x, , z] = middleOf(extent);
  const place = handle(first, 'groupPlace', 'Place', [x, extent.minM[1], z], LEVEL, 'shiftItems');
  if (!chosen.every(({ kind }) => RISES.has(kind))) return [place];
  return [place, handle(first, 'groupHeight', 'Height', [x, extent.maxM[1] + OVER_M, z], UP, 'shiftItems')];
};
