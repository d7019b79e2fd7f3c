/** How a plan is cut into elements. */
export interface ElementChoice {
  /** Order of the polynomials, 1 to 8. */
  readonly order: number;
  /** Side of an element over the wavelength at the highest mode asked for, where its length is not given. */
  readonly sideOverWavelength: number;
  /** See Grading in mesh-size.ts. */
  readonly cornerShare: number;
  readonly slope: number;
}

/**
 * For a picture at once, and for the figures. Worst relative error of a mode's frequency over the plans D and E of
 * tests/published and an L of 40 m2, against order 7 (itself within 1e-6 of the published values), by share of the highest
 * frequency asked for: first 7e-4 to two thirds of it, 8e-3 at it; fine 2e-5 to two thirds, 7e-4 at it; large (order 7, long sides:
 * fewer nodes where hundreds of modes are wanted, measured at 150 and 675 m2) 8e-6 to two fifths, 5e-4 at it.
 */
export const PLAN_DETAIL: Readonly<Record<'first' | 'fine' | 'large', ElementChoice>> = {
  first: { order: 4, sideOverWavelength: 1.05, cornerShare: 0.02, slope: 1.2 },
  large: { order: 7, sideOverWavelength: 1.6, cornerShare: 0.005, slope: 1 },
  fine: { order: 5, sideOverWavelength: 1, cornerShare: 0.005, slope: 1 },
};
