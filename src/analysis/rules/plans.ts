import type { StandingBox } from '../../shapes/room/riser-boxes.ts';

/** An upright rectangle seen from above, metres. */
export interface Plan {
  readonly minX: number;
  readonly maxX: number;
  readonly minZ: number;
  readonly maxZ: number;
}

export const meet = (a: Plan, b: Plan): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minZ < b.maxZ && b.minZ < a.maxZ;

export const planOf = ({ fromXM, toXM, fromZM, toZM }: StandingBox): Plan => ({
  minX: fromXM,
  maxX: toXM,
  minZ: fromZM,
  maxZ: toZM,
});
