/** One foot-lambert in cd/m2: 1 / (pi 0.3048^2). */
export const footLambertCdM2 = 1 / (Math.PI * 0.3048 ** 2);

/** White of a cinema's screen centre, cd/m2: 48, 14 foot-lamberts (SMPTE 431-1, read in a second source). */
export const cinemaWhiteCdM2 = 48;

/**
 * Luminance in cd/m2 of a screen lit by `lumens` over `areaM2`: L = lm G / (pi A), the screen gain G being that on axis
 * (definition of a Lambertian surface). `usefulFraction` is what is left after calibration, lens, port and ageing.
 */
export const screenLuminance = (lumens: number, areaM2: number, gain = 1, usefulFraction = 1): number =>
  (lumens * usefulFraction * gain) / (Math.PI * areaM2);

/** The lumens a projector must be rated at for a luminance: pi L A / (G x useful fraction). */
export const lumensForLuminance = (luminance: number, areaM2: number, gain = 1, usefulFraction = 1): number =>
  (Math.PI * luminance * areaM2) / (gain * usefulFraction);
