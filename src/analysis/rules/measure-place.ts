import { distance, type Vec3 } from '../../math/vec3.ts';
import type { ItemRef } from '../../model/project.ts';
import { type RoomShape, roomShape } from '../../model/room/shape.ts';
import { pictureFace } from '../../shapes/picture.ts';
import { bodyBoxes, depthInto } from './boxes.ts';
import { type Context, loudspeakerRef, pictureRef, seatRef } from './context.ts';
import { footprintBounds, footprintDepth, footprints } from './footprints.ts';
import type { Measurement } from './rule.ts';

type PlaceRule = 'chairs-overlap' | 'things-overlap' | 'outside-room' | 'picture-fits' | 'caution-overhead';

/** Less than this is a matter of drawing, not of carpentry. */
const NOTICED_M = 0.01;

/** Arms of neighbouring places of one sofa are shared, so its chairs may stand this far into one another. */
const SHARED_ARM_M = 0.02;

const chairs = (context: Context): Measurement<PlaceRule>[] => {
  const all = footprints(context.project);
  return all.flatMap((a, index) =>
    all.slice(index + 1).flatMap((b) => {
      const depth = footprintDepth(a, b);
      const shared = a.pose.row === b.pose.row && a.pose.row.furniture === 'sofa' ? SHARED_ARM_M : 0;
      if (depth <= NOTICED_M + shared) return [];
      const ids = [a.pose.seat.id, b.pose.seat.id];
      const facts = { other: ids[1] };
      return [
        { rule: 'chairs-overlap' as const, seat: ids[0], item: ids[1], value: depth, causes: ids.map(seatRef), facts },
      ];
    }),
  );
};

const things = (context: Context): Measurement<PlaceRule>[] => {
  const boxes = bodyBoxes(context.project);
  return boxes.flatMap((a, index) =>
    boxes.slice(index + 1).flatMap((b) => {
      const depth = depthInto(a, b);
      // A loudspeaker may well stand in a cabinet made for it: only bodies of the same making are surely in one another.
      const built = (a.ref.kind === 'object') !== (b.ref.kind === 'object');
      if (built || depth <= NOTICED_M) return [];
      const causes: ItemRef[] = [a.ref, b.ref];
      const facts = { name: a.name, other: b.name };
      return [
        { rule: 'things-overlap' as const, seat: null, item: a.ref.id, part: b.ref.id, value: depth, causes, facts },
      ];
    }),
  );
};

/**
 * How far an upright box reaches out of the room: by how much it would have to be moved to stand inside, 0 for one that
 * does. A box too large to be moved in reaches as far as its own half.
 */
const past = (room: RoomShape, minM: Vec3, maxM: Vec3): number => {
  const half = minM.map((low, i) => (maxM[i] - low) / 2) as unknown as Vec3;
  const middle = minM.map((low, i) => low + half[i]) as unknown as Vec3;
  if (room.contains(middle, half)) return 0;
  return distance(middle, room.nearestInside(middle, half));
};

const outside = (context: Context): Measurement<PlaceRule>[] => {
  const room = roomShape(context.project);
  const bodies = bodyBoxes(context.project).map((body) => ({
    rule: 'outside-room' as const,
    seat: null,
    item: body.ref.id,
    value: past(room, body.minM, body.maxM),
    causes: [body.ref],
    facts: { name: body.name },
  }));
  const seats = footprints(context.project).map((footprint) => {
    const { minX, maxX, minZ, maxZ } = footprintBounds(footprint);
    const { id } = footprint.pose.seat;
    return {
      rule: 'outside-room' as const,
      seat: id,
      item: null,
      value: past(room, [minX, 0, minZ], [maxX, 0, maxZ]),
      causes: [seatRef(id)],
    };
  });
  return [...bodies, ...seats].filter(({ value }) => value > NOTICED_M);
};

/** Points of the picture that are asked for the room round them, in halves of its width and of its height. */
const ACROSS = [-1, -0.5, 0, 0.5, 1];

/** How far the lit face reaches through the walls or the ceiling: as far as that point of it that lies farthest outside. */
const picture = (context: Context): Measurement<PlaceRule>[] => {
  const room = roomShape(context.project);
  const { centreM, widthM, heightM } = pictureFace(context.project);
  const [x, y, z] = centreM;
  if (room.contains(centreM, [widthM / 2, heightM / 2, 0])) return [];
  const points = ACROSS.flatMap((i) => ACROSS.map((j): Vec3 => [x + (i * widthM) / 2, y + (j * heightM) / 2, z]));
  const value = Math.max(...points.map((point) => distance(point, room.nearestInside(point))));
  if (value <= NOTICED_M) return [];
  const facts = { widthM, heightM };
  return [{ rule: 'picture-fits', seat: null, item: null, value, causes: [pictureRef], facts }];
};

/** Anything heavy fixed above heads: loudspeakers in or on the ceiling, a projector. */
const overhead = (context: Context): Measurement<PlaceRule>[] => {
  const { loudspeakers, picture } = context.project;
  const { highestM } = roomShape(context.project);
  const above = loudspeakers.filter(({ mount, atM }) => mount.includes('ceiling') || atM[1] > 0.85 * highestM);
  const projector = picture.projector && picture.projector.atM[1] > 0.6 * highestM ? 1 : 0;
  if (above.length + projector === 0) return [];
  return [
    {
      rule: 'caution-overhead',
      seat: null,
      item: null,
      value: null,
      causes: above.map(({ id }) => loudspeakerRef(id)),
      facts: { loudspeakers: above.length, projector },
    },
  ];
};

/** Odd but possible: things in one another or through a wall, the picture too; and what hangs overhead. */
export const measurePlace = (context: Context): Measurement<PlaceRule>[] => [
  ...chairs(context),
  ...things(context),
  ...outside(context),
  ...picture(context),
  ...overhead(context),
];
