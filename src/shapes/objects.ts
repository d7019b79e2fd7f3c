import type { Project, RoomObject } from '../model/project.ts';
import { roomShape } from '../model/room/shape.ts';
import { partsOf, type RawPart } from './geometries.ts';
import { revolved } from './mesh/loft.ts';
import { joined, moved, type RawMesh, shaped } from './mesh/raw.ts';
import { boxBetween, roundedBox } from './mesh/rounded-box.ts';
import { standing } from './placement.ts';
import type { MaterialName, Solid } from './solid.ts';

type Size = readonly [width: number, height: number, depth: number];

const one = (part: string, material: MaterialName, mesh: RawMesh): RawPart => ({ part, material, mesh });

const boxOf = ([w, h, d]: Size, radiusM: number): RawMesh =>
  moved(roundedBox([w, h, d], { radiusM: Math.min(radiusM, w / 4, h / 4, d / 4), arc: 2 }), [0, h / 2, 0]);

/** A top on four legs set in from its corners. */
const table = ([w, h, d]: Size): RawPart[] => {
  const top = Math.min(0.028, h / 3);
  const inset = Math.min(0.035, w / 6, d / 6);
  const leg = (sx: number, sz: number): RawMesh =>
    moved(
      revolved(
        [
          [0.011, 0],
          [0.017, h - top + 0.002],
        ],
        10,
      ),
      [sx * (w / 2 - inset), 0, sz * (d / 2 - inset)],
    );
  return [
    one('top', 'wood-dark', boxBetween([-w / 2, h - top, -d / 2], [w / 2, h, d / 2], { radiusM: 0.008, arc: 2 })),
    one('legs', 'wood-dark', joined(leg(-1, -1), leg(1, -1), leg(-1, 1), leg(1, 1))),
  ];
};

const oval = (profile: readonly (readonly [number, number])[], [w, , d]: Size, segments: number): RawMesh =>
  shaped(revolved(profile, segments), ([x, y, z]) => [x * w, y, z * d]);

/** A standing lamp: base, stem and a cloth shade as wide as the box. */
const lamp = (size: Size): RawPart[] => {
  const h = size[1];
  const shade = Math.min(h * 0.34, Math.min(size[0], size[2]) * 0.9);
  return [
    one(
      'stem',
      'metal',
      joined(
        oval(
          [
            [0.3, 0],
            [0.3, 0.012],
            [0.06, 0.022],
          ],
          size,
          24,
        ),
        revolved(
          [
            [0.01, 0.01],
            [0.01, h - shade * 0.5],
          ],
          10,
        ),
      ),
    ),
    one(
      'shade',
      'linen',
      oval(
        [
          [0.5, h - shade],
          [0.36, h],
        ],
        size,
        28,
      ),
    ),
  ];
};

/** A cupboard with a plinth and two doors parted by fine gaps. */
const cabinet = ([w, h, d]: Size): RawPart[] => {
  const plinth = Math.min(0.06, h / 6);
  const door = 0.018;
  const front = -d / 2;
  const leaf = (x0: number, x1: number) =>
    boxBetween([x0, plinth + 0.003, front], [x1, h - 0.022, front + door], { radiusM: 0.003 });
  return [
    one(
      'body',
      'wood-dark',
      joined(
        boxBetween([-w / 2, plinth, front + door + 0.002], [w / 2, h - 0.018, d / 2], { radiusM: 0.002 }),
        boxBetween([-w / 2, h - 0.018, front], [w / 2, h, d / 2], { radiusM: 0.004 }),
        leaf(-w / 2 + 0.002, -0.002),
        leaf(0.002, w / 2 - 0.002),
      ),
    ),
    one('plinth', 'rubber', boxBetween([-w / 2 + 0.02, 0, front + 0.04], [w / 2 - 0.02, plinth + 0.001, d / 2], {})),
  ];
};

const structure = (size: Size): RawPart[] => [one('body', 'plaster', boxOf(size, 0.006))];

/** What a kind of object looks like; every other kind is a softly bevelled box. */
const makers: Readonly<Record<string, (size: Size) => RawPart[]>> = {
  table,
  lamp,
  cabinet,
  sideboard: cabinet,
  beam: (size) => [one('body', 'oak', boxOf(size, 0.012))],
  soffit: structure,
  column: structure,
  chimney: structure,
  radiator: (size) => [one('body', 'joinery', boxOf(size, 0.02))],
};

/** One object inside its own box, kind 'object'. A cupboard turns its doors to the middle of the room's length. */
const objectSolid = (project: Project, { id, kind, minM, maxM }: RoomObject): Solid[] => {
  const low = minM.map((v, k) => Math.min(v, maxM[k]));
  const high = minM.map((v, k) => Math.max(v, maxM[k]));
  const size: Size = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
  if (size.some((v) => v < 1e-4)) return [];
  const make = Object.hasOwn(makers, kind) ? makers[kind] : () => [one('body', 'joinery', boxOf(size, 0.01))];
  const middleZ = (low[2] + high[2]) / 2;
  const room = roomShape(project);
  const frontHalf = middleZ < (room.minM[2] + room.maxM[2]) / 2;
  const placement = standing([(low[0] + high[0]) / 2, low[1], middleZ], frontHalf ? 180 : 0);
  return partsOf('object', [kind, ...size], () => make(size)).map((part) => ({
    kind: 'object',
    id,
    ...part,
    placement,
  }));
};

export const objectSolids = (project: Project): Solid[] =>
  project.room.objects.flatMap((object) => objectSolid(project, object));
