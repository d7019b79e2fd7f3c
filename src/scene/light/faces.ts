import { momentsOf } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { pointOn, wallFrame } from '../../model/room/places.ts';
import type { RoomShape } from '../../model/room/shape.ts';
import type { WallName } from '../../model/room/walls.ts';
import { cellsOf } from '../../shapes/room/cells.ts';

/** A piece of the room's inner face that throws light back. */
export interface FaceCell {
  readonly atM: Vec3;
  readonly areaM2: number;
  /** Unit vector into the room. */
  readonly inward: Vec3;
  readonly reflectance: number;
}

/** How much light each inner face throws back: the palette's mid tones, with the boards lighter and the front dark. */
const WALL_REFLECTANCE: Readonly<Record<WallName, number>> = { front: 0.12, back: 0.22, left: 0.22, right: 0.22 };
const FLOOR_REFLECTANCE = 0.16;
const CEILING_REFLECTANCE = 0.14;

const CELL_M = 0.55;
const NO_LINES = { u: [], v: [] };

/** The middles and areas of a region's cells. */
const middles = (outline: readonly Point2[]): { readonly at: Point2; readonly area: number }[] =>
  cellsOf({ outline, holes: [] }, CELL_M, NO_LINES).flatMap((cell) => {
    const { area, first } = momentsOf(cell);
    return area > 1e-6 ? [{ at: [first[0] / area, first[1] / area] as Point2, area }] : [];
  });

const opposite = ([x, y, z]: Vec3): Vec3 => [0 - x, 0 - y, 0 - z];

/** All inner faces of a room cut into cells. Steps of the ceiling are too small to matter. */
export const faceCells = ({ walls, corners, pieces, ceilingAtM, ceiling }: RoomShape): FaceCell[] => [
  ...walls
    .filter(({ areaM2 }) => areaM2 > 1e-4)
    .flatMap((wall) => {
      const frame = wallFrame(wall);
      const outline: Point2[] = [[0, 0], [wall.lengthM, 0], ...[...wall.top].reverse()];
      return middles(outline).map(
        ({ at, area }): FaceCell => ({
          atM: pointOn(frame, at[0], at[1]),
          areaM2: area,
          inward: frame.n,
          reflectance: WALL_REFLECTANCE[wall.surface],
        }),
      );
    }),
  ...middles(corners).flatMap(({ at: [x, z], area }): FaceCell[] => {
    const s = ceiling.axis === 0 ? x : z;
    const over = pieces.find(({ kind, places }) => kind === 'slope' && s >= places[0] && s <= places[1]);
    const floor: FaceCell = { atM: [x, 0, z], areaM2: area, inward: [0, 1, 0], reflectance: FLOOR_REFLECTANCE };
    if (!over) return [floor];
    return [
      floor,
      {
        atM: [x, ceilingAtM(x, z), z],
        areaM2: area / over.outward[1],
        inward: opposite(over.outward),
        reflectance: CEILING_REFLECTANCE,
      },
    ];
  }),
];
