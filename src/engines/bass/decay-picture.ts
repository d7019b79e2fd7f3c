/** Pressures this small are shown as this. */
const SILENCE = 1e-30;

/**
 * How a tone dies away: the size of what is left, `timesS` after it was switched off, of a steady tone of each frequency,
 *
 *   p(f, t) = | integral from t on of h(tau) e^(-2 pi j f tau) d tau |
 *
 * so that it begins at the steady level |H(f)| and falls with the modes near f. Index time * frequencies + frequency, dB.
 * Derived: superposition of the impulses of a tone that ends at 0 (what a cumulative spectral decay without a window shows).
 * @param response samples of h from 0 on
 * @param perS samples a second, well above twice the highest frequency in the response
 * @param timesS ascending
 */
export const decayPicture = (
  response: Float64Array,
  perS: number,
  frequenciesHz: Float64Array,
  timesS: Float64Array,
): Float32Array => {
  const levels = new Float32Array(timesS.length * frequenciesHz.length);
  const starts = Array.from(timesS, (t) => Math.min(response.length - 1, Math.round(t * perS)));
  for (let f = 0; f < frequenciesHz.length; f++) {
    const step = (2 * Math.PI * frequenciesHz[f]) / perS;
    const [stepRe, stepIm] = [Math.cos(step), Math.sin(step)];
    // The tone's turn at each sample, from the end back to the beginning.
    let turnRe = Math.cos(step * (response.length - 1));
    let turnIm = -Math.sin(step * (response.length - 1));
    let re = 0;
    let im = 0;
    let next = starts.length - 1;
    for (let n = response.length - 1; n >= 0 && next >= 0; n--) {
      const sample = response[n];
      while (next >= 0 && starts[next] === n) {
        // The first sample of the rest counts half (trapezoid rule).
        const restRe = re + (sample * turnRe) / 2;
        const restIm = im + (sample * turnIm) / 2;
        const energy = (restRe * restRe + restIm * restIm) / (perS * perS);
        levels[next * frequenciesHz.length + f] = 10 * Math.log10(Math.max(SILENCE, energy));
        next--;
      }
      re += sample * turnRe;
      im += sample * turnIm;
      const kept = turnRe;
      turnRe = kept * stepRe - turnIm * stepIm;
      turnIm = turnIm * stepRe + kept * stepIm;
    }
  }
  return levels;
};
