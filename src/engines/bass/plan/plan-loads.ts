import { edgeLengthM, visitEdge } from './edge-quadrature.ts';
import type { EdgePart } from './plan-basis.ts';
import type { Located, PlanLocator } from './plan-locator.ts';
import type { PlanSpace } from './plan-space.ts';

/** Load of a point: the values of all polynomials there. */
export const pointLoad = (space: PlanSpace, locator: PlanLocator, u: number, v: number): Float64Array => {
  const { element, nodes } = space;
  const at: Located = { triangle: 0, l1: 0, l2: 0 };
  const values = new Float64Array(element.nodes);
  locator.locate(u, v, at);
  element.valuesAt(at.l1, at.l2, values);
  const load = new Float64Array(space.size);
  for (let k = 0; k < element.nodes; k++) load[nodes[at.triangle * element.nodes + k]] += values[k];
  return load;
};

/** Load of a wall: int N_i cos(order pi t) dl, t = 0..1 along the part. */
export const wallLoad = (space: PlanSpace, { edge, fromM, toM }: EdgePart, order: number): Float64Array => {
  const load = new Float64Array(space.size);
  visitEdge(space, edge, fromM, toM, extraPoints(order), (nodesAt, values, weightM, atM) => {
    const course = weightM * Math.cos((order * Math.PI * (atM - fromM)) / (toM - fromM));
    for (let k = 0; k < values.length; k++) load[space.stretchNodes[nodesAt + k]] += course * values[k];
  });
  return load;
};

/** Gauss points that a cosine of this order needs beside the polynomials, were the part a single stretch. */
export const extraPoints = (order: number): number => 2 + Math.ceil(order);

export const wholeEdge = (space: PlanSpace, edge: number): EdgePart => ({
  edge,
  fromM: 0,
  toM: edgeLengthM(space, edge),
});
