import { signedArea } from '../../math/polygon.ts';
import { crossingEdges, type Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project, Row, Seat } from '../project.ts';
import { frameOf, reachUpM } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { tidy, withPlan } from './carry.ts';
import { clampSeatInside } from './clamp.ts';
import { accept, type Edit, refuse } from './edit.ts';
import { rectOn } from './on-surface.ts';

const SQUARE_M = 1e-6;

/** A plan moved so that its front lies at z = 0 and its width about x = 0, as the document's axes have it. */
export const normalised = (corners: readonly Point2[]): Point2[] => {
  const xs = corners.map(([x]) => x);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const front = Math.min(...corners.map(([, z]) => z));
  return corners.map(([x, z]): Point2 => [tidy(x - middle), tidy(z - front)]);
};

/** Whether four corners are those of an upright rectangle. */
export const isRectangle = (corners: readonly Point2[]): boolean =>
  corners.length === 4 &&
  corners.every(([x, z], i) => {
    const [nextX, nextZ] = corners[(i + 1) % 4];
    return Math.abs(x - nextX) < SQUARE_M !== Math.abs(z - nextZ) < SQUARE_M;
  });

const planFrom = (corners: readonly Point2[]): Project['room']['plan'] => {
  if (!isRectangle(corners)) return { shape: 'polygon', cornersM: corners.map(([x, z]): [number, number] => [x, z]) };
  const spread = (axis: 0 | 1) => {
    const values = corners.map((corner) => corner[axis]);
    return tidy(Math.max(...values) - Math.min(...values));
  };
  return { shape: 'rectangle', widthM: spread(0), lengthM: spread(1) };
};

type Inside = (atM: Vec3, sizeM: Vec3) => [number, number, number];

const rowInside = (project: Project, row: Row): Row => ({
  ...row,
  seats: row.seats.map((seat): Seat => {
    const from = { xM: seat.xM, eyeZM: seat.eyeZM ?? row.eyeZM };
    const to = clampSeatInside(project, seat.id, from);
    const eyeZM = tidy(to.eyeZM ?? from.eyeZM);
    const moved = Math.abs(eyeZM - from.eyeZM) > SQUARE_M;
    return { ...seat, xM: tidy(to.xM), ...(moved ? { eyeZM } : {}) };
  }),
});

/** Openings and patches cut down to the walls they are on now; what finds no wall is left out. */
const onWalls = <Item extends Project['room']['openings'][number] | Project['room']['patches'][number]>(
  project: Project,
  items: readonly Item[],
): Item[] =>
  items.flatMap((item) => {
    const frame = frameOf(project, item);
    if (!frame) return [];
    const fromM = Math.max(0, Math.min(item.fromM, frame.alongM - item.widthM));
    const bottomM = Math.max(0, Math.min(item.bottomM, reachUpM(frame, { ...item, fromM }) - item.heightM));
    const cut = rectOn(frame, { ...item, fromM, bottomM });
    return cut ? [{ ...item, ...cut }] : [];
  });

/** Everything that the new walls would leave outside, moved to the nearest place inside. */
const broughtInside = (project: Project): Project => {
  const shape = roomShape(project);
  const inside: Inside = (atM, [width, height, depth]) => {
    const [x, y, z] = shape.nearestInside(atM, [width / 2, height / 2, depth / 2]);
    return [tidy(x), tidy(y), tidy(z)];
  };
  const { room, picture } = project;
  const objects = room.objects.map((object) => {
    const sizeM = object.maxM.map((max, axis) => max - object.minM[axis]) as unknown as Vec3;
    const middle = object.minM.map((min, axis) => min + sizeM[axis] / 2) as unknown as Vec3;
    const to = inside(middle, sizeM);
    const by = to.map((value, axis) => value - middle[axis]);
    if (by.every((value) => Math.abs(value) < SQUARE_M)) return object;
    const moved = (point: Vec3): [number, number, number] => [
      tidy(point[0] + by[0]),
      tidy(point[1] + by[1]),
      tidy(point[2] + by[2]),
    ];
    return { ...object, minM: moved(object.minM), maxM: moved(object.maxM) };
  });
  const { projector } = picture;
  return {
    ...project,
    room: { ...room, objects, openings: onWalls(project, room.openings), patches: onWalls(project, room.patches) },
    picture: {
      ...picture,
      ...(projector ? { projector: { ...projector, atM: inside(projector.atM, [0, 0, 0]) } } : {}),
    },
    rows: project.rows.map((row) => rowInside(project, row)),
    loudspeakers: project.loudspeakers.map((one) => ({ ...one, atM: inside(one.atM, one.sizeM) })),
    subwoofers: project.subwoofers.map((one) => ({ ...one, atM: inside(one.atM, one.sizeM) })),
  };
};

/**
 * Another plan for the room, by its corners [x, z] in either sense: a rectangle where they are one. Openings, patches and
 * finishes go to the walls of the same name; what would stand outside is moved to the nearest place inside. Refused where
 * walls cross or the room is too small.
 */
export const drawPlan = (project: Project, drawn: readonly Point2[]): Edit => {
  const corners = normalised(signedArea(drawn) >= 0 ? drawn : [...drawn].reverse());
  if (corners.length < 3 || corners.length > 64) {
    const allowed = { kind: 'count', of: 'corners', min: 3, max: 64 } as const;
    return refuse({ field: 'room.plan.cornersM', holds: corners.length, lead: 'corners:', allowed });
  }
  const crossing = crossingEdges(corners);
  if (crossing) {
    const allowed = { kind: 'words', words: 'walls that do not cross' } as const;
    return refuse({
      field: 'room.plan.cornersM',
      holds: corners.length,
      lead: 'corners:',
      aside: wallsCross(crossing),
      allowed,
    });
  }
  const plan = planFrom(corners);
  if (plan.shape === 'rectangle')
    for (const side of ['widthM', 'lengthM'] as const)
      if (plan[side] < 1.5 || plan[side] > 30) {
        const allowed = { kind: 'range', min: 1.5, max: 30 } as const;
        return refuse({ field: `room.plan.${side}`, holds: plan[side], allowed });
      }
  const before = roomShape(project).walls;
  const made = roomShape({ room: { ...project.room, plan } }).walls;
  const named = (edge: number): number[] => {
    const name = before.find((wall) => wall.edge === edge)?.surface;
    return made.filter(({ surface }) => surface === name).map((wall) => wall.edge);
  };
  return accept(broughtInside(withPlan(project, plan, named)));
};

/** Which two walls cross, counted from one as the board numbers them. */
export const wallsCross = ([first, second]: readonly [number, number]): string =>
  first === second ? `wall ${first + 1} has no length` : `walls ${first + 1} and ${second + 1} cross or touch`;
