/** Mode pairs (m, n) across a closed axis, in ascending rigid transverse wavenumber, the order in which sums are cut. */
export interface TransverseTerms {
  readonly count: number;
  /** Orders along the first and the second transverse axis. */
  readonly first: Uint16Array;
  readonly second: Uint16Array;
  /** (m pi / L1)^2 + (n pi / L2)^2. */
  readonly kappa2: Float64Array;
  /** How many orders of each axis the first t + 1 terms need. */
  readonly firstCount: Uint16Array;
  readonly secondCount: Uint16Array;
}

/** All pairs with kappa^2 <= limit. */
export const listTerms = (length1M: number, length2M: number, kappa2Limit: number): TransverseTerms => {
  const pairs: [number, number, number][] = [];
  for (let m = 0; ((m * Math.PI) / length1M) ** 2 <= kappa2Limit; m++) {
    const left = kappa2Limit - ((m * Math.PI) / length1M) ** 2;
    for (let n = 0; ((n * Math.PI) / length2M) ** 2 <= left; n++) {
      pairs.push([((m * Math.PI) / length1M) ** 2 + ((n * Math.PI) / length2M) ** 2, m, n]);
    }
  }
  pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const count = pairs.length;
  const terms = {
    count,
    first: new Uint16Array(count),
    second: new Uint16Array(count),
    kappa2: new Float64Array(count),
    firstCount: new Uint16Array(count),
    secondCount: new Uint16Array(count),
  };
  let most1 = 0;
  let most2 = 0;
  for (let t = 0; t < count; t++) {
    const [kappa2, m, n] = pairs[t];
    terms.kappa2[t] = kappa2;
    terms.first[t] = m;
    terms.second[t] = n;
    most1 = Math.max(most1, m + 1);
    most2 = Math.max(most2, n + 1);
    terms.firstCount[t] = most1;
    terms.secondCount[t] = most2;
  }
  return terms;
};

/** How many terms have kappa^2 <= limit; at least one. */
export const termsWithin = (terms: TransverseTerms, limit: number): number => {
  const { kappa2 } = terms;
  let low = 0;
  let high = terms.count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (kappa2[middle] <= limit) low = middle + 1;
    else high = middle;
  }
  return Math.max(1, low);
};
