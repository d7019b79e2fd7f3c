import type { Project } from '../model/project.ts';
import { sameBesides } from '../model/same-besides.ts';
import { seatPoses } from '../model/seating.ts';
import { objectSolids } from './objects.ts';
import { pictureSolids } from './picture.ts';
import { projectorSolids } from './projector.ts';
import { riserSolids } from './room/riser.ts';
import { shellSolids } from './room/shell.ts';
import { chairSolids } from './seating/chair.ts';
import { personSolids } from './seating/person.ts';
import type { Solid } from './solid.ts';
import { loudspeakerSolids } from './sources/loudspeaker.ts';
import { subwooferSolids } from './sources/subwoofer.ts';

/** Everything but the subwoofers. */
const others = (project: Project): readonly Solid[] => [
  ...shellSolids(project),
  ...riserSolids(project),
  ...seatPoses(project).flatMap((pose) => [...chairSolids(pose), ...personSolids(pose)]),
  ...project.loudspeakers.flatMap((loudspeaker) => loudspeakerSolids(project, loudspeaker)),
  ...pictureSolids(project),
  ...projectorSolids(project),
  ...objectSolids(project),
];

/** Of the last room: a subwoofer that is moved changes nothing else that is seen. */
let last: { readonly project: Project; readonly solids: readonly Solid[] } | null = null;

/** Everything that is seen in the room. */
export const roomSolids = (project: Project): Solid[] => {
  if (last === null || !sameBesides(last.project, project, 'subwoofers')) last = { project, solids: others(project) };
  return [...last.solids, ...project.subwoofers.flatMap((subwoofer) => subwooferSolids(project, subwoofer))];
};
