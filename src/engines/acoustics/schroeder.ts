/**
 * Schroeder frequency in hertz: 2000 sqrt(T / V), T in seconds, V in m3 (Schroeder 1962, 1996; remembered; the factor is
 * sqrt(c^3 / (4 ln 10)), 2093 at 343 m/s, rounded). Under it a room's response is that of single modes; over it, of many
 * at once (three within a mode's bandwidth).
 */
export const schroederHz = (reverberationTimeS: number, volumeM3: number): number =>
  2000 * Math.sqrt(reverberationTimeS / volumeM3);

/** Decay constant in 1/s of a mode of reverberation time T: 3 ln 10 / T = 6.908 / T; the amplitude falls as e^(-delta t). */
export const decayConstant = (reverberationTimeS: number): number => (3 * Math.LN10) / reverberationTimeS;

/** Width of a mode's peak at -3 dB in hertz: delta / pi = 2.2 / T. */
export const modeBandwidthHz = (reverberationTimeS: number): number => decayConstant(reverberationTimeS) / Math.PI;
