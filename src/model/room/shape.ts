import { type Clear, fits, nearestFit } from '../../math/inset.ts';
import { band, momentsOf, signedArea } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project, SurfaceName } from '../project.ts';
import { type CeilingLine, ceilingLine, heightAt, sectionOf } from './ceiling.ts';
import { type CeilingPiece, piecesOf } from './pieces.ts';
import { planOf, type RoomWall, type WallName, wallsOf } from './walls.ts';

/** What is kept clear round a point: a ball's radius, or half the sides of an upright box along x, y and z. Metres. */
export type Around = number | Vec3;

/** Any room the file can describe: straight walls all round, a level floor, a ceiling of planes. Document axes, metres. */
export interface RoomShape {
  /** The upright box round the room, from the floor to the highest point of the ceiling. */
  readonly minM: Vec3;
  readonly maxM: Vec3;
  /** The plan's corners [x, z] in the sense that runs along the front wall from left to right. */
  readonly corners: readonly Point2[];
  /** In the corners' order: wall i runs from corner i to the next. */
  readonly walls: readonly RoomWall[];
  readonly ceiling: CeilingLine;
  readonly pieces: readonly CeilingPiece[];
  /** The room's section over the coordinate the ceiling changes along, [place, height]. */
  readonly section: readonly Point2[];
  readonly lowestM: number;
  readonly highestM: number;
  readonly floorAreaM2: number;
  readonly volumeM3: number;
  /** Area by the contract's names, and of everything together. */
  readonly areasM2: Readonly<Record<SurfaceName, number>>;
  readonly surfaceM2: number;
  /** The ceiling's height over a plan point; at a step the lower one. */
  readonly ceilingAtM: (xM: number, zM: number) => number;
  /** Whether a point, with what is to be clear round it, lies in the room. On a wall counts as inside. */
  readonly contains: (pointM: Vec3, around?: Around) => boolean;
  /** The point nearest to `pointM` that has `around` clear; what is too large is made smaller until it fits. */
  readonly nearestInside: (pointM: Vec3, around?: Around) => Vec3;
}

const least = (corners: readonly Point2[], axis: 0 | 1): number => Math.min(...corners.map((corner) => corner[axis]));
const most = (corners: readonly Point2[], axis: 0 | 1): number => Math.max(...corners.map((corner) => corner[axis]));

/** Plan times height: each slope's mean height is its height over the middle of its part of the plan. */
const volumeOf = (corners: readonly Point2[], { axis, knots }: CeilingLine): number => {
  const k = axis === 0 ? 0 : 1;
  return knots.slice(1).reduce((sum, [s1, h1], i) => {
    const [s0, h0] = knots[i];
    if (s1 <= s0) return sum;
    const { area, first } = momentsOf(band(corners, k, s0, s1));
    return sum + h0 * area + ((h1 - h0) / (s1 - s0)) * (first[k] - s0 * area);
  }, 0);
};

const planClear = (around: Around): Clear => (typeof around === 'number' ? around : [around[0], around[2]]);

const sectionClear = (around: Around, axis: 0 | 2): Clear =>
  typeof around === 'number' ? around : [around[axis], around[1]];

/** Rounds of moving into the plan, then into the section: where only one of them binds, one is enough. */
const ROUNDS = 12;

const described = (room: Pick<Project['room'], 'plan' | 'ceiling'>): RoomShape => {
  const plan = planOf(room.plan);
  const { corners } = plan;
  const [minX, minZ, maxX, maxZ] = [least(corners, 0), least(corners, 1), most(corners, 0), most(corners, 1)];
  const ceiling = ceilingLine(room.ceiling, [minX, minZ], [maxX, maxZ]);
  const { axis } = ceiling;
  const walls = wallsOf(plan, ceiling);
  const pieces = piecesOf(corners, ceiling);
  const section = sectionOf(ceiling);
  const heights = ceiling.knots.map(([, height]) => height);
  const highestM = Math.max(...heights);
  const floorAreaM2 = signedArea(corners);
  const wallArea = (name: WallName) => walls.reduce((sum, wall) => sum + (wall.surface === name ? wall.areaM2 : 0), 0);
  const areasM2 = {
    front: wallArea('front'),
    back: wallArea('back'),
    left: wallArea('left'),
    right: wallArea('right'),
    floor: floorAreaM2,
    ceiling: pieces.reduce((sum, { areaM2 }) => sum + areaM2, 0),
  };
  const contains = ([x, y, z]: Vec3, around: Around = 0): boolean =>
    fits(corners, [x, z], planClear(around)) && fits(section, [axis === 0 ? x : z, y], sectionClear(around, axis));
  const nearestInside = (pointM: Vec3, around: Around = 0): Vec3 => {
    let [x, y, z] = pointM;
    for (let round = 0; round < ROUNDS; round += 1) {
      const [px, pz] = nearestFit(corners, [x, z], planClear(around));
      const [s, h] = nearestFit(section, [axis === 0 ? px : pz, y], sectionClear(around, axis));
      const settled = h === y && s === (axis === 0 ? px : pz);
      [x, y, z] = axis === 0 ? [s, h, pz] : [px, h, s];
      if (settled) break;
    }
    return [x, y, z];
  };
  return {
    minM: [minX, 0, minZ],
    maxM: [maxX, highestM, maxZ],
    corners,
    walls,
    ceiling,
    pieces,
    section,
    lowestM: Math.min(...heights),
    highestM,
    floorAreaM2,
    volumeM3: volumeOf(corners, ceiling),
    areasM2,
    surfaceM2: Object.values(areasM2).reduce((sum, area) => sum + area, 0),
    ceilingAtM: (xM, zM) => heightAt(ceiling, axis === 0 ? xM : zM),
    contains,
    nearestInside,
  };
};

type Plan = Project['room']['plan'];
type Ceiling = Project['room']['ceiling'];

const kept = new WeakMap<Plan, WeakMap<Ceiling, RoomShape>>();

/** The room of a project, described once for as long as its plan and its ceiling live. */
export const roomShape = ({ room }: { readonly room: Pick<Project['room'], 'plan' | 'ceiling'> }): RoomShape => {
  let underCeilings = kept.get(room.plan);
  if (!underCeilings) {
    underCeilings = new WeakMap();
    kept.set(room.plan, underCeilings);
  }
  const known = underCeilings.get(room.ceiling);
  if (known) return known;
  const made = described(room);
  underCeilings.set(room.ceiling, made);
  return made;
};
