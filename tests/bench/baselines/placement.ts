/**
 * Incremental plain code for the search of arrangements: nested partial sums over the first three subwoofers, Math.log10, no
 * single precision, no lanes. Fields are indexed (candidate * seats + seat) * frequencies + frequency. Shares nothing with src.
 */
export const plainFourSearch = (
  re: Float64Array,
  im: Float64Array,
  candidates: number,
  seats: number,
  frequencies: number,
): Float64Array => {
  const size = seats * frequencies;
  const [re1, im1, re2, im2, re3, im3] = Array.from({ length: 6 }, () => new Float64Array(size));
  const level = new Float64Array(size);
  const out = new Float64Array((candidates * (candidates - 1) * (candidates - 2) * (candidates - 3)) / 24);
  let next = 0;
  for (let a = 0; a < candidates - 3; a++) {
    for (let i = 0; i < size; i++) {
      re1[i] = re[a * size + i];
      im1[i] = im[a * size + i];
    }
    for (let b = a + 1; b < candidates - 2; b++) {
      for (let i = 0; i < size; i++) {
        re2[i] = re1[i] + re[b * size + i];
        im2[i] = im1[i] + im[b * size + i];
      }
      for (let c = b + 1; c < candidates - 1; c++) {
        for (let i = 0; i < size; i++) {
          re3[i] = re2[i] + re[c * size + i];
          im3[i] = im2[i] + im[c * size + i];
        }
        for (let d = c + 1; d < candidates; d++) {
          for (let i = 0; i < size; i++) {
            const x = re3[i] + re[d * size + i];
            const y = im3[i] + im[d * size + i];
            level[i] = 10 * Math.log10(x * x + y * y);
          }
          let spreads = 0;
          for (let f = 0; f < frequencies; f++) {
            let mean = 0;
            for (let s = 0; s < seats; s++) mean += level[s * frequencies + f];
            mean /= seats;
            let squares = 0;
            for (let s = 0; s < seats; s++) squares += (level[s * frequencies + f] - mean) ** 2;
            spreads += Math.sqrt(squares / (seats - 1));
          }
          out[next++] = spreads / frequencies;
        }
      }
    }
  }
  return out;
};
