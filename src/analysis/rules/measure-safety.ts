import type { Vec3 } from '../../math/vec3.ts';
import type { ItemRef, Opening, Row } from '../../model/project.ts';
import { frameOf, lowestOver, pointOn, type SurfaceFrame } from '../../model/room/places.ts';
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
  const ceilingM = lowestOver(context.project, plan.minX, plan.maxX, plan.minZ, plan.maxZ);
  const over = context.project.room.objects.filter(
    ({ minM, maxM }) =>
      minM[1] > row.floorM + 1 && meet(plan, { minX: minM[0], maxX: maxM[0], minZ: minM[2], maxZ: maxM[2] }),
  );
  const lowest = over.reduce((least, { minM }) => Math.min(least, minM[1]), ceilingM);
  const causes: ItemRef[] = [rowRef(row.id), ...over.map(({ id }) => ({ kind: 'object' as const, id }))];
  return { rule: 'riser-headroom', seat: null, item: row.id, value: lowest - row.floorM, causes };
};

/** The zone before an opening: a rectangle of the floor from its wall `depthM` into the room. */
interface Zone {
  readonly frame: SurfaceFrame;
  readonly fromM: number;
  readonly toM: number;
  readonly depthM: number;
}

const zoneOf = (context: Context, opening: Opening, depthM: number): Zone | null => {
  const frame = frameOf(context.project, opening);
  if (!frame?.wall) return null;
  return { frame, fromM: opening.fromM, toM: opening.fromM + opening.widthM, depthM };
};

type Span = readonly [number, number];

/** How far an upright rectangle reaches along a level direction, from the wall's own starting point. */
const spanOf = ({ originM: [ox, , oz] }: SurfaceFrame, [dx, , dz]: Vec3, plan: Plan): Span => {
  const at = [
    (plan.minX - ox) * dx + (plan.minZ - oz) * dz,
    (plan.maxX - ox) * dx + (plan.minZ - oz) * dz,
    (plan.minX - ox) * dx + (plan.maxZ - oz) * dz,
    (plan.maxX - ox) * dx + (plan.maxZ - oz) * dz,
  ];
  return [Math.min(...at), Math.max(...at)];
};

/** How far from the opening's wall a thing in its zone begins; null for what is not in it. Separating axes, as far as the wall's go. */
const depthTo = ({ frame, fromM, toM, depthM }: Zone, plan: Plan): number | null => {
  const along = spanOf(frame, frame.u, plan);
  const out = spanOf(frame, frame.n, plan);
  if (along[0] >= toM || along[1] <= fromM || out[0] >= depthM || out[1] <= 0) return null;
  const corners = [fromM, toM].flatMap((s) =>
    [0, depthM].map((d) => pointOn(frame, s, 0).map((v, i) => v + frame.n[i] * d)),
  );
  const bounds = {
    minX: Math.min(...corners.map(([x]) => x)),
    maxX: Math.max(...corners.map(([x]) => x)),
    minZ: Math.min(...corners.map(([, , z]) => z)),
    maxZ: Math.max(...corners.map(([, , z]) => z)),
  };
  return meet(plan, bounds) ? Math.max(0, out[0]) : null;
};

/** A riser this near to a window's wall is under it. */
const SILL_ZONE_M = 0.3;

const windowsOver = (context: Context, { row, plan }: Riser): Measurement<SafetyRule>[] =>
  context.project.room.openings.flatMap((opening) => {
    const zone = opening.kind === 'window' ? zoneOf(context, opening, SILL_ZONE_M) : null;
    if (!zone || depthTo(zone, plan) === null) return [];
    const causes: ItemRef[] = [{ kind: 'opening', id: opening.id }, rowRef(row.id)];
    const value = opening.bottomM - row.floorM;
    return [{ rule: 'riser-window' as const, seat: null, item: opening.id, part: row.id, value, causes }];
  });

/** As far as is looked for something in front of a door: past this it is clear. */
const LOOKED_M = 1.5;

/** How deep a door's way in is clear across its whole width, up to 1.5 m: chairs, objects, cabinets. */
const doorClear = (context: Context, door: Opening): Measurement<SafetyRule>[] => {
  const zone = zoneOf(context, door, LOOKED_M);
  if (!zone) return [];
  const standing = [
    ...footprints(context.project).map((one) => ({
      ref: { kind: 'seat', id: one.pose.seat.id } as ItemRef,
      plan: footprintBounds(one),
    })),
    ...bodyBoxes(context.project)
      .filter(({ minM }) => minM[1] < door.bottomM + door.heightM)
      .map(({ ref, minM, maxM }) => ({ ref, plan: { minX: minM[0], maxX: maxM[0], minZ: minM[2], maxZ: maxM[2] } })),
  ].flatMap(({ ref, plan }) => {
    const depthM = depthTo(zone, plan);
    return depthM === null ? [] : [{ ref, depthM }];
  });
  const value = standing.reduce((least, { depthM }) => Math.min(least, depthM), LOOKED_M);
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
