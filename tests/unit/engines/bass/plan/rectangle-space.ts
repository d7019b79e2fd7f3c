import { assemble, multiply } from '../../../../../src/engines/bass/plan/plan-matrices.ts';
import { meshPlan } from '../../../../../src/engines/bass/plan/plan-mesh.ts';
import { createPlanSpace } from '../../../../../src/engines/bass/plan/plan-space.ts';
import { factorShifted, type ShiftedFactor } from '../../../../../src/engines/bass/plan/shifted-factor.ts';
import { PLANS } from './plans.ts';

/** Matrices of the 6 x 4 m rectangle: (K + shift M) x, and the factor of K + shift M. */
export const envelopeOf = (
  order: number,
): {
  size: number;
  product: (x: Float64Array, shift: number) => Float64Array;
  factor: (shift: number) => ShiftedFactor;
} => {
  const mesh = meshPlan(PLANS.rectangle, { meshM: 1.1, cornerShare: 0.1, slope: 1 });
  if (typeof mesh === 'string') throw new Error(mesh);
  const space = createPlanSpace(mesh, order);
  const matrices = assemble(space);
  return {
    size: space.size,
    product: (x, shift) => {
      const [stiff, heavy] = [new Float64Array(space.size), new Float64Array(space.size)];
      multiply(space, matrices.stiffness, x, stiff);
      multiply(space, matrices.mass, x, heavy);
      return stiff.map((value, i) => value + shift * heavy[i]);
    },
    factor: (shift) => factorShifted(space, matrices, shift),
  };
};
