import type { ItemRef, Opening, Row } from '../../model/project.ts';
import { roomBox } from '../../model/room.ts';
import { type RiserBox, riserBoxes } from '../../shapes/room/riser-boxes.ts';
import { bodyBoxes } from './boxes.ts';
import { type Context, rowRef } from './context.ts';
import { footprintBounds, footprints } from './footprints.ts';
import { measureSteps } from './measure-steps.ts';
import { meet, type Plan, planOf } from './plans.ts';
import type { Measurement } from './rule.ts';

type SafetyRule = 'riser-step' | 'riser-headroom' | 'riser-window' | 'door-clear';

interface Riser {
  readonly row: Row;
  readonly box: RiserBox;
  readonly plan: Plan;
}

/** The rows that stand on a riser, each with its outline as it is drawn. */
const risers = (context: Context): Riser[] =>
  riserBoxes(context.project).flatMap((box) => {
    const row = context.project.rows.find(({ id }) => id === box.rowId);
    return row ? [{ row, box, plan: planOf(box) }] : [];
  });

const headroom = (context: Context, { row, plan }: Riser): Measurement<SafetyRule> => {
  const { heightM } = roomBox(context.project);
  const over = context.project.room.objects.filter(
    ({ minM, maxM }) =>
      minM[1] > row.floorM + 1 && meet(plan, { minX: minM[0], maxX: maxM[0], minZ: minM[2], maxZ: maxM[2] }),
  );
  const lowest = over.reduce((least, { minM }) => Math.min(least, minM[1]), heightM);
  const causes: ItemRef[] = [rowRef(row.id), ...over.map(({ id }) => ({ kind: 'object' as const, id }))];
  return { rule: 'riser-headroom', seat: null, item: row.id, value: lowest - row.floorM, causes };
};

/** An opening in plan, thickened to `depthM` into the room. */
const openingPlan = (context: Context, opening: Opening, depthM: number): Plan | null => {
  const { minM, maxM } = roomBox(context.project);
  const { surface, fromM, widthM } = opening;
  const x = { minX: minM[0] + fromM, maxX: minM[0] + fromM + widthM };
  const z = { minZ: fromM, maxZ: fromM + widthM };
  switch (surface) {
    case 'left':
      return { minX: minM[0], maxX: minM[0] + depthM, ...z };
    case 'right':
      return { minX: maxM[0] - depthM, maxX: maxM[0], ...z };
    case 'front':
      return { ...x, minZ: 0, maxZ: depthM };
    case 'back':
      return { ...x, minZ: maxM[2] - depthM, maxZ: maxM[2] };
    default:
      return null;
  }
};

const windowsOver = (context: Context, { row, plan }: Riser): Measurement<SafetyRule>[] =>
  context.project.room.openings.flatMap((opening) => {
    const at = opening.kind === 'window' ? openingPlan(context, opening, 0.3) : null;
    if (!at || !meet(at, plan)) return [];
    const causes: ItemRef[] = [{ kind: 'opening', id: opening.id }, rowRef(row.id)];
    const value = opening.bottomM - row.floorM;
    return [{ rule: 'riser-window' as const, seat: null, item: opening.id, part: row.id, value, causes }];
  });

/** As far as is looked for something in front of a door: past this it is clear. */
const LOOKED_M = 1.5;

/** How deep a door's way in is clear across its whole width, up to 1.5 m: chairs, objects, cabinets. */
const doorClear = (context: Context, door: Opening): Measurement<SafetyRule>[] => {
  const zone = openingPlan(context, door, LOOKED_M);
  if (!zone) return [];
  const standing = [
    ...footprints(context.project).map((one) => ({
      ref: { kind: 'seat', id: one.pose.seat.id } as ItemRef,
      plan: footprintBounds(one),
    })),
    ...bodyBoxes(context.project)
      .filter(({ minM }) => minM[1] < door.bottomM + door.heightM)
      .map(({ ref, minM, maxM }) => ({ ref, plan: { minX: minM[0], maxX: maxM[0], minZ: minM[2], maxZ: maxM[2] } })),
  ].filter(({ plan }) => meet(plan, zone));
  const depthTo = (plan: Plan): number => {
    if (door.surface === 'left') return plan.minX - zone.minX;
    if (door.surface === 'right') return zone.maxX - plan.maxX;
    return door.surface === 'front' ? plan.minZ : zone.maxZ - plan.maxZ;
  };
  const value = standing.reduce((least, { plan }) => Math.min(least, Math.max(0, depthTo(plan))), LOOKED_M);
  const causes: ItemRef[] = [{ kind: 'opening', id: door.id }, ...standing.map(({ ref }) => ref)];
  return [{ rule: 'door-clear', seat: null, item: door.id, value, causes }];
};

/** Steps, headroom, sills over risers and the way out. */
export const measureSafety = (context: Context): Measurement<SafetyRule>[] => [
  ...risers(context).flatMap((riser) => [
    measureSteps(context, riser.row, riser.box),
    headroom(context, riser),
    ...windowsOver(context, riser),
  ]),
  ...context.project.room.openings
    .filter(({ kind }) => kind !== 'window')
    .flatMap((opening) => doorClear(context, opening)),
];
