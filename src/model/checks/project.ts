import type { Project } from '../project.ts';
import type { Refusal } from '../refusal.ts';
import { checkIds, checkReferenceSeat, checkSeatCount } from './ids.ts';
import { checkPlaces } from './places.ts';
import { checkShape } from './shape.ts';
import { checkSurfaces } from './surfaces.ts';

/**
 * What one field cannot know of the others: everything the contract refuses beyond types and ranges. In a room that is none
 * nothing can have its place.
 */
export const checkProject = (project: Project): Refusal[] => {
  const shape = checkShape(project);
  const others = [...checkSeatCount(project), ...checkIds(project), ...checkReferenceSeat(project)];
  if (shape.length > 0) return [...shape, ...others];
  return [...others, ...checkSurfaces(project), ...checkPlaces(project)];
};
