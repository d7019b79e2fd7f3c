/**
 * Complex values between even steps (of log f), by the cubic through the two nearest either way: a narrow dip is where real
 * and imaginary part pass through zero, which both do smoothly, while the level between two points knows nothing of it.
 * Lagrange's formula; the outermost steps lean on the nearest four points.
 * @param times how many steps each step is divided into
 * @returns (length - 1) x times + 1 values; the given ones are kept exactly
 */
export const dividedFinely = (values: Float64Array, times: number): Float64Array => {
  const last = values.length - 1;
  const fine = new Float64Array(last * times + 1);
  for (let i = 0; i < last; i++) {
    const from = Math.min(Math.max(0, i - 1), Math.max(0, last - 3));
    for (let k = 0; k < times; k++) {
      const x = i - from + k / times;
      fine[i * times + k] = k === 0 ? values[i] : last < 3 ? straight(values, i, k / times) : cubic(values, from, x);
    }
  }
  fine[last * times] = values[last];
  return fine;
};

const straight = (values: Float64Array, i: number, t: number): number => values[i] + t * (values[i + 1] - values[i]);

/** The cubic through four points at 0, 1, 2, 3. */
const cubic = (values: Float64Array, from: number, x: number): number =>
  (-values[from] * (x - 1) * (x - 2) * (x - 3)) / 6 +
  (values[from + 1] * x * (x - 2) * (x - 3)) / 2 -
  (values[from + 2] * x * (x - 1) * (x - 3)) / 2 +
  (values[from + 3] * x * (x - 1) * (x - 2)) / 6;

/**
 * Levels smoothed over 1/n octave: at each frequency the mean of the energies over the band from f 2^(-1/2n) to
 * f 2^(1/2n), even over log f, of the curve with its energy straight between points; at the ends the part of the band there
 * is. Common practice (energy smoothing with a rectangular window); null smooths nothing.
 */
export const smoothed = (frequenciesHz: Float64Array, levelsDb: Float64Array, n: number | null): Float64Array => {
  if (n === null) return levelsDb;
  const places = frequenciesHz.map(Math.log2);
  const energies = levelsDb.map((db) => 10 ** (db / 10));
  const last = places.length - 1;
  const summed = new Float64Array(places.length);
  for (let i = 1; i <= last; i++)
    summed[i] = summed[i - 1] + ((places[i] - places[i - 1]) * (energies[i] + energies[i - 1])) / 2;
  /** The integral up to a place, i being the last point at or before it. */
  const upTo = (place: number, i: number): number => {
    if (i >= last) return summed[last];
    const t = (place - places[i]) / (places[i + 1] - places[i]);
    const here = energies[i] + t * (energies[i + 1] - energies[i]);
    return summed[i] + ((place - places[i]) * (energies[i] + here)) / 2;
  };
  let low = 0;
  let high = 0;
  return levelsDb.map((_, i) => {
    const from = Math.max(places[0], places[i] - 0.5 / n);
    const to = Math.min(places[last], places[i] + 0.5 / n);
    while (low < last && places[low + 1] <= from) low++;
    while (high < last && places[high + 1] <= to) high++;
    return 10 * Math.log10((upTo(to, high) - upTo(from, low)) / (to - from));
  });
};
