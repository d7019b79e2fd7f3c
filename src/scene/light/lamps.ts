import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';

/** A wall light that throws its light up and down the wall, or a small light low on a riser. Ours, not the document's. */
export interface Lamp {
  readonly kind: 'sconce' | 'step';
  /** Where the light comes from: a little in front of what carries it. */
  readonly atM: Vec3;
  /** Unit normal of the surface that carries it, into the room. */
  readonly outward: Vec3;
  readonly strength: number;
}

export const SCONCE_HEIGHT_M = 1.72;
export const SCONCE_STAND_OFF_M = 0.09;
const STEP_SPACING_M = 1.1;
const STEP_UP_M = 0.1;
/** How much clear wall a sconce wants around its body, and half of that body along the wall and up it. */
const CLEAR_M = 0.32;
const HALF_WIDE_M = 0.06;
const HALF_TALL_M = 0.13;

interface RoomExtent {
  readonly minM: Vec3;
  readonly maxM: Vec3;
}

/** A rectangle on a side wall: along z and up. */
interface Taken {
  readonly fromZM: number;
  readonly toZM: number;
  readonly fromYM: number;
  readonly toYM: number;
}

/** What already hangs on the side walls. */
const takenOn = ({ room, loudspeakers }: Project, { minM, maxM }: RoomExtent): Taken[] => {
  const hung = [...room.openings, ...room.patches]
    .filter(({ surface }) => surface === 'left' || surface === 'right')
    .map(({ fromM, widthM, bottomM, heightM }) => ({
      fromZM: minM[2] + fromM,
      toZM: minM[2] + fromM + widthM,
      fromYM: bottomM,
      toYM: bottomM + heightM,
    }));
  const near = loudspeakers
    .filter(({ atM }) => Math.min(atM[0] - minM[0], maxM[0] - atM[0]) < 0.5)
    .map(({ atM, sizeM }) => ({
      fromZM: atM[2] - sizeM[0] / 2,
      toZM: atM[2] + sizeM[0] / 2,
      fromYM: atM[1] - sizeM[1] / 2,
      toYM: atM[1] + sizeM[1] / 2,
    }));
  return [...hung, ...near];
};

/** How far a sconce's body at (z, y) stays from a rectangle; negative where they overlap. */
const clearOf = ({ fromZM, toZM, fromYM, toYM }: Taken, z: number, y: number): number => {
  const along = Math.max(fromZM - z, z - toZM) - HALF_WIDE_M;
  const up = Math.max(fromYM - y, y - toYM) - HALF_TALL_M;
  return Math.max(along, up);
};

/** The place near three quarters of the way back that leaves most room on both walls; higher only where it must be. */
const sconcePlace = (project: Project, extent: RoomExtent): { z: number; y: number } => {
  const { minM, maxM } = extent;
  const long = maxM[2] - minM[2];
  const wish = minM[2] + long * 0.78;
  const taken = takenOn(project, extent);
  const highest = maxM[1] - 0.45;
  let best = { z: wish, y: Math.min(SCONCE_HEIGHT_M, highest) };
  let bestCost = Number.POSITIVE_INFINITY;
  for (const wanted of [SCONCE_HEIGHT_M, 1.95, 2.2])
    for (let step = 0; step <= 60; step++) {
      const y = Math.min(wanted, highest);
      const z = minM[2] + long * (0.25 + (0.7 * step) / 60);
      let clear = CLEAR_M;
      for (const rectangle of taken) clear = Math.min(clear, clearOf(rectangle, z, y));
      const cost = (CLEAR_M - clear) * 8 + Math.abs(z - wish) + (y - SCONCE_HEIGHT_M) * 0.6;
      if (cost >= bestCost) continue;
      bestCost = cost;
      best = { z, y };
    }
  return best;
};

/** Two sconces facing each other and small lights along the front of every riser. */
export const lampsOf = (project: Project, extent: RoomExtent): Lamp[] => {
  const { z, y } = sconcePlace(project, extent);
  const sconces = [1, -1].map((side): Lamp => {
    const wall = side > 0 ? extent.minM[0] : extent.maxM[0];
    return {
      kind: 'sconce',
      atM: [wall + side * SCONCE_STAND_OFF_M, y, z],
      outward: [side, 0, 0],
      strength: 1,
    };
  });
  return [...sconces, ...project.rows.flatMap((row) => (row.riser && row.floorM > 0.05 ? stepLights(row) : []))];
};

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
