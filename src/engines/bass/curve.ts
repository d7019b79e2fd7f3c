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
