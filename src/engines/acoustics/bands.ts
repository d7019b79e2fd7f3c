/** The octave bands in which room absorption is stated, nominal centres in hertz. */
export const octaveBandsHz = [125, 250, 500, 1000, 2000, 4000] as const;

/** One value an octave band, 125 to 4000 Hz: absorption coefficients, areas, times. */
export type OctaveValues = readonly [number, number, number, number, number, number];

/** A value made for each octave band from its place 0 to 5. */
export const octaves = (make: (band: number) => number): OctaveValues => [
  make(0),
  make(1),
  make(2),
  make(3),
  make(4),
  make(5),
];

/** The exact midband 1000 x 10^(0.3 k) of an octave band 125 to 4000 Hz by its place 0 to 5 (IEC 61260 base ten). */
export const exactMidbandHz = (band: number): number => 1000 * 10 ** (0.3 * (band - 3));

/** Octave values keyed by the band's centre ("125" ...), as the report writes them. */
export const byBandName = (values: OctaveValues): Record<string, number> =>
  Object.fromEntries(octaveBandsHz.map((hz, i) => [String(hz), values[i]]));
