import type { Vec3 } from '../../math/vec3.ts';
import type { Project, RoomObject, Row } from '../project.ts';
import type { Refusal } from '../refusal.ts';
import { isBox, type RoomBox, roomBox } from '../room.ts';
import { seatPose } from '../seating.ts';

/** On the wall counts as inside; this much forgives sums of decimals (2.15 - 4.3 / 2). */
const SLACK_M = 1e-9;

export const isInside = (box: RoomBox, pointM: Vec3): boolean =>
  pointM.every((value, axis) => value >= box.minM[axis] - SLACK_M && value <= box.maxM[axis] + SLACK_M);

/** A point that has to lie inside the room. `lead` says what stands there when the field alone does not. */
export const checkInside = (box: RoomBox, pointM: Vec3, field: string, lead?: string): Refusal[] =>
  isInside(box, pointM)
    ? []
    : [{ field, holds: pointM, lead, allowed: { kind: 'inside', minM: box.minM, maxM: box.maxM } }];

export const checkEar = (project: Project, rowIndex: number, seatIndex: number): Refusal[] => {
  const { earM } = seatPose(project, rowIndex, seatIndex);
  return checkInside(roomBox(project), earM, `rows[${rowIndex}].seats[${seatIndex}]`, 'an ear at');
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

export const checkRiser = ({ riser }: Row, field: string): Refusal[] => {
  if (!riser) return [];
  const pairs = [
    ['fromXM', 'toXM'],
    ['fromZM', 'toZM'],
  ] as const;
  return pairs
    .filter(([from, to]) => riser[from] >= riser[to])
    .map(([from, to]) => ({
      field: `${field}.riser.${to}`,
      holds: riser[to],
      allowed: { kind: 'words', words: `more than ${from}, which is ${riser[from]}` },
    }));
};

/** Sources and ears outside the room, objects and risers turned inside out. */
export const checkPlaces = (project: Project): Refusal[] => {
  const refusals = [
    ...project.room.objects.flatMap((object, index) => checkObject(object, `room.objects[${index}]`)),
    ...project.rows.flatMap((row, index) => checkRiser(row, `rows[${index}]`)),
  ];
  if (!isBox(project)) return refusals;
  const box = roomBox(project);
  const sources = (['loudspeakers', 'subwoofers'] as const).flatMap((list) =>
    project[list].flatMap(({ atM }, index) => checkInside(box, atM, `${list}[${index}].atM`)),
  );
  const ears = project.rows.flatMap((row, rowIndex) =>
    row.seats.flatMap((_, seatIndex) => checkEar(project, rowIndex, seatIndex)),
  );
  return [...refusals, ...sources, ...ears];
};
