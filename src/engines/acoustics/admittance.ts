/**
 * Diffuse-incidence absorption of a locally reacting wall of normalised specific admittance (rho c / Z)
 * real + j imaginary: 2 int alpha(mu) mu dmu over mu = cos(angle of incidence) from 0 to 1, with
 * alpha(mu) = 4 real mu / |mu + beta|^2. Derived; for a real admittance b it is
 * 8 b (1 + b / (1 + b) - 2 b ln(1 + 1 / b)), greatest 0.951 near b = 0.64 (Paris' integral; the same result is in Kuttruff,
 * Room Acoustics, ch. 2, from memory). 0 for a wall that takes no energy. The closed form cancels for very soft walls:
 * six figures at b = 200, far beyond any document's 10.
 */
export const diffuseAbsorption = (real: number, imaginary = 0): number => {
  if (!(real > 0)) return 0;
  const s = Math.abs(imaginary);
  const end = 1 + real;
  const logarithm = Math.log((end * end + s * s) / (real * real + s * s));
  // int (1 / (t^2 + s^2)) from real to 1 + real, without cancellation as s goes to 0.
  const slope = real * end + s * s;
  const inverse = s * 1e6 < real ? 1 / slope : Math.atan2(s, slope) / s;
  return 8 * real * (1 - real * logarithm + (real * real - s * s) * inverse);
};

/** The greatest diffuse absorption a real admittance can have, and the admittance that has it. */
export const greatestDiffuse: { readonly absorption: number; readonly admittance: number } = (() => {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = 0.3;
  let high = 1.2;
  while (high - low > 1e-9) {
    const a = high - ratio * (high - low);
    const b = low + ratio * (high - low);
    if (diffuseAbsorption(a) > diffuseAbsorption(b)) high = b;
    else low = a;
  }
  return { absorption: diffuseAbsorption((low + high) / 2), admittance: (low + high) / 2 };
})();

/** A real admittance found from an absorption, and whether the absorption was beyond what any real admittance gives. */
export interface FoundAdmittance {
  readonly admittance: number;
  readonly clamped: boolean;
}

/**
 * The real normalised admittance whose diffuse absorption is `absorption`, the smaller of the two that have it (the hard
 * wall). Above the greatest, 0.951, the admittance of the greatest is given and `clamped` says so. About absorption / 8
 * for hard walls. Bisection to 1e-12.
 */
export const admittanceFromDiffuse = (absorption: number): FoundAdmittance => {
  if (absorption <= 0) return { admittance: 0, clamped: absorption < 0 };
  if (absorption >= greatestDiffuse.absorption) {
    return { admittance: greatestDiffuse.admittance, clamped: absorption > greatestDiffuse.absorption };
  }
  let low = 0;
  let high = greatestDiffuse.admittance;
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (diffuseAbsorption(middle) < absorption) low = middle;
    else high = middle;
  }
  return { admittance: (low + high) / 2, clamped: false };
};
