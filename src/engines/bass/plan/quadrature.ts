import { gaussRule } from '../patches/gauss.ts';

/** Gauss-Legendre points on 0..1 with weights summing to 1, exact to degree 2 count - 1. */
export interface UnitRule {
  readonly at: Float64Array;
  readonly weight: Float64Array;
}

const rules = new Map<number, UnitRule>();

export const unitRule = (count: number): UnitRule => {
  const known = rules.get(count);
  if (known !== undefined) return known;
  const { nodes, weights } = gaussRule(count);
  const rule = { at: nodes.map((t) => (1 + t) / 2), weight: weights.map((w) => w / 2) };
  rules.set(count, rule);
  return rule;
};
