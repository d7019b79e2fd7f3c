import { type OctaveValues, octaves } from './bands.ts';

/** Part of the room's boundary: its area in m2 and its random-incidence absorption an octave band. */
export interface AbsorbingArea {
  readonly areaM2: number;
  readonly absorption: OctaveValues;
}

export interface ReverberationInput {
  readonly volumeM3: number;
  readonly areas: readonly AbsorbingArea[];
  /** Absorption of things standing in the room that are no part of the boundary, m2 an octave band. */
  readonly objectsM2?: OctaveValues;
  /** Energy attenuation constant of the air, 1/m an octave band; air is left out when absent. */
  readonly airPerM?: OctaveValues;
  readonly speedMS: number;
}

export interface Reverberation {
  readonly surfaceM2: number;
  /** Sum of area times absorption, objects included, air left out. */
  readonly equivalentAreaM2: OctaveValues;
  /** Equivalent area over surface. */
  readonly meanAbsorption: OctaveValues;
  readonly sabineS: OctaveValues;
  readonly eyringS: OctaveValues;
}

/**
 * Reverberation time over 60 dB for a total absorption in m2: T = 24 ln 10 V / (c A); 0.161 V / A at 20 degrees Celsius.
 * Infinite without absorption.
 */
export const reverberationS = (volumeM3: number, absorptionM2: number, speedMS: number): number =>
  absorptionM2 > 0 ? (24 * Math.LN10 * volumeM3) / (speedMS * absorptionM2) : Number.POSITIVE_INFINITY;

/** Sabine: T = 24 ln 10 V / (c (A + 4 m V)), seconds. Trustworthy for mean absorption up to about 0.2. */
export const sabineS = (volumeM3: number, equivalentAreaM2: number, speedMS: number, airPerM = 0): number =>
  reverberationS(volumeM3, equivalentAreaM2 + 4 * airPerM * volumeM3, speedMS);

/**
 * Eyring: T = 24 ln 10 V / (c (-S ln(1 - mean absorption) + 4 m V)), seconds; 0 where the mean absorption is 1 or more.
 * It takes absorption as spread evenly over the boundary and the field as diffuse: real furnished rooms differ by tens of
 * per cent.
 */
export const eyringS = (
  volumeM3: number,
  surfaceM2: number,
  meanAbsorption: number,
  speedMS: number,
  airPerM = 0,
): number =>
  meanAbsorption >= 1
    ? 0
    : reverberationS(volumeM3, -surfaceM2 * Math.log1p(-meanAbsorption) + 4 * airPerM * volumeM3, speedMS);

/** Both times in every octave band for a room given by its boundary. */
export const reverberation = (input: ReverberationInput): Reverberation => {
  const { volumeM3, areas, objectsM2, airPerM, speedMS } = input;
  const surfaceM2 = areas.reduce((sum, a) => sum + a.areaM2, 0);
  const equivalentAreaM2 = octaves((i) =>
    areas.reduce((sum, a) => sum + a.areaM2 * a.absorption[i], objectsM2 ? objectsM2[i] : 0),
  );
  const meanAbsorption = octaves((i) => equivalentAreaM2[i] / surfaceM2);
  return {
    surfaceM2,
    equivalentAreaM2,
    meanAbsorption,
    sabineS: octaves((i) => sabineS(volumeM3, equivalentAreaM2[i], speedMS, airPerM?.[i])),
    eyringS: octaves((i) => eyringS(volumeM3, surfaceM2, meanAbsorption[i], speedMS, airPerM?.[i])),
  };
};

/**
 * The distance at which direct and reverberant sound are equally strong, metres: sqrt(Q A / 16 pi), A from the
 * reverberation time by Sabine; 0.057 sqrt(Q V / T). Q is the source's directivity factor (1 for an omni).
 */
export const criticalDistanceM = (volumeM3: number, timeS: number, speedMS: number, directivityFactor = 1): number =>
  Math.sqrt((directivityFactor * 24 * Math.LN10 * volumeM3) / (16 * Math.PI * speedMS * timeS));
