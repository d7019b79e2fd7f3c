import type { Project } from '../../model/project.ts';
import { partsOf, type RawPart } from '../geometries.ts';
import { bevelledBox } from '../mesh/bevelled-box.ts';
import { standing } from '../placement.ts';
import type { Solid } from '../solid.ts';
import { riserBoxes, type StandingBox } from './riser-boxes.ts';

const NOSE_M = 0.024;
const NOSE_HEIGHT_M = 0.03;

/** A platform about the middle of its front edge at floor level, with a wooden nosing along that edge. */
const platformParts = (width: number, depth: number, base: number, top: number): RawPart[] => {
  const w = width / 2;
  const nose = Math.min(NOSE_HEIGHT_M, (top - base) / 2);
  return [
    {
      part: 'platform',
      material: 'carpet',
      mesh: bevelledBox([-w, base, 0], [w, top, depth], 0.004),
    },
    {
      part: 'nosing',
      material: 'oak',
      mesh: bevelledBox([-w, top - nose, -NOSE_M / 2], [w, top + 0.002, NOSE_M * 2], 0.006),
    },
  ];
};

const boxSolids = (rowId: string, name: string, box: StandingBox): Solid[] => {
  const { fromXM, toXM, fromZM, toZM, baseM, topM } = box;
  const [width, depth] = [toXM - fromXM, toZM - fromZM];
  const placement = standing([(fromXM + toXM) / 2, 0, fromZM]);
  return partsOf('platform', [width, depth, baseM, topM], () => platformParts(width, depth, baseM, topM)).map(
    ({ part, ...rest }) => ({ kind: 'riser', id: rowId, part: name + part, ...rest, placement }),
  );
};

/** The platforms of raised rows with their nosings and steps; the id is the row's. */
export const riserSolids = (project: Project): Solid[] =>
  riserBoxes(project).flatMap((riser) => [
    ...boxSolids(riser.rowId, '', riser),
    ...riser.steps.flatMap((step, i) => boxSolids(riser.rowId, `step-${i + 1}-`, step)),
  ]);
