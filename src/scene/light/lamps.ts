import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { SCONCE_STAND_OFF_M, sconcesOf } from './sconces.ts';

/** A wall light that throws its light up and down the wall, or a small light low on a riser. Ours, not the document's. */
export interface Lamp {
  readonly kind: 'sconce' | 'step';
  /** Where the light comes from: a little in front of what carries it. */
  readonly atM: Vec3;
  /** Unit normal of the surface that carries it, into the room. */
  readonly outward: Vec3;
  readonly strength: number;
  /** A sconce's wall, how far that reaches to its two sides along `fromM`, and how high it is there. */
  readonly wallId: string;
  readonly reachM: readonly [number, number];
  readonly topM: number;
}

const STEP_SPACING_M = 1.1;
const STEP_UP_M = 0.1;
/** Two sconces and small lights along the front of every riser. */
export const lampsOf = (project: Project): Lamp[] => [
  ...sconcesOf(project),
  ...project.rows.flatMap((row) => (row.riser && row.floorM > 0.05 ? stepLights(row) : [])),
];

const stepLights = ({ riser, floorM }: Project['rows'][number]): Lamp[] => {
  if (!riser) return [];
  const wide = riser.toXM - riser.fromXM;
  const count = Math.max(2, Math.round(wide / STEP_SPACING_M));
  return Array.from(
    { length: count },
    (_, index): Lamp => ({
      kind: 'step',
      atM: [riser.fromXM + (wide * (index + 0.5)) / count, Math.min(STEP_UP_M, floorM * 0.5), riser.fromZM - 0.03],
      outward: [0, 0, -1],
      strength: 0.035,
      wallId: '',
      reachM: [0, 0],
      topM: 0,
    }),
  );
};

/** Softens the source so that what stands right beside it stays within bounds, square metres. */
const SOURCE_SIZE_M2 = 0.02;

/**
 * Light of one lamp at a surface: intensity towards it times cosine over distance squared, in the same units as the
 * picture's shares. A sconce has an upward and a downward lobe (cosine squared) and a faint glow through its shade.
 */
export const lampLight = (lamp: Lamp, x: number, y: number, z: number, nx: number, ny: number, nz: number): number => {
  const dx = lamp.atM[0] - x;
  const dy = lamp.atM[1] - y;
  const dz = lamp.atM[2] - z;
  const squared = dx * dx + dy * dy + dz * dz;
  const far = Math.sqrt(squared) + 1e-6;
  const cosine = (dx * nx + dy * ny + dz * nz) / far;
  if (cosine <= 0 || onOwnWall(lamp, dx, dy, dz, nx, ny, nz)) return 0;
  return (lamp.strength * lobe(lamp, -dx / far, -dy / far, -dz / far) * cosine) / (squared + SOURCE_SIZE_M2);
};

/** The wall right behind a sconce takes its light from a layer of its own, exact per pixel (objects/fixtures). */
const onOwnWall = (lamp: Lamp, dx: number, dy: number, dz: number, nx: number, ny: number, nz: number): boolean => {
  const [ox, oy, oz] = lamp.outward;
  if (lamp.kind !== 'sconce' || nx * ox + ny * oy + nz * oz < 0.95) return false;
  return Math.abs(dx * ox + dy * oy + dz * oz - SCONCE_STAND_OFF_M) < 0.03;
};

const lobe = ({ kind, outward }: Lamp, dx: number, dy: number, dz: number): number => {
  const out = dx * outward[0] + dy * outward[1] + dz * outward[2];
  if (kind === 'step') return Math.max(0, out * 0.6 - dy * 0.8);
  const up = dy * dy;
  return 0.16 + (out > -0.3 ? up * up * (dy > 0 ? 1.1 : 0.8) : 0);
};
