import { coordinate, id, label, locked, number, z } from './values.ts';

const bodyFields = {
  eyeAbovePanM: number(0.3, 1.2),
  earAbovePanM: number(0.3, 1.2),
  earBehindEyeM: number(0, 0.3),
  crownAboveEyeM: number(0.05, 0.3),
};

/** Seated bodies, measured from the top of the seat pan. Defaults are facts of the house: see contract. */
export const people = z
  .looseObject({
    eyeAbovePanM: bodyFields.eyeAbovePanM.default(0.69),
    earAbovePanM: bodyFields.earAbovePanM.default(0.68),
    earBehindEyeM: bodyFields.earBehindEyeM.default(0.1),
    crownAboveEyeM: bodyFields.crownAboveEyeM.default(0.115),
  })
  .prefault({});

const seat = z.looseObject({
  id,
  xM: coordinate,
  eyeZM: coordinate.optional(),
  facingDeg: number(-180, 180).optional(),
  reclineDeg: number(0, 60).optional(),
  people: z.looseObject(bodyFields).partial().optional(),
  locked,
});

/** One step up to a riser; what it leaves out is as usual. `heightM` is its top above the room's floor. */
const step = z.looseObject({
  fromXM: coordinate.optional(),
  toXM: coordinate.optional(),
  fromZM: coordinate.optional(),
  toZM: coordinate.optional(),
  heightM: number(0, 5).optional(),
});

const riser = z.looseObject({
  fromXM: coordinate,
  toXM: coordinate,
  fromZM: coordinate,
  toZM: coordinate,
  steps: z.array(step).max(32).default([]),
});

export const row = z.looseObject({
  id,
  eyeZM: coordinate,
  floorM: number(0, 5).default(0),
  furniture: z.enum(['single', 'sofa', 'recliner', 'chaise', 'stool']).default('recliner'),
  seat: z
    .looseObject({
      widthM: number(0.3, 2).default(0.7),
      panHeightM: number(0.1, 1.2).default(0.43),
      backHeightM: number(0, 2).default(0.95),
    })
    .prefault({}),
  riser: riser.optional(),
  seats: z.array(seat).min(1).max(64),
  locked,
});

export const referenceSeat = label.optional();
