import { finishOf } from '../finishes.ts';
import type { Opening, Patch, Project, SurfaceTreatment } from '../project.ts';
import type { Refusal } from '../refusal.ts';
import { frameOf, reachUpM } from '../room/places.ts';

/** Rounding to whole millimetres on the way from feet must not push a full-width opening off its wall. */
const SLACK_M = 1e-3;

export const checkFinish = (treatment: SurfaceTreatment, field: string): Refusal[] =>
  treatment.finish === undefined || finishOf(treatment.finish)
    ? []
    : [
        {
          field: `${field}.finish`,
          holds: treatment.finish,
          allowed: { kind: 'words', words: 'a finish of the list (plasterboard-on-studs, plaster-on-brick, ...)' },
        },
      ];

export const checkOnSurface = (project: Project, item: Opening | Patch, field: string): Refusal[] => {
  const frame = frameOf(project, item);
  if (!frame) {
    const [key, holds] = item.wall === undefined ? ['surface', item.surface] : ['wall', item.wall];
    return [{ field: `${field}.${key}`, holds, allowed: { kind: 'words', words: 'a wall that the plan has' } }];
  }
  const refusals: Refusal[] = [];
  const check = (start: 'fromM' | 'bottomM', size: 'widthM' | 'heightM', reachM: number) => {
    const end = item[start] + item[size];
    if (end <= reachM + SLACK_M) return;
    refusals.push({
      field: `${field}.${size}`,
      holds: item[size],
      aside: `which ends ${Number(end.toFixed(3))} along a surface of ${Number(reachM.toFixed(3))}`,
      allowed: { kind: 'words', words: `${start} and ${size} together at most ${Number(reachM.toFixed(3))}` },
    });
  };
  check('fromM', 'widthM', frame.alongM);
  check('bottomM', 'heightM', reachUpM(frame, item));
  return refusals;
};

const checkWalls = (project: Project): Refusal[] => {
  const { plan, surfaces } = project.room;
  const edges = plan.shape === 'polygon' ? plan.cornersM.length : 4;
  return Object.keys(surfaces.walls ?? {})
    .filter((edge) => Number(edge) >= edges)
    .map((edge) => ({
      field: 'room.surfaces.walls',
      holds: edge,
      lead: 'the key',
      allowed: { kind: 'range', min: 0, max: edges - 1, whole: true },
    }));
};

/** Finishes that are not in the list, walls the plan has not, patches and openings that leave their surface. */
export const checkSurfaces = (project: Project): Refusal[] => {
  const { surfaces, patches, openings } = project.room;
  const { walls, front, back, left, right, floor, ceiling } = surfaces;
  const sides = Object.entries({ front, back, left, right, floor, ceiling });
  const refusals = [
    ...sides.flatMap(([name, side]) => (side ? checkFinish(side, `room.surfaces.${name}`) : [])),
    ...Object.entries(walls ?? {}).flatMap(([edge, side]) => checkFinish(side, `room.surfaces.walls["${edge}"]`)),
    ...patches.flatMap((patch, index) => checkFinish(patch, `room.patches[${index}]`)),
    ...checkWalls(project),
  ];
  return [
    ...refusals,
    ...patches.flatMap((patch, index) => checkOnSurface(project, patch, `room.patches[${index}]`)),
    ...openings.flatMap((opening, index) => checkOnSurface(project, opening, `room.openings[${index}]`)),
  ];
};
