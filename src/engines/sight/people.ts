/** How well a number is founded: read in the source, read in a second source, remembered, or worked out. */
export type Standing = 'read' | 'read2' | 'memory' | 'derived';

/** A body measure of a grown population at its 5th, 50th and 95th percentile, metres. */
export interface Percentiles {
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
}

export interface BodyMeasure {
  readonly id: string;
  readonly men: Percentiles;
  readonly women: Percentiles;
  readonly source: string;
  readonly standing: Standing;
}

const din = 'DIN 33402-2:2005-12, Germany, 18 to 65 years, unclothed';

/** Seated eye height above the pressed seat. */
export const eyeAboveSeat: BodyMeasure = {
  id: 'eyeAboveSeat',
  men: { p5: 0.74, p50: 0.795, p95: 0.855 },
  women: { p5: 0.705, p50: 0.755, p95: 0.805 },
  source: din,
  standing: 'read2',
};

/** Seated height of the crown above the pressed seat. */
export const crownAboveSeat: BodyMeasure = {
  id: 'crownAboveSeat',
  men: { p5: 0.855, p50: 0.91, p95: 0.965 },
  women: { p5: 0.81, p50: 0.86, p95: 0.91 },
  source: din,
  standing: 'read2',
};

const between = (upper: Percentiles, lower: Percentiles): Percentiles => ({
  p5: upper.p5 - lower.p5,
  p50: upper.p50 - lower.p50,
  p95: upper.p95 - lower.p95,
});

/**
 * The crown above the eye: the difference of two percentiles of the same rank, which is not itself a percentile of the
 * difference; 0.105 to 0.115 m throughout.
 */
export const crownAboveEye: BodyMeasure = {
  id: 'crownAboveEye',
  men: between(crownAboveSeat.men, eyeAboveSeat.men),
  women: between(crownAboveSeat.women, eyeAboveSeat.women),
  source: din,
  standing: 'derived',
};

/** A person as sight needs them. Metres above the pressed seat, and crown above eye. */
export interface SeatedPerson {
  readonly eyeAbovePanM: number;
  readonly crownAboveEyeM: number;
}

/** The tall person of the worst case: men's 95th percentile. */
export const tallPerson: SeatedPerson = {
  eyeAbovePanM: eyeAboveSeat.men.p95,
  crownAboveEyeM: crownAboveEye.men.p95,
};

/** The short person of the worst case: women's 5th percentile. */
export const shortPerson: SeatedPerson = {
  eyeAbovePanM: eyeAboveSeat.women.p5,
  crownAboveEyeM: crownAboveEye.women.p5,
};
