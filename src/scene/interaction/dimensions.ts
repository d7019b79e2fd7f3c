import type { Vec3 } from '../../math/vec3.ts';
import type { RoomBox } from '../../model/room.ts';
import type { Footprint } from './drag.ts';

/** A measured distance over the floor, from a thing to a wall. */
export interface Dimension {
  readonly key: 'across' | 'along';
  readonly fromM: Vec3;
  readonly toM: Vec3;
  readonly lengthM: number;
}

const between = (key: Dimension['key'], fromM: Vec3, toM: Vec3): Dimension => ({
  key,
  fromM,
  toM,
  lengthM: Math.abs(fromM[0] - toM[0]) + Math.abs(fromM[2] - toM[2]),
});

/** From a thing's sides to the nearer side wall and the nearer of the front and back walls, at one height. */
export const wallDimensions = (print: Footprint, room: RoomBox, heightM: number): readonly [Dimension, Dimension] => {
  const x = (print.minXM + print.maxXM) / 2;
  const z = (print.minZM + print.maxZM) / 2;
  const leftNearer = print.minXM - room.minM[0] <= room.maxM[0] - print.maxXM;
  const frontNearer = print.minZM - room.minM[2] <= room.maxM[2] - print.maxZM;
  const fromX = leftNearer ? print.minXM : print.maxXM;
  const fromZ = frontNearer ? print.minZM : print.maxZM;
  return [
    between('across', [fromX, heightM, z], [(leftNearer ? room.minM : room.maxM)[0], heightM, z]),
    between('along', [x, heightM, fromZ], [x, heightM, (frontNearer ? room.minM : room.maxM)[2]]),
  ];
};

const TICK_M = 0.07;

/** The ticks across a dimension's ends, as pairs of points. */
export const dimensionTicks = ({ key, fromM, toM }: Dimension): Vec3[] =>
  [fromM, toM].flatMap(([x, y, z]): Vec3[] =>
    key === 'across'
      ? [
          [x, y, z - TICK_M],
          [x, y, z + TICK_M],
        ]
      : [
          [x - TICK_M, y, z],
          [x + TICK_M, y, z],
        ],
  );
