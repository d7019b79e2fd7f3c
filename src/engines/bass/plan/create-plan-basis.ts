import { finish } from '../finish.ts';
import { edgeLengthM } from './edge-quadrature.ts';
import { type ElementChoice, PLAN_DETAIL } from './element-choice.ts';
import { type Enrichment, enrich } from './enrichment.ts';
import { createNodalField } from './nodal-field.ts';
import type { PlanBasis, PlanBasisOptions } from './plan-basis.ts';
import { pointLoad, wallLoad, wholeEdge } from './plan-loads.ts';
import { createLocator, type PlanLocator } from './plan-locator.ts';
import { assemble, type PlanMatrices } from './plan-matrices.ts';
import { meshPlan } from './plan-mesh.ts';
import { createPlanSpace, type PlanSpace } from './plan-space.ts';
import { type RigidModes, rigidModes } from './rigid-modes.ts';
import { factorShifted, type ShiftedFactor } from './shifted-factor.ts';

interface Ground {
  readonly space: PlanSpace;
  readonly matrices: PlanMatrices;
  readonly factor: ShiftedFactor;
  readonly locator: PlanLocator;
  readonly modes: RigidModes;
}

type PlanOptions = PlanBasisOptions & Partial<ElementChoice>;

/**
 * Rigid plan modes and functions for loads, by finite elements. The corners make a simple polygon in either sense. Throws a
 * RangeError with a sentence where they do not, or where it has no proper triangles.
 */
export const createPlanBasis = (cornersM: readonly (readonly [number, number])[], options: PlanOptions): PlanBasis =>
  finish(planBasisSteps(cornersM, options));

/** The same in steps of some 10 to 50 ms, so that whoever waits for it can look at what else is wanted. */
export function* planBasisSteps(
  cornersM: readonly (readonly [number, number])[],
  options: PlanOptions,
): Generator<void, PlanBasis> {
  const { order, cornerShare, slope, sideOverWavelength } = { ...PLAN_DETAIL.fine, ...options };
  const meshM = options.meshM ?? (sideOverWavelength * options.soundSpeed) / options.maxHz;
  const ownParts = options.parts ?? [];
  const breaks = ownParts.flatMap(({ edge, fromM, toM }) => [fromM, toM].map((atM) => ({ edge, atM })));
  const mesh = meshPlan(cornersM, { meshM, cornerShare, slope }, breaks);
  if (typeof mesh === 'string') throw new RangeError(mesh);
  yield;
  const space = createPlanSpace(mesh, order);
  const matrices = assemble(space);
  yield;
  const waveNumber = (hz: number): number => (2 * Math.PI * hz) / options.soundSpeed;
  const modes = yield* rigidModes(space, matrices, waveNumber(options.maxHz) ** 2);
  yield;
  const factor = factorShifted(space, matrices, waveNumber(options.enrichTopHz ?? options.maxHz) ** 2);
  yield;
  const ground: Ground = { space, matrices, factor, locator: createLocator(mesh), modes };
  const parts = [...cornersM.map((_, edge) => wholeEdge(space, edge)), ...ownParts];
  const loads = parts.flatMap((part) =>
    Array.from({ length: options.wallFunctions }, (_, m) => wallLoad(space, part, m)),
  );
  loads.push(...pointLoads(ground, options.pointsUv ?? new Float64Array(0)));
  const none: Enrichment = { values: new Float64Array(0), vectors: new Float64Array(0) };
  return basisOf(ground, yield* enrich(space, matrices, factor, modes, none, loads));
}

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
      basisOf(ground, finish(enrich(space, matrices, factor, modes, added, pointLoads(ground, pointsUv)))),
    bytes:
      field.bytes +
      factor.bytes +
      locator.bytes +
      8 * (modes.vectors.length + added.vectors.length) +
      20 * space.column.length,
  };
};
