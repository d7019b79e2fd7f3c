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
  /** Usual side of an element, m, away from corners; by default a share of the wavelength at `maxHz` (element-choice.ts). */
  readonly meshM?: number;
  /** Functions cos(m pi t), m = 0..wallFunctions - 1, as loads on every edge. */
  readonly wallFunctions: number;
  /** The same loads on parts of edges, for patches. */
  readonly parts?: readonly EdgePart[];
  /** Point loads, u, v pairs. */
  readonly pointsUv?: Float64Array;
  /** Frequency that sets how quickly the functions of loads die away from them, Hz; `maxHz` where not given. */
  readonly enrichTopHz?: number;
}
