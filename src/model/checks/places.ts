import type { Vec3 } from '../../math/vec3.ts';
import type { Project, RoomObject, Row } from '../project.ts';
import type { Allowed, Refusal } from '../refusal.ts';
import { type RoomShape, roomShape } from '../room/shape.ts';
import { seatPose } from '../seating.ts';

const SLACK_M = 1e-9;

/** What a point outside the room should have kept to: the room's bounds, else its walls, else its ceiling there. */
const wantedInside = ({ minM, maxM, contains, ceilingAtM }: RoomShape, [x, y, z]: Vec3): Allowed => {
  const bounded = [x, y, z].every((value, axis) => value >= minM[axis] - SLACK_M && value <= maxM[axis] + SLACK_M);
  const inside = { kind: 'inside', minM, maxM } as const;
  if (!bounded) return inside;
  return { ...inside, past: contains([x, 0, z]) ? { ceilingM: ceilingAtM(x, z) } : 'walls' };
};

/** A point that has to lie inside the room. `lead` says what stands there when the field alone does not. */
export const checkInside = (room: RoomShape, pointM: Vec3, field: string, lead?: string): Refusal[] =>
  room.contains(pointM) ? [] : [{ field, holds: pointM, lead, allowed: wantedInside(room, pointM) }];

export const checkEar = (project: Project, rowIndex: number, seatIndex: number): Refusal[] => {
  const { earM } = seatPose(project, rowIndex, seatIndex);
  return checkInside(roomShape(project), earM, `rows[${rowIndex}].seats[${seatIndex}]`, 'an ear at');
};

const AXES = ['x', 'y', 'z'];

export const checkObject = ({ minM, maxM }: RoomObject, field: string): Refusal[] =>
  AXES.flatMap((axis, index) =>
    minM[index] < maxM[index]
      ? []
      : [
          {
            field: `${field}.maxM[${index}]`,
            holds: maxM[index],
            allowed: { kind: 'words', words: `more than minM[${index}], which is ${minM[index]} (${axis})` },
          },
        ],
  );

const EDGES = [
  ['fromXM', 'toXM'],
  ['fromZM', 'toZM'],
] as const;

type Edged = Partial<Record<(typeof EDGES)[number][number], number>>;

/** Edges the wrong way round; one that is left out is as usual and never wrong. */
const checkEdges = (edged: Edged, field: string): Refusal[] =>
  EDGES.flatMap(([from, to]) => {
    const [low, high] = [edged[from], edged[to]];
    if (low === undefined || high === undefined || low < high) return [];
    return [
      { field: `${field}.${to}`, holds: high, allowed: { kind: 'words', words: `more than ${from}, which is ${low}` } },
    ];
  });

export const checkRiser = ({ riser }: Row, field: string): Refusal[] => {
  if (!riser) return [];
  const steps = riser.steps.flatMap((step, index) => checkEdges(step, `${field}.riser.steps[${index}]`));
  return [...checkEdges(riser, `${field}.riser`), ...steps];
};

/** Sources and ears outside the room, objects, risers and steps turned inside out. */
export const checkPlaces = (project: Project): Refusal[] => {
  const refusals = [
    ...project.room.objects.flatMap((object, index) => checkObject(object, `room.objects[${index}]`)),
    ...project.rows.flatMap((row, index) => checkRiser(row, `rows[${index}]`)),
  ];
  const room = roomShape(project);
  const sources = (['loudspeakers', 'subwoofers'] as const).flatMap((list) =>
    project[list].flatMap(({ atM }, index) => checkInside(room, atM, `${list}[${index}].atM`)),
  );
  const ears = project.rows.flatMap((row, rowIndex) =>
    row.seats.flatMap((_, seatIndex) => checkEar(project, rowIndex, seatIndex)),
  );
  return [...refusals, ...sources, ...ears];
};
