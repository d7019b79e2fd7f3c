import type { Admittance, PrismSpec, RoomSpec } from '../../engines/bass/room-field.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Project, SurfaceName, SurfaceTreatment } from '../../model/project.ts';
import { wallTreatment } from '../../model/room/places.ts';
import { type RoomShape, roomShape } from '../../model/room/shape.ts';
import { soundSpeedOf } from '../../model/room.ts';
import { DAMPING_FACTOR, type Damping } from './damping.ts';
import { type Measures, SI } from './measures.ts';
import { roomPatches } from './patches.ts';
import { asStated } from './stated-times.ts';
import { defaultFinish, wallAdmittance } from './treatment.ts';

const factors: Readonly<Record<Damping, number>> = { nominal: 1, low: 1 / DAMPING_FACTOR, high: DAMPING_FACTOR };

/** Places nearer than this are one. */
const SAME_M = 1e-9;

type OfSurface = (surface: SurfaceName, treatment?: SurfaceTreatment) => Admittance;

/** One edge of a cross-section and the admittance of the surface it stands for. */
interface SectionEdge {
  readonly from: Point2;
  readonly admittance: Admittance;
}

/**
 * The room as the bass engine takes it. A rectangle under a flat ceiling is a box, any other plan under a flat ceiling an
 * upright prism, a rectangle under slopes a prism lying on its side: all exact in shape. A plan that is no rectangle under a
 * ceiling that is not flat is taken as the upright prism of the same volume (`bassApproximation` says so). 'low' and 'high'
 * divide and multiply the real part of every admittance by sqrt(3) and leave the imaginary part. Patches and openings are
 * on it as patches.ts says, stated reverberation times in it as stated-times.ts says.
 */
export const roomSpec = (given: Project, damping: Damping = 'nominal'): RoomSpec => {
  const project = asStated(given);
  const spec = evenSpec(project, damping);
  const patches = roomPatches(project, spec, damping);
  return patches.length > 0 ? { ...spec, patches } : spec;
};

/** The room without its patches and openings. */
const evenSpec = (project: Project, damping: Damping): RoomSpec => {
  const shape = roomShape(project);
  const { surfaces } = project.room;
  const of: OfSurface = (surface, treatment = surfaces[surface]) => {
    const [real, imaginary] = wallAdmittance(treatment, defaultFinish(surface));
    return [real * factors[damping], imaginary];
  };
  const soundSpeed = soundSpeedOf(project);
  if (!standsUpright(shape)) return asBox(lying(shape, soundSpeed, of));
  const { minM, walls, floorAreaM2, volumeM3 } = shape;
  return asBox({
    axis: 1,
    lengthM: isLevel(shape) ? shape.highestM : volumeM3 / floorAreaM2,
    cornersM: walls.map(({ from }) => [from[0] - minM[0], from[1] - minM[2]]),
    soundSpeed,
    edges: walls.map((wall) => of(wall.surface, wallTreatment(project, wall))),
    ends: [of('floor'), of('ceiling')],
  });
};

const isLevel = ({ lowestM, highestM }: RoomShape): boolean => highestM - lowestM <= SAME_M;

const isRectangle = ({ corners }: RoomShape): boolean =>
  corners.length === 4 &&
  corners.every((corner, i) => {
    const next = corners[(i + 1) % 4];
    return Math.abs(corner[0] - next[0]) <= SAME_M || Math.abs(corner[1] - next[1]) <= SAME_M;
  });

/** Whether the even direction is upwards: a flat ceiling, or a plan whose slopes can only be approximated. */
const standsUpright = (shape: RoomShape): boolean => isLevel(shape) || !isRectangle(shape);

/** What the bass engine leaves out of the room's shape, in a sentence for the person; null where it leaves out nothing. */
export const bassApproximation = (project: Project, measures: Measures = SI): string | null => {
  const shape = roomShape(project);
  if (isLevel(shape) || isRectangle(shape)) return null;
  const heightM = shape.volumeM3 / shape.floorAreaM2;
  return `For the bass, the sloping ceiling over this plan is taken as level at ${measures.length(heightM)}, which keeps the room's volume. Expect the figures to be rougher than in a room with a flat ceiling.`;
};

/** A rectangle under slopes: its section is even along the other direction of the plan. */
const lying = (shape: RoomShape, soundSpeed: number, of: OfSurface): PrismSpec => {
  const { ceiling, section, minM, maxM } = shape;
  const along = ceiling.axis === 0;
  const [near, far, start, end]: SurfaceName[] = along
    ? ['left', 'right', 'front', 'back']
    : ['front', 'back', 'left', 'right'];
  const [least, most] = along ? [minM[0], maxM[0]] : [minM[2], maxM[2]];
  const edges = section.map((from, i): SectionEdge => {
    const to = section[(i + 1) % section.length];
    const surface = surfaceOf(from, to, least, most, near, far);
    return { from, admittance: of(surface) };
  });
  return {
    axis: along ? 2 : 0,
    lengthM: along ? maxM[2] - minM[2] : maxM[0] - minM[0],
    cornersM: edges.map(({ from: [place, height] }) => (along ? [place - least, height] : [height, place - least])),
    soundSpeed,
    edges: edges.map(({ admittance }) => admittance),
    ends: [of(start), of(end)],
  };
};

/** The surface an edge of the section [place, height] belongs to: what stands at an end of the plan and on the floor is wall. */
const surfaceOf = (
  from: Point2,
  to: Point2,
  least: number,
  most: number,
  near: SurfaceName,
  far: SurfaceName,
): SurfaceName => {
  if (from[1] <= SAME_M && to[1] <= SAME_M) return 'floor';
  const upright = Math.abs(from[0] - to[0]) <= SAME_M && Math.min(from[1], to[1]) <= SAME_M;
  if (upright && from[0] <= least + SAME_M) return near;
  if (upright && from[0] >= most - SAME_M) return far;
  return 'ceiling';
};

/** The prism without corners in the middle of a straight wall of one admittance. */
const straightened = (prism: PrismSpec): PrismSpec => {
  const { cornersM, edges } = prism;
  const count = cornersM.length;
  const kept = cornersM.map((at, i) => {
    const [from, to] = [cornersM[(i + count - 1) % count], cornersM[(i + 1) % count]];
    const [before, after] = [edges[(i + count - 1) % count], edges[i]];
    if (before[0] !== after[0] || before[1] !== after[1]) return true;
    const [au, av, bu, bv] = [at[0] - from[0], at[1] - from[1], to[0] - at[0], to[1] - at[1]];
    return Math.abs(au * bv - av * bu) > SAME_M * Math.hypot(bu + au, bv + av) || au * bu + av * bv <= 0;
  });
  if (kept.every(Boolean)) return prism;
  return { ...prism, cornersM: cornersM.filter((_, i) => kept[i]), edges: edges.filter((_, i) => kept[i]) };
};

/** A prism whose section is a rectangle is a box; the engine knows more about those. */
const asBox = (given: PrismSpec): RoomSpec => {
  const prism = straightened(given);
  const { axis, lengthM, cornersM, edges, ends, soundSpeed } = prism;
  if (cornersM.length !== 4) return prism;
  const sides: (Admittance | null)[] = [null, null, null, null];
  const most = [0, 1].map((a) => Math.max(...cornersM.map((corner) => corner[a])));
  for (let i = 0; i < 4; i += 1) {
    const [from, to] = [cornersM[i], cornersM[(i + 1) % 4]];
    const a = [0, 1].find((which) => Math.abs(from[which] - to[which]) <= SAME_M);
    if (a === undefined) return prism;
    sides[2 * a + (from[a] > most[a] / 2 ? 1 : 0)] = edges[i];
  }
  const [x0, x1, y0, y1] = sides;
  if (!x0 || !x1 || !y0 || !y1) return prism;
  const sizes = [...most];
  const walls: Admittance[] = [x0, x1, y0, y1];
  sizes.splice(axis, 0, lengthM);
  walls.splice(2 * axis, 0, ...ends);
  return { sizeM: [sizes[0], sizes[1], sizes[2]], soundSpeed, admittance: walls };
};
