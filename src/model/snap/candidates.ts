import { degreesOf } from '../../math/angles.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { type Extent, extentOf, middleOf } from '../extents.ts';
import { seatIndices } from '../items.ts';
import { centreXM, partnerOf } from '../pairs.ts';
import type { ItemRef, Project } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import type { RoomWall } from '../room/walls.ts';
import { referenceSeatId, seatPose } from '../seating.ts';
import type { Guide } from './guides.ts';
import type { Axis, SnapLine } from './lines.ts';

/** What is being placed: its middle, and half its size along the axes. */
export interface Placing {
  readonly ref: ItemRef;
  readonly halfM: Vec3;
}

const WALL_STEP_M = 0.05;
/** Round figures draw only what all but has them: between two of them whole centimetres stay free. */
const STEP_REACH_M = 0.012;

const isSource = ({ kind }: ItemRef): boolean => kind === 'loudspeaker' || kind === 'subwoofer';

const sourcesOf = ({ loudspeakers, subwoofers }: Project): { readonly ref: ItemRef; readonly atM: Vec3 }[] => [
  ...loudspeakers.map(({ id, atM }) => ({ ref: { kind: 'loudspeaker', id } as const, atM })),
  ...subwoofers.map(({ id, atM }) => ({ ref: { kind: 'subwoofer', id } as const, atM })),
];

const same = (a: ItemRef, b: ItemRef | null): boolean => b !== null && a.kind === b.kind && a.id === b.id;

/** How far a point of the plan lies inside a wall's line, metres; negative behind it. */
const insideWallM = ({ from, outward }: RoomWall, [x, z]: Point2): number =>
  (from[0] - x) * outward[0] + (from[1] - z) * outward[1];

/** Half of a thing's size across a wall. */
const acrossWall = ({ outward }: RoomWall, halfM: Vec3): number =>
  Math.abs(outward[0]) * halfM[0] + Math.abs(outward[1]) * halfM[2];

/** How far a thing's near side stands off a wall. */
export const gapM = (wall: RoomWall, { minM, maxM }: Extent): number => {
  const [x, , z] = middleOf({ minM, maxM });
  const halfM: Vec3 = [(maxM[0] - minM[0]) / 2, 0, (maxM[2] - minM[2]) / 2];
  return insideWallM(wall, [x, z]) - acrossWall(wall, halfM);
};

const alongAxis = ({ outward }: RoomWall): 0 | 2 | null =>
  Math.abs(outward[0]) > 1 - 1e-9 ? 0 : Math.abs(outward[1]) > 1 - 1e-9 ? 2 : null;

/** The middle of a thing that stands `gap` off a wall along an axis. */
const offWall = (wall: RoomWall, axis: 0 | 2, gap: number, halfM: Vec3): number => {
  const part = axis === 0 ? 0 : 1;
  return wall.from[part] - wall.outward[part] * (gap + halfM[axis]);
};

const nearestGapM = (project: Project, ref: ItemRef, axis: 0 | 2): number | null => {
  const extent = extentOf(project, ref);
  if (!extent) return null;
  const gaps = roomShape(project)
    .walls.filter((wall) => alongAxis(wall) === axis)
    .map((wall) => gapM(wall, extent))
    .filter((gap) => gap >= 0);
  return gaps.length === 0 ? null : Math.min(...gaps);
};

/** Round distances from the walls a thing could stand along, and distances another thing already keeps. */
export const wallLines = (project: Project, { ref, halfM }: Placing, wantedM: Vec3, reachM: number): SnapLine[] => {
  const partner = partnerOf(project, ref);
  const others = isSource(ref)
    ? sourcesOf(project).filter((one) => !same(one.ref, ref) && !same(one.ref, partner))
    : [];
  const gapOf = (wall: RoomWall): number => insideWallM(wall, [wantedM[0], wantedM[2]]) - acrossWall(wall, halfM);
  const walls = roomShape(project).walls;
  return walls.flatMap((wall): SnapLine[] => {
    const axis = alongAxis(wall);
    if (axis === null) return [];
    const now = gapOf(wall);
    // A tape is held to the nearer of two walls that face each other.
    const nearest = walls.every((other) => alongAxis(other) !== axis || gapOf(other) < 0 || gapOf(other) >= now - 1e-9);
    const step = Math.max(0, Math.round(now / WALL_STEP_M)) * WALL_STEP_M;
    const round: SnapLine = {
      axis,
      atM: offWall(wall, axis, step, halfM),
      reachM: nearest ? Math.min(reachM, STEP_REACH_M) : -1,
      rank: 2,
      reason: { kind: 'wallStep', wall: wall.surface, distanceM: step },
    };
    const repeated = others.flatMap(({ ref: of }): SnapLine[] => {
      const gap = nearestGapM(project, of, axis);
      if (gap === null) return [];
      return [
        {
          axis,
          atM: offWall(wall, axis, gap, halfM),
          reachM: reachM / 2,
          rank: 1,
          reason: { kind: 'sameWallDistance', of },
        },
      ];
    });
    return [round, ...repeated];
  });
};

/** Middles and mirrors across the room. A thing that stands in the middle is held there three times as firmly. */
export const acrossLines = (project: Project, ref: ItemRef, startXM: number, reachM: number): SnapLine[] => {
  const centre = centreXM(project);
  const held = Math.abs(startXM - centre) < 0.005 ? 3 : 1;
  const lines: SnapLine[] = [{ axis: 0, atM: centre, reachM: reachM * held, rank: 0, reason: { kind: 'roomCentre' } }];
  if (Math.abs(project.picture.centreXM - centre) > 0.005 && ref.kind !== 'picture')
    lines.push({ axis: 0, atM: project.picture.centreXM, reachM, rank: 0, reason: { kind: 'pictureCentre' } });
  const partner = partnerOf(project, ref);
  const at = partner && sourcesOf(project).find((one) => same(one.ref, partner))?.atM;
  if (partner && at) {
    lines.push({ axis: 0, atM: 2 * centre - at[0], reachM, rank: 0, reason: { kind: 'mirror', of: partner } });
    lines.push({ axis: 2, atM: at[2], reachM, rank: 0, reason: { kind: 'inLine', of: partner } });
  }
  return lines;
};

/** Quarter points of the walls, where subwoofers drive the first modes least (common practice). */
export const quarterLines = (project: Project, reachM: number): SnapLine[] => {
  const { minM, maxM } = roomShape(project);
  return ([0, 2] as const).flatMap((axis) => {
    const min = minM[axis];
    const size = maxM[axis] - min;
    return [0.25, 0.75].map(
      (share): SnapLine => ({
        axis,
        atM: min + share * size,
        reachM,
        rank: 0,
        reason: { kind: 'quarter', along: axis === 0 ? 'width' : 'length' },
      }),
    );
  });
};

export const referencePose = (project: Project) => {
  const indices = seatIndices(project, referenceSeatId(project));
  return indices ? seatPose(project, ...indices) : null;
};

/** Heights worth stopping at: ears and eyes of the reference seat, the picture's middle, another's height, the floor. */
export const heightLines = (project: Project, { ref, halfM }: Placing, reachM: number): SnapLine[] => {
  const pose = referencePose(project);
  const axis: Axis = 1;
  const lines: SnapLine[] = [{ axis, atM: halfM[1], reachM, rank: 0, reason: { kind: 'floor' } }];
  if (pose) {
    lines.push({ axis, atM: pose.earM[1], reachM, rank: 0, reason: { kind: 'earHeight' } });
    lines.push({ axis, atM: pose.eyeM[1], reachM, rank: 0, reason: { kind: 'eyeHeight' } });
  }
  const { picture } = project;
  if (ref.kind !== 'picture') {
    const middle = picture.bottomM + picture.widthM / picture.aspect / 2;
    lines.push({ axis, atM: middle, reachM, rank: 0, reason: { kind: 'pictureMiddle' } });
  }
  if (!isSource(ref)) return lines;
  for (const { ref: of, atM } of sourcesOf(project))
    if (of.kind === ref.kind && !same(of, ref))
      lines.push({ axis, atM: atM[1], reachM, rank: 1, reason: { kind: 'sameHeight', of } });
  return lines;
};

/** In line with others of its kind, as far from the front wall. */
export const inLineLines = (project: Project, ref: ItemRef, reachM: number): SnapLine[] =>
  isSource(ref)
    ? sourcesOf(project)
        .filter((one) => one.ref.kind === ref.kind && !same(one.ref, ref))
        .map(({ ref: of, atM }) => ({
          axis: 2,
          atM: atM[2],
          reachM: reachM / 2,
          rank: 1,
          reason: { kind: 'inLine', of },
        }))
    : [];

/** Equal angle and equal distance with the partner at the reference seat, and round distances off slanting walls. */
export const guidesFor = (project: Project, { ref, halfM }: Placing, wantedM: Vec3, reachM: number): Guide[] => {
  const guides: Guide[] = [];
  const pose = referencePose(project);
  const partner = ref.kind === 'loudspeaker' ? partnerOf(project, ref) : null;
  const at = partner && sourcesOf(project).find((one) => same(one.ref, partner))?.atM;
  if (pose && partner && at) {
    const ear: Point2 = [pose.earM[0], pose.earM[2]];
    const dx = at[0] - ear[0];
    const dz = at[2] - ear[1];
    const radiusM = Math.hypot(dx, dz);
    const ahead = -dx * (wantedM[0] - ear[0]) + dz * (wantedM[2] - ear[1]) > 0;
    if (radiusM > 0 && ahead) {
      const direction: Point2 = [-dx / radiusM, dz / radiusM];
      const angleDeg = Math.abs(degreesOf(Math.atan2(dx, -dz)));
      guides.push({
        shape: 'ray',
        throughM: ear,
        direction,
        reachM,
        reason: { kind: 'sameAngle', of: partner, angleDeg },
      });
      const reason = { kind: 'sameDistance', of: partner, distanceM: radiusM } as const;
      guides.push({ shape: 'circle', centreM: ear, radiusM, reachM: reachM / 2, reason });
    }
  }
  for (const wall of roomShape(project).walls) {
    if (alongAxis(wall) !== null) continue;
    const half = acrossWall(wall, halfM);
    const step = Math.round((insideWallM(wall, [wantedM[0], wantedM[2]]) - half) / WALL_STEP_M) * WALL_STEP_M;
    if (step < 0) continue;
    const throughM: Point2 = [
      wall.from[0] - wall.outward[0] * (step + half),
      wall.from[1] - wall.outward[1] * (step + half),
    ];
    guides.push({
      shape: 'ray',
      throughM,
      direction: wall.along,
      reachM: Math.min(reachM, STEP_REACH_M),
      reason: { kind: 'wallStep', wall: wall.surface, distanceM: step },
    });
  }
  return guides;
};
