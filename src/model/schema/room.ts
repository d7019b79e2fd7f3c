import { byFrequency, coordinate, id, locked, NAME_LENGTH, number, pointM, wholeNumber, z } from './values.ts';

export const SURFACES = ['front', 'back', 'left', 'right', 'floor', 'ceiling'] as const;
export const surfaceName = z.enum(SURFACES);
export type SurfaceName = z.infer<typeof surfaceName>;

const corner = z.tuple([coordinate, coordinate]);

const plan = z.discriminatedUnion('shape', [
  z.looseObject({ shape: z.literal('rectangle'), widthM: number(1.5, 30), lengthM: number(1.5, 30) }),
  z.looseObject({ shape: z.literal('polygon'), cornersM: z.array(corner).min(3).max(64) }),
]);

const heightM = number(1.8, 10);
const across = z.enum(['x', 'z']);
const ceiling = z.discriminatedUnion('shape', [
  z.looseObject({ shape: z.literal('flat'), heightM }),
  z.looseObject({ shape: z.literal('slope'), across, startHeightM: heightM, endHeightM: heightM }),
  // A knee wall may be far lower than a room may be: only the highest point has to reach a room's height.
  z.looseObject({
    shape: z.literal('profile'),
    across,
    pointsM: z
      .array(z.tuple([coordinate, number(0, 10)]))
      .min(2)
      .max(16),
  }),
]);

/** A surface says one of: a finish by name, absorption by octave, an admittance at low frequency. */
export const surface = z.looseObject({
  finish: z.string().min(1).max(64).optional(),
  absorption: byFrequency(0, 1).optional(),
  /** Normalised specific admittance rho c / Z, [real, imaginary]; a passive wall has a real part of at least 0. */
  admittance: z.tuple([number(0, 10), number(-10, 10)]).optional(),
});

const surfaces = z
  .looseObject({
    front: surface.optional(),
    back: surface.optional(),
    left: surface.optional(),
    right: surface.optional(),
    floor: surface.optional(),
    ceiling: surface.optional(),
    walls: z.record(z.string().regex(/^\d{1,2}$/, { error: 'the number of a plan edge' }), surface).optional(),
  })
  .default({});

/**
 * A rectangle on a surface. `fromM` runs along the side walls from the front wall and along every other surface from the
 * left wall; `bottomM` runs up a wall from the floor, and along floor and ceiling from the front wall. In a plan with
 * several walls of one name, `wall` is the number of the plan's edge (file order); without it the longest is meant.
 */
const onSurface = {
  surface: surfaceName,
  wall: wholeNumber(0, 63).optional(),
  fromM: number(0, 30),
  widthM: number(0.01, 30),
  bottomM: number(0, 30).default(0),
  heightM: number(0.01, 30),
};

export const patch = surface.extend({ id, ...onSurface, locked });

export const opening = z.looseObject({
  id,
  kind: z.enum(['door', 'window', 'opening']),
  ...onSurface,
  leaf: z.enum(['closed', 'open', 'none']).default('closed'),
  hinge: z.enum(['left', 'right']).default('left'),
  swing: z.enum(['in', 'out']).default('in'),
  opensTo: z.enum(['room', 'outside', 'openPlan']).default('room'),
  locked,
});

export const object = z.looseObject({
  id,
  kind: z.string().min(1).max(64),
  name: z.string().max(NAME_LENGTH).default(''),
  minM: pointM,
  maxM: pointM,
  locked,
});

export const room = z.looseObject({
  plan,
  ceiling,
  surfaces,
  /** Reverberation time by octave, seconds, where it is known better than the finishes tell: measured, or wanted. */
  reverberationS: byFrequency(0.05, 20).optional(),
  patches: z.array(patch).max(200).default([]),
  openings: z.array(opening).max(200).default([]),
  objects: z.array(object).max(200).default([]),
});
