import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Extent } from '../../model/extents.ts';
import type { RoomShape } from '../../model/room/shape.ts';
import type { RoomWall } from '../../model/room/walls.ts';

/** A measured distance from a thing's side to a wall or the floor. */
export interface Dimension {
  readonly key: string;
  readonly fromM: Vec3;
  readonly toM: Vec3;
  readonly lengthM: number;
  /** Across the line, for the ticks at its ends. Unit vector. */
  readonly tick: Vec3;
}

/** Nearer than this to its wall a thing touches it: there is nothing to measure. */
const LEAST_M = 0.005;
/** Two dimension lines say something new where their walls turn at least this far from one another. */
const TURNED_COS = Math.cos(Math.PI / 4) - 1e-9;
/** The line to the floor stands clear of the thing's corner. */
const BESIDE_M = 0.06;

const reachOf = ({ minM, maxM }: Extent, [x, z]: Point2): number =>
  (Math.abs(x) * (maxM[0] - minM[0]) + Math.abs(z) * (maxM[2] - minM[2])) / 2;

/** From a thing's side straight to a wall, at one height; null where the line would miss the wall. */
const toWall = (extent: Extent, wall: RoomWall, heightM: number): Dimension | null => {
  const { outward, start, along, lengthM, edge } = wall;
  const middle: Point2 = [(extent.minM[0] + extent.maxM[0]) / 2, (extent.minM[2] + extent.maxM[2]) / 2];
  const gap = (start[0] - middle[0]) * outward[0] + (start[1] - middle[1]) * outward[1];
  const place = (middle[0] - start[0]) * along[0] + (middle[1] - start[1]) * along[1];
  const reach = reachOf(extent, outward);
  if (place < 0 || place > lengthM || gap - reach < LEAST_M) return null;
  // The side that faces the wall: where the line through the middle leaves the thing's outline.
  const scales = [0, 1].flatMap((axis) => {
    const half = (extent.maxM[axis * 2] - extent.minM[axis * 2]) / 2;
    return Math.abs(outward[axis]) > 1e-9 ? [half / Math.abs(outward[axis])] : [];
  });
  const out = Math.min(...scales);
  return {
    key: `wall-${edge}`,
    fromM: [middle[0] + outward[0] * out, heightM, middle[1] + outward[1] * out],
    toM: [middle[0] + outward[0] * gap, heightM, middle[1] + outward[1] * gap],
    lengthM: gap - out,
    tick: [along[0], 0, along[1]],
  };
};

/**
 * From a thing's sides to the nearest wall and to the nearest one that stands at an angle to it, along the walls' own
 * directions, and from its underside to the floor where it does not stand on it.
 * @param heightM where the lines to the walls are drawn
 */
export const dimensionsOf = (extent: Extent, room: RoomShape, heightM: number): readonly Dimension[] => {
  const walls = room.walls
    .flatMap((wall) => {
      const dimension = toWall(extent, wall, heightM);
      return dimension ? [{ wall, dimension }] : [];
    })
    .sort((a, b) => a.dimension.lengthM - b.dimension.lengthM);
  const first = walls[0];
  const second = walls.find(
    ({ wall }) =>
      first !== undefined &&
      Math.abs(wall.outward[0] * first.wall.outward[0] + wall.outward[1] * first.wall.outward[1]) <= TURNED_COS,
  );
  const found = [first, second].flatMap((one) => (one ? [one.dimension] : []));
  const baseM = extent.minM[1];
  if (baseM < 0.02) return found;
  const x = extent.minM[0] - BESIDE_M;
  const z = extent.maxM[2] + BESIDE_M;
  return [...found, { key: 'floor', fromM: [x, baseM, z], toM: [x, 0, z], lengthM: baseM, tick: [1, 0, 0] }];
};

const TICK_M = 0.07;

/** The ticks across a dimension's ends, as pairs of points. */
export const dimensionTicks = ({ fromM, toM, tick }: Dimension): Vec3[] =>
  [fromM, toM].flatMap(([x, y, z]): Vec3[] =>
    [-TICK_M, TICK_M].map((by): Vec3 => [x + tick[0] * by, y + tick[1] * by, z + tick[2] * by]),
  );
