import { band, signedArea } from '../../math/polygon.ts';
import type { Opening, Patch, Project, SurfaceName, SurfaceTreatment } from '../../model/project.ts';
import { isLying, type OnSurface, wallOfItem, wallTreatment } from '../../model/room/places.ts';
import { type RoomShape, roomShape } from '../../model/room/shape.ts';
import type { RoomWall } from '../../model/room/walls.ts';

/** Area of a rectangle on a surface, in the surface's own `fromM` and `bottomM`: only what lies on it counts. */
export type AreaOf = (fromM: number, toM: number, bottomM: number, topM: number) => number;

/** One face of the room: a wall by itself, the floor, or the ceiling with all its planes. */
export interface Face {
  readonly surface: SurfaceName;
  readonly wall: RoomWall | null;
  readonly treatment: SurfaceTreatment | undefined;
  readonly areaM2: number;
  readonly areaOf: AreaOf;
}

const wallArea = ({ lengthM, top }: RoomWall): AreaOf => {
  const region = [[0, 0] as const, [lengthM, 0] as const, ...[...top].reverse()];
  return (from, to, bottom, high) => signedArea(band(band(region, 0, from, to), 1, bottom, high));
};

const floorArea = ({ corners, minM }: RoomShape): AreaOf => {
  const [x, , z] = minM;
  return (from, to, bottom, high) => signedArea(band(band(corners, 0, x + from, x + to), 1, z + bottom, z + high));
};

/** The area of the ceiling's slopes over a rectangle of the plan; a step's upright face is nowhere over the plan. */
const ceilingArea = (shape: RoomShape): AreaOf => {
  const k = shape.ceiling.axis === 0 ? 0 : 1;
  const [x, , z] = shape.minM;
  const slopes = shape.pieces.filter(({ kind }) => kind === 'slope');
  return (from, to, bottom, high) => {
    const part = band(band(shape.corners, 0, x + from, x + to), 1, z + bottom, z + high);
    return slopes.reduce(
      (sum, { places: [start, end], outward }) => sum + signedArea(band(part, k, start, end)) / outward[1],
      0,
    );
  };
};

/** Every face of the room: walls in the room's turning sense, then floor and ceiling. */
export const facesOf = (project: Project): Face[] => {
  const shape = roomShape(project);
  const { surfaces } = project.room;
  return [
    ...shape.walls.map(
      (wall): Face => ({
        surface: wall.surface,
        wall,
        treatment: wallTreatment(project, wall),
        areaM2: wall.areaM2,
        areaOf: wallArea(wall),
      }),
    ),
    {
      surface: 'floor',
      wall: null,
      treatment: surfaces.floor,
      areaM2: shape.areasM2.floor,
      areaOf: floorArea(shape),
    },
    {
      surface: 'ceiling',
      wall: null,
      treatment: surfaces.ceiling,
      areaM2: shape.areasM2.ceiling,
      areaOf: ceilingArea(shape),
    },
  ];
};

/** Whether an opening or a patch lies on a face. */
export const liesOn = (project: Project, { surface, wall }: Face, item: Opening | Patch | OnSurface): boolean => {
  if (wall) return (item.wall !== undefined || !isLying(item.surface)) && wallOfItem(project, item)?.edge === wall.edge;
  return item.wall === undefined && item.surface === surface;
};

/** What says a face's treatment, as the id of a surface: the edge of a polygon plan that has its own, else the surface. */
export const treatmentId = ({ room }: Project, { surface, wall }: Face): string =>
  wall && room.plan.shape === 'polygon' && room.surfaces.walls?.[String(wall.edge)] ? String(wall.edge) : surface;
