import type { Project } from '../../model/project.ts';

/** How one subwoofer is driven: amplitude factor (negative where inverted) and delay in seconds. */
export interface Drive {
  readonly gain: number;
  readonly delayS: number;
}

export const drivesOf = (project: Project): Drive[] =>
  project.subwoofers.map(({ gainDb, delayMs, inverted }) => ({
    gain: 10 ** (gainDb / 20) * (inverted ? -1 : 1),
    delayS: delayMs / 1000,
  }));

/** The drives as complex weights at one frequency, re and im a source: gain e^(-j omega delay). Fills `out`. */
export const driveWeights = (drives: readonly Drive[], frequencyHz: number, out: Float64Array): Float64Array => {
  const omega = 2 * Math.PI * frequencyHz;
  for (let source = 0; source < drives.length; source += 1) {
    const { gain, delayS } = drives[source];
    out[2 * source] = gain * Math.cos(omega * delayS);
    out[2 * source + 1] = -gain * Math.sin(omega * delayS);
  }
  return out;
};
