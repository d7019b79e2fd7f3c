import type { Project } from '../project.ts';
import type { Refusal } from '../refusal.ts';
import { checkIds, checkReferenceSeat, checkSeatCount } from './ids.ts';
import { checkPlaces } from './places.ts';
import { checkShape } from './shape.ts';
import { checkSurfaces } from './surfaces.ts';

/** What one field cannot know of the others: everything the contract refuses beyond types and ranges. */
export const checkProject = (project: Project): Refusal[] => [
  ...checkShape(project),
  ...checkSeatCount(project),
  ...checkIds(project),
  ...checkReferenceSeat(project),
  ...checkSurfaces(project),
  ...checkPlaces(project),
];
