import type { PlanSpace } from './plan-space.ts';
import { unitRule } from './quadrature.ts';
import { lineValues } from './triangle-element.ts';

/** Visits the quadrature points of a part of an edge: nodes at `stretchNodes[nodesAt...]`, values of their polynomials, weight. */
export type EdgeVisitor = (nodesAt: number, values: Float64Array, weightM: number, atM: number) => void;

export const edgeLengthM = ({ mesh }: PlanSpace, edge: number): number => {
  const { corners, count, turned } = mesh.outline;
  const own = turned ? (2 * count - 2 - edge) % count : edge;
  const next = (own + 1) % count;
  return Math.hypot(corners[2 * next] - corners[2 * own], corners[2 * next + 1] - corners[2 * own + 1]);
};

/**
 * Gauss points along `fromM`..`toM` of an edge, stretch by stretch; `edge` and metres in the sense the corners were given in.
 * `extra` points beyond what the square of the polynomials needs, for a factor that varies along the part.
 */
export const visitEdge = (
  space: PlanSpace,
  edge: number,
  fromM: number,
  toM: number,
  extra: number,
  visit: EdgeVisitor,
): void => {
  const { mesh, element } = space;
  const { count, turned } = mesh.outline;
  // own corners run backwards when turned: own corner i is given corner count - 1 - i
  const own = turned ? (2 * count - 2 - edge) % count : edge;
  const length = edgeLengthM(space, edge);
  const [low, high] = turned ? [length - toM, length - fromM] : [fromM, toM];
  const { at, weight } = unitRule(element.order + 1 + extra);
  const values = new Float64Array(element.order + 1);
  for (const [i, stretch] of mesh.stretches.entries()) {
    if (stretch.edge !== own) continue;
    const start = Math.max(low, stretch.fromM);
    const end = Math.min(high, stretch.toM);
    if (end <= start) continue;
    for (let k = 0; k < at.length; k++) {
      const metres = start + at[k] * (end - start);
      lineValues(element.order, (metres - stretch.fromM) / (stretch.toM - stretch.fromM), values);
      visit(i * (element.order + 1), values, weight[k] * (end - start), turned ? length - metres : metres);
    }
  }
};
