import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Opening, Patch, Project } from '../../model/project.ts';
import type { CeilingPiece } from '../../model/room/pieces.ts';
import { frameOf, type OnSurface, pointOn, wallFrame, wallId, wallOfItem } from '../../model/room/places.ts';
import { type RoomShape, roomShape } from '../../model/room/shape.ts';
import type { Solid } from '../../shapes/solid.ts';

/** A wall or a plane of the ceiling that is cut away by itself when one looks at it from outside. */
export interface CutFace {
  readonly key: string;
  readonly atM: Vec3;
  readonly outward: Vec3;
  /** Its outline and those of its openings. */
  readonly loopsM: readonly (readonly Vec3[])[];
}

/** Numbers of the ceiling's planes: 'ceiling' where there is one, else 'ceiling-0' and so on, as its parts are named. */
const ceilingKey = ({ pieces }: RoomShape, index: number): string =>
  pieces.length === 1 ? 'ceiling' : `ceiling-${index}`;

const rectangle = (project: Project, opening: Opening): Vec3[] => {
  const frame = frameOf(project, opening);
  if (!frame) return [];
  const { fromM, widthM, bottomM, heightM } = opening;
  return [
    pointOn(frame, fromM, bottomM),
    pointOn(frame, fromM + widthM, bottomM),
    pointOn(frame, fromM + widthM, bottomM + heightM),
    pointOn(frame, fromM, bottomM + heightM),
  ];
};

/** The edges of a piece's polygons that no other polygon of it shares, as loops of two points. */
const rim = ({ polygonsM }: CeilingPiece): Vec3[][] => {
  const key = (point: Vec3) => point.map((v) => Math.round(v * 1e4)).join(' ');
  const open = new Map<string, Vec3[]>();
  for (const polygon of polygonsM)
    polygon.forEach((from, i) => {
      const to = polygon[(i + 1) % polygon.length];
      if (!open.delete(`${key(to)}|${key(from)}`)) open.set(`${key(from)}|${key(to)}`, [from, to]);
    });
  return [...open.values()];
};

/** The plane over the middle of an opening or patch on the ceiling. */
const pieceOver = (shape: RoomShape, { fromM, widthM, bottomM, heightM }: OnSurface): number => {
  const { minM, pieces, ceiling } = shape;
  const place = ceiling.axis === 0 ? minM[0] + fromM + widthM / 2 : minM[2] + bottomM + heightM / 2;
  const index = pieces.findIndex(({ kind, places }) => kind === 'slope' && place >= places[0] && place <= places[1]);
  return Math.max(0, index);
};

const isOnCeiling = ({ surface, wall }: OnSurface): boolean => wall === undefined && surface === 'ceiling';

/** Everything that may be cut away: walls and the ceiling's planes, never the floor. */
export const cutFaces = (project: Project): CutFace[] => {
  const shape = roomShape(project);
  const { openings } = project.room;
  const walls = shape.walls.map((wall): CutFace => {
    const frame = wallFrame(wall);
    const outline: Point2[] = [[0, 0], [wall.lengthM, 0], ...[...wall.top].reverse()];
    return {
      key: wallId(project, wall),
      atM: frame.originM,
      outward: [wall.outward[0], 0, wall.outward[1]],
      loopsM: [
        outline.map(([u, v]) => pointOn(frame, u, v)),
        ...openings.filter((opening) => wallOfItem(project, opening) === wall).map((one) => rectangle(project, one)),
      ],
    };
  });
  const planes = shape.pieces.map((piece, index): CutFace => {
    const [s, h] = [piece.places[0], piece.heightsM[0]];
    return {
      key: ceilingKey(shape, index),
      atM: shape.ceiling.axis === 0 ? [s, h, 0] : [0, h, s],
      outward: piece.outward,
      loopsM: [
        ...rim(piece),
        ...openings
          .filter((opening) => isOnCeiling(opening) && pieceOver(shape, opening) === index)
          .map((one) => rectangle(project, one)),
      ],
    };
  });
  return [...walls, ...planes];
};

/** Which face a part belongs to, and so fades with: '' for anything that stands free. */
export const wallOf = (project: Project) => {
  const shape = roomShape(project);
  const carried = new Map<string, string>();
  const carry = (kind: 'opening' | 'patch', item: Opening | Patch) => {
    const wall = wallOfItem(project, item);
    if (wall) carried.set(`${kind}:${item.id}`, wallId(project, wall));
    else if (isOnCeiling(item)) carried.set(`${kind}:${item.id}`, ceilingKey(shape, pieceOver(shape, item)));
  };
  for (const opening of project.room.openings) carry('opening', opening);
  for (const patch of project.room.patches) carry('patch', patch);
  return (solid: Pick<Solid, 'kind' | 'id' | 'part'>): string => {
    if (solid.kind !== 'shell') return carried.get(`${solid.kind}:${solid.id}`) ?? '';
    if (solid.id === 'floor') return '';
    if (solid.id !== 'ceiling') return solid.id;
    const number = /^wall-(\d+)$/.exec(solid.part);
    return number ? `ceiling-${number[1]}` : 'ceiling';
  };
};
