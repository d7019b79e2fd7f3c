/** How a plan is cut into elements beside the length of their sides. */
export interface ElementChoice {
  /** Order of the polynomials, 1 to 8. */
  readonly order: number;
  /** See Grading in mesh-size.ts. */
  readonly cornerShare: number;
  readonly slope: number;
}

export const FINE_ELEMENTS: ElementChoice = { order: 4, cornerShare: 0.02, slope: 0.7 };

/** Settings for a picture at once and for the figures; errors and times in DEVELOPERS.md. */
export const PLAN_DETAIL = {
  first: { order: 4, cornerShare: 0.03, slope: 1, meshM: 1.2 },
  fine: { ...FINE_ELEMENTS, meshM: 1 },
} as const;
