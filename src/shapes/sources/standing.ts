import { dot, type Vec3 } from '../../math/vec3.ts';
import type { Loudspeaker, Project } from '../../model/project.ts';
import { ceilingOver, nearestWallTo } from '../../model/room/places.ts';
import { axesOf, facing, standing } from '../placement.ts';
import type { Placement } from '../solid.ts';
import { loudspeakerAim, nearestWall, referenceEar } from './aim.ts';

export type Mounting = 'stand' | 'wall' | 'in-wall' | 'in-ceiling' | 'free';

/**
 * How a loudspeaker is held, from the file's free word for it. A dipole or bipole let into a wall is drawn standing proud
 * of it: its lobes run along the wall.
 */
export const mountingOf = ({ mount, pattern }: Loudspeaker): Mounting => {
  const word = mount.toLowerCase();
  if (word.includes('ceiling') && (word.includes('in') || word.includes('flush'))) {
    return word.startsWith('on') ? 'free' : 'in-ceiling';
  }
  const open = pattern === 'dipole' || pattern === 'bipole';
  if (word === 'in-wall' || word === 'flush') return open ? 'wall' : 'in-wall';
  if (word.includes('wall')) return 'wall';
  return word === 'stand' || word === 'floor' ? 'stand' : 'free';
};

/** How far a flush loudspeaker's rim and grille stand out of the surface. */
export const RIM_M = 0.006;

/** A wall's inner face under a point. */
const onWall = (project: Project, atM: Vec3): Vec3 => {
  const [x, z] = nearestWallTo(project, atM).atM;
  return [x, atM[1], z];
};

/** The level direction at right angles to a dipole's lobe that looks to the seats: where its null lies. */
const nullSide = (project: Project, at: Vec3, lobe: Vec3): Vec3 => {
  const level = Math.hypot(lobe[0], lobe[2]);
  const across: Vec3 = level > 1e-9 ? [-lobe[2] / level, 0, lobe[0] / level] : [0, 0, 1];
  const ear = referenceEar(project);
  const seats = dot(across, [ear[0] - at[0], 0, ear[2] - at[2]]);
  return seats >= 0 ? across : [-across[0], 0, -across[2]];
};

/** Which way the cabinet faces: its aim on a stand; the room where it hangs flat or lies flush, whatever it aims at. */
const front = (project: Project, loudspeaker: Loudspeaker): Vec3 => {
  const mounting = mountingOf(loudspeaker);
  if (mounting === 'in-ceiling') return ceilingOver(project, loudspeaker.atM).inward;
  if (mounting === 'wall' || mounting === 'in-wall') return nearestWall(project, loudspeaker.atM);
  const aim = loudspeakerAim(project, loudspeaker);
  return loudspeaker.pattern === 'dipole' ? nullSide(project, loudspeaker.atM, aim) : aim;
};

/**
 * Where a cabinet stands: its middle at the acoustic centre, its front (-z of its own axes) along its aim; flat against
 * the nearest wall where it hangs on one. A flush one lies in the surface: its origin is on the surface. A dipole shows
 * its null, between its two baffles, to the seats.
 */
export const cabinetPlacement = (project: Project, loudspeaker: Loudspeaker): Placement => {
  const mounting = mountingOf(loudspeaker);
  const [x, , z] = loudspeaker.atM;
  const direction = front(project, loudspeaker);
  const { yawDeg, pitchDeg } = facing(direction);
  if (mounting === 'in-ceiling')
    return standing([x, ceilingOver(project, loudspeaker.atM).heightM, z], yawDeg, pitchDeg);
  if (mounting === 'in-wall') return standing(onWall(project, loudspeaker.atM), yawDeg, 0);
  return standing(loudspeaker.atM, yawDeg, pitchDeg);
};

/** A rectangle to be looked at, metres: `right` x `up` points out of its front. */
export interface FrontFace {
  readonly centreM: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly widthM: number;
  readonly heightM: number;
}

/** The front a listener looks at: the drawn baffle, or the grille of a flush one. Nothing of the cabinet is before it. */
export const loudspeakerFront = (project: Project, loudspeaker: Loudspeaker): FrontFace => {
  const placement = cabinetPlacement(project, loudspeaker);
  const { right, up, back } = axesOf(placement);
  const mounting = mountingOf(loudspeaker);
  const flush = mounting === 'in-wall' || mounting === 'in-ceiling';
  const [widthM, heightM, depthM] = loudspeaker.sizeM;
  const ahead = flush ? RIM_M : depthM / 2;
  const [x, y, z] = placement.positionM;
  return {
    centreM: [x - back[0] * ahead, y - back[1] * ahead, z - back[2] * ahead],
    // Seen from in front, the viewer's right is the cabinet's left.
    right: [-right[0], -right[1], -right[2]],
    up,
    widthM,
    heightM,
  };
};
