import { radiansOf } from '../../math/angles.ts';

/** How a loudspeaker sends sound round itself. */
export type Pattern = 'box' | 'omni' | 'dipole' | 'bipole';

/** The floor under a dipole's null in dB: in a room no null is heard deeper. Common practice, no source. */
export const dipoleFloorDb = -15;

/** Pressure behind a box loudspeaker against that before it, 1 kHz octave. */
const boxRear = 0.2;

/**
 * Relative pressure of a box loudspeaker in the 1 kHz octave: (1 + r + (1 - r) cos theta) / 2 with r = 0.2, a law of the first
 * order fitted to a piston of 65 mm radius in a rigid sphere of 125 mm (Morse and Ingard's series, averaged over the
 * octave): within 0.75 dB to 135 degrees. Farther round, the sphere's focus straight behind is left out, because a
 * cabinet's edges spread it. Derived.
 */
export const boxPressure = (offAxisDeg: number): number =>
  (1 + boxRear + (1 - boxRear) * Math.cos(radiansOf(offAxisDeg))) / 2;

/** Relative pressure of a dipole: cos theta, signed: negative behind. Exact for a small one. */
export const dipolePressure = (offAxisDeg: number): number => Math.cos(radiansOf(offAxisDeg));

/**
 * Relative pressure of a bipole, two boxes back to back and in phase, at 1 kHz: the halves are added in energy, as the path
 * between them turns through most of a cycle within the octave. 0 dB before and behind, -1.6 dB at the sides. Derived.
 */
export const bipolePressure = (offAxisDeg: number): number =>
  Math.hypot(boxPressure(offAxisDeg), boxPressure(180 - offAxisDeg)) / Math.hypot(1, boxRear);

/**
 * Level at `offAxisDeg` (0 to 180) against straight ahead, in dB, in the 1 kHz octave; 0 on axis. A dipole is
 * 20 log10 |cos| and never below -15 dB.
 */
export const patternGainDb = (pattern: Pattern, offAxisDeg: number): number => {
  switch (pattern) {
    case 'omni':
      return 0;
    case 'box':
      return 20 * Math.log10(boxPressure(offAxisDeg));
    case 'bipole':
      return 20 * Math.log10(bipolePressure(offAxisDeg));
    case 'dipole':
      return Math.max(dipoleFloorDb, 20 * Math.log10(Math.abs(dipolePressure(offAxisDeg))));
  }
};

/**
 * Directivity index in dB of a pattern symmetrical about its axis: 10 log10 of p(0)^2 over the mean of p^2 over the
 * sphere. Midpoint rule over cos theta, `steps` rings; error below 0.0001 dB for smooth patterns at the default.
 */
export const directivityIndexDb = (pressure: (offAxisDeg: number) => number, steps = 2000): number => {
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const cosine = 1 - (2 * (i + 0.5)) / steps;
    sum += pressure((Math.acos(cosine) * 180) / Math.PI) ** 2;
  }
  return 10 * Math.log10(pressure(0) ** 2 / (sum / steps));
};
