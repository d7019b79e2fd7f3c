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
 * For a picture at once, and for the figures. Measured over the plans D and E of tests/published and an L of 40 m2 with modes to
 * 300 Hz, frequencies of modes to 200 Hz: first within 6e-4, fine within 2e-4; to 300 Hz 8e-3 and 3e-3.
 */
export const PLAN_DETAIL: Readonly<Record<'first' | 'fine', ElementChoice>> = {
  first: { order: 4, sideOverWavelength: 1.05, cornerShare: 0.02, slope: 1.2 },
  fine: { order: 5, sideOverWavelength: 1, cornerShare: 0.005, slope: 1 },
};
