import { edgeLengthM } from './edge-quadrature.ts';
import { type ElementChoice, FINE_ELEMENTS } from './element-choice.ts';
import { type Enrichment, enrich } from './enrichment.ts';
import { type EnvelopeFactor, factorShifted } from './envelope-factor.ts';
import { createNodalField } from './nodal-field.ts';
import { pointLoad, wallLoad, wholeEdge } from './plan-loads.ts';
import { createLocator, type PlanLocator } from './plan-locator.ts';
import { assemble, type PlanMatrices } from './plan-matrices.ts';
import { meshPlan } from './plan-mesh.ts';
import { createPlanSpace, type PlanSpace } from './plan-space.ts';
import { type RigidModes, rigidModes } from './rigid-modes.ts';

/**
 * Functions over the cross-section of a straight-walled room, orthonormal over its area, in which the wave equation with
 * absorbing walls is solved: the rigid modes up to a bound, and what they need beside them near walls and sources.
 * Places are (u, v) in metres in the axes of the corners. Edge e runs from corner e to corner e + 1 in the order given.
 */
export interface PlanBasis {
  /** Number of functions. */
  readonly size: number;
  /** Eigenvalues of the stiffness projected on the functions, 1/m2, ascending: int grad phi_i . grad phi_j = lambda_i delta_ij. */
  readonly lambda: Float64Array;
  /** Eigenvalues (2 pi f / c)^2 of the rigid plan modes alone, 1/m2, ascending from 0, complete to the bound asked for. */
  readonly rigid: Float64Array;
  readonly areaM2: number;
  /** Every function at points given as u, v pairs: row-major, points x size. A point outside is brought to the nearest inside. */
  valuesAt(pointsUv: Float64Array): Float64Array;
  /** int phi_i phi_j dl over edge e, or over `fromM`..`toM` metres along it: symmetric, row-major, size x size. */
  edgeMatrix(edge: number, fromM?: number, toM?: number): Float64Array;
  /** int phi_i cos(order pi t) dl over `fromM`..`toM` along edge e, t = 0..1 along that part: `size` values. */
  edgeVector(edge: number, fromM: number, toM: number, order: number): Float64Array;
  /** The same functions and those of point loads at these places (subwoofers), by the factorisation kept. */
  withPoints(pointsUv: Float64Array): PlanBasis;
  /** Memory held, in bytes. */
  readonly bytes: number;
}

/** A part of an edge, in metres along it from its first corner. */
export interface EdgePart {
  readonly edge: number;
  readonly fromM: number;
  readonly toM: number;
}

export interface PlanBasisOptions {
  /** Rigid plan modes up to here, Hz, none left out. */
  readonly maxHz: number;
  /** m/s. */
  readonly soundSpeed: number;
  /** Longest side of an element, m, away from re-entrant corners. */
  readonly meshM: number;
  /** Functions cos(m pi t), m = 0..wallFunctions - 1, as loads on every edge. */
  readonly wallFunctions: number;
  /** The same loads on parts of edges, for patches. */
  readonly parts?: readonly EdgePart[];
  /** Point loads, u, v pairs. */
  readonly pointsUv?: Float64Array;
  /** Frequency that sets how quickly the functions of loads die away from them, Hz; `maxHz` where not given. */
  readonly enrichTopHz?: number;
}

interface Ground {
  readonly space: PlanSpace;
  readonly matrices: PlanMatrices;
  readonly factor: EnvelopeFactor;
  readonly locator: PlanLocator;
  readonly modes: RigidModes;
}

/**
 * Rigid plan modes and functions for loads, by finite elements. The corners make a simple polygon in either sense. Throws a
 * RangeError with a sentence where they do not, or where it has no proper triangles.
 */
export const createPlanBasis = (
  cornersM: readonly (readonly [number, number])[],
  options: PlanBasisOptions & Partial<ElementChoice>,
): PlanBasis => {
  const { order, cornerShare, slope } = { ...FINE_ELEMENTS, ...options };
  const mesh = meshPlan(cornersM, { meshM: options.meshM, cornerShare, slope });
  if (typeof mesh === 'string') throw new RangeError(mesh);
  const space = createPlanSpace(mesh, order);
  const matrices = assemble(space);
  const waveNumber = (hz: number): number => (2 * Math.PI * hz) / options.soundSpeed;
  const modes = rigidModes(space, matrices, waveNumber(options.maxHz) ** 2);
  const factor = factorShifted(space, matrices, waveNumber(options.enrichTopHz ?? options.maxHz) ** 2);
  const ground: Ground = { space, matrices, factor, locator: createLocator(mesh), modes };
  const parts = [...cornersM.map((_, edge) => wholeEdge(space, edge)), ...(options.parts ?? [])];
  const loads = parts.flatMap((part) =>
    Array.from({ length: options.wallFunctions }, (_, m) => wallLoad(space, part, m)),
  );
  loads.push(...pointLoads(ground, options.pointsUv ?? new Float64Array(0)));
  const none: Enrichment = { values: new Float64Array(0), vectors: new Float64Array(0) };
  return basisOf(ground, enrich(space, matrices, factor, modes, none, loads));
};

const pointLoads = ({ space, locator }: Ground, pointsUv: Float64Array): Float64Array[] =>
  Array.from({ length: pointsUv.length / 2 }, (_, i) =>
    pointLoad(space, locator, pointsUv[2 * i], pointsUv[2 * i + 1]),
  );

const basisOf = (ground: Ground, added: Enrichment): PlanBasis => {
  const { space, matrices, factor, locator, modes } = ground;
  const field = createNodalField(space, locator, [modes.vectors, added.vectors]);
  const lambda = new Float64Array(field.size);
  lambda.set(modes.values);
  lambda.set(added.values, modes.values.length);
  const lengthOf = (edge: number): number => edgeLengthM(space, edge);
  return {
    size: field.size,
    lambda,
    rigid: modes.values,
    areaM2: space.mesh.outline.areaM2,
    valuesAt: field.valuesAt,
    edgeMatrix: (edge, fromM = 0, toM = lengthOf(edge)) => field.edgeMatrix(edge, fromM, toM),
    edgeVector: field.edgeVector,
    withPoints: (pointsUv) =>
      basisOf(ground, enrich(space, matrices, factor, modes, added, pointLoads(ground, pointsUv))),
    bytes:
      field.bytes +
      factor.bytes +
      locator.bytes +
      8 * (modes.vectors.length + added.vectors.length) +
      20 * space.column.length,
  };
};
