import { bodyBoxes } from '../../analysis/rules/boxes.ts';
import { footprintBounds, footprints } from '../../analysis/rules/footprints.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project, Subwoofer } from '../../model/project.ts';
import { frameOf, pointOn } from '../../model/room/places.ts';
import { type RoomShape, roomShape } from '../../model/room/shape.ts';

/** A subwoofer's cabinet stands this far off a wall (plugs, vents). Common practice, no source. */
export const WALL_GAP_M = 0.05;
/** Clear of furniture and chairs by this much. */
const BODY_GAP_M = 0.05;
const SEAT_GAP_M = 0.1;
/** Clear to either side of a door. */
const DOOR_GAP_M = 0.1;
/** Before a passage that has no leaf turning into the room, this much is kept free to walk. */
const PASSAGE_M = 0.6;

interface Block {
  readonly minM: Vec3;
  readonly maxM: Vec3;
}

/** Upright box round points, grown by `gap` in plan. */
const around = (points: readonly Vec3[], gap: number): Block => ({
  minM: [
    Math.min(...points.map(([x]) => x)) - gap,
    Math.min(...points.map(([, y]) => y)),
    Math.min(...points.map(([, , z]) => z)) - gap,
  ],
  maxM: [
    Math.max(...points.map(([x]) => x)) + gap,
    Math.max(...points.map(([, y]) => y)),
    Math.max(...points.map(([, , z]) => z)) + gap,
  ],
});

/** What has to stay free before doors, passages and windows that come low. */
const openingBlocks = (project: Project): Block[] =>
  project.room.openings.flatMap((opening) => {
    const frame = frameOf(project, opening);
    if (!frame?.wall) return [];
    const { fromM, widthM, bottomM, heightM, kind, swing, leaf } = opening;
    const turnsIn = kind === 'door' && swing === 'in' && leaf !== 'none';
    const deepM = kind === 'window' ? 0.1 : turnsIn ? Math.max(widthM, PASSAGE_M) : PASSAGE_M;
    const side = kind === 'window' ? 0 : DOOR_GAP_M;
    const corners = [fromM - side, fromM + widthM + side].flatMap((along) =>
      [bottomM, bottomM + heightM].flatMap((up): Vec3[] => {
        const [x, y, z] = pointOn(frame, along, up);
        return [
          [x, y, z],
          [x + frame.n[0] * deepM, y, z + frame.n[2] * deepM],
        ];
      }),
    );
    return [around(corners, 0)];
  });

/** Furniture and loudspeakers, those on stands down to the floor; of subwoofers only those that stay. */
const bodyBlocks = (project: Project, staying: ReadonlySet<string>): Block[] =>
  bodyBoxes(project).flatMap(({ ref, minM, maxM }) => {
    if (ref.kind === 'subwoofer' && !staying.has(ref.id)) return [];
    const loudspeaker = ref.kind === 'loudspeaker' ? project.loudspeakers.find(({ id }) => id === ref.id) : undefined;
    const onStand = loudspeaker !== undefined && ['stand', 'floor'].includes(loudspeaker.mount.toLowerCase());
    const low: Vec3 = onStand ? [minM[0], 0, minM[2]] : minM;
    return [around([low, maxM], BODY_GAP_M)];
  });

const seatBlocks = (project: Project): Block[] =>
  footprints(project).map((footprint): Block => {
    const { minX, maxX, minZ, maxZ } = footprintBounds(footprint);
    const { floorM, seat } = footprint.pose.row;
    return {
      minM: [minX - SEAT_GAP_M, floorM, minZ - SEAT_GAP_M],
      maxM: [maxX + SEAT_GAP_M, floorM + Math.max(seat.backHeightM, seat.panHeightM), maxZ + SEAT_GAP_M],
    };
  });

/** The picture, unless sound comes through it. */
const pictureBlocks = ({ picture }: Project, frontZM: number): Block[] => {
  const { acousticallyTransparent, centreXM, widthM, aspect, bottomM, offFrontWallM } = picture;
  if (acousticallyTransparent) return [];
  const z = frontZM + offFrontWallM;
  return [
    {
      minM: [centreXM - widthM / 2, bottomM, Math.min(frontZM, z - 0.1)],
      maxM: [centreXM + widthM / 2, bottomM + widthM / aspect, z + 0.02],
    },
  ];
};

export interface StandingRoom {
  readonly shape: RoomShape;
  /** The acoustic centre of a subwoofer standing at a plan point; null where it cannot stand. */
  at(xM: number, zM: number): Vec3 | null;
  /** The plan point nearest to one at which the cabinet lies inside the walls. */
  inside(xM: number, zM: number): readonly [number, number];
}

const overlaps = (a: Block, b: Block): boolean =>
  ([0, 1, 2] as const).every(
    (axis) => Math.min(a.maxM[axis], b.maxM[axis]) - Math.max(a.minM[axis], b.minM[axis]) > 1e-6,
  );

/**
 * Where a subwoofer of a size may stand: inside the walls, under the ceiling, on one level (floor or riser), clear of
 * doors, furniture, chairs, picture, and of the subwoofers in `staying`.
 */
export const standingRoom = (project: Project, sizeM: Vec3, staying: ReadonlySet<string>): StandingRoom => {
  const shape = roomShape(project);
  const half: Vec3 = [sizeM[0] / 2, sizeM[1] / 2, sizeM[2] / 2];
  const blocks = [
    ...openingBlocks(project),
    ...bodyBlocks(project, staying),
    ...seatBlocks(project),
    ...pictureBlocks(project, shape.minM[2]),
  ];
  const risers = project.rows.flatMap(({ floorM, riser }) => (riser && floorM > 0 ? [{ floorM, ...riser }] : []));

  /** Height of the level under a whole cabinet; null across an edge. */
  const levelAt = (x: number, z: number): number | null => {
    let level = 0;
    for (const { floorM, fromXM, toXM, fromZM, toZM } of risers) {
      const apart =
        x + half[0] <= fromXM + 1e-6 ||
        x - half[0] >= toXM - 1e-6 ||
        z + half[2] <= fromZM + 1e-6 ||
        z - half[2] >= toZM - 1e-6;
      if (apart) continue;
      const whole =
        x - half[0] >= fromXM - 1e-6 &&
        x + half[0] <= toXM + 1e-6 &&
        z - half[2] >= fromZM - 1e-6 &&
        z + half[2] <= toZM + 1e-6;
      if (!whole) return null;
      level = Math.max(level, floorM);
    }
    return level;
  };
  const clear: Vec3 = [half[0] + WALL_GAP_M - 1e-6, half[1], half[2] + WALL_GAP_M - 1e-6];
  return {
    shape,
    at: (xM, zM) => {
      const level = levelAt(xM, zM);
      if (level === null) return null;
      const centre: Vec3 = [xM, level + half[1], zM];
      if (!shape.contains(centre, clear)) return null;
      const box: Block = {
        minM: [xM - half[0], level, zM - half[2]],
        maxM: [xM + half[0], level + sizeM[1], zM + half[2]],
      };
      return blocks.some((block) => overlaps(box, block)) ? null : centre;
    },
    inside: (xM, zM) => {
      const [x, , z] = shape.nearestInside([xM, half[1], zM], [half[0] + WALL_GAP_M, half[1], half[2] + WALL_GAP_M]);
      return [x, z];
    },
  };
};

/** Metres to the centimetre: as a fitter measures them. */
export const toCentimetres = (metres: number): number => Math.round(metres * 100) / 100;

/** What a new subwoofer is like where the project has none: the file's defaults. */
const PLAIN: Omit<Subwoofer, 'id' | 'atM'> = {
  sizeM: [0.4, 0.4, 0.4],
  gainDb: 0,
  delayMs: 0,
  inverted: false,
  highPassHz: 20,
};

/** What a new subwoofer is like: the project's first, driven plainly; else the file's defaults. */
export const subwooferLike = (project: Project): Omit<Subwoofer, 'id' | 'atM'> => {
  if (project.subwoofers.length === 0) return PLAIN;
  const { id: _id, atM: _at, locked: _locked, ...like } = project.subwoofers[0];
  return { ...like, gainDb: 0, delayMs: 0, inverted: false } as Omit<Subwoofer, 'id' | 'atM'>;
};
