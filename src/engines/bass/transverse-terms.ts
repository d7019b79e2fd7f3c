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
  const orders = (lengthM: number, left: number): number =>
    Math.floor((Math.sqrt(Math.max(0, left)) * lengthM) / Math.PI) + 1;
  const rows = orders(length1M, kappa2Limit);
  let count = 0;
  for (let m = 0; m < rows; m++) count += orders(length2M, kappa2Limit - ((m * Math.PI) / length1M) ** 2);
  const m0 = new Uint16Array(count);
  const n0 = new Uint16Array(count);
  const value = new Float64Array(count);
  const ranked = new Uint32Array(count);
  for (let m = 0, i = 0; m < rows; m++) {
    const own = ((m * Math.PI) / length1M) ** 2;
    for (let n = orders(length2M, kappa2Limit - own) - 1; n >= 0; n--, i++) {
      m0[i] = m;
      n0[i] = n;
      value[i] = own + ((n * Math.PI) / length2M) ** 2;
      ranked[i] = i;
    }
  }
  ranked.sort((a, b) => value[a] - value[b] || a - b);
  const terms = {
    count,
    first: m0.map((_, t) => m0[ranked[t]]),
    second: n0.map((_, t) => n0[ranked[t]]),
    kappa2: value.map((_, t) => value[ranked[t]]),
    firstCount: new Uint16Array(count),
    secondCount: new Uint16Array(count),
  };
  let most1 = 0;
  let most2 = 0;
  for (let t = 0; t < count; t++) {
    most1 = Math.max(most1, terms.first[t] + 1);
    most2 = Math.max(most2, terms.second[t] + 1);
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
