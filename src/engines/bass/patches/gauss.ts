/**
 * Gauss-Legendre quadrature and Legendre polynomials on [-1, 1], by the three-term recurrence
 * (n + 1) P_(n+1) = (2 n + 1) t P_n - n P_(n-1) (Abramowitz and Stegun, 22.7.10 and 25.4.29; from memory).
 */
export interface GaussRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const rules = new Map<number, GaussRule>();

/** Nodes and weights of `count` points, exact to degree 2 count - 1; kept once made. */
export const gaussRule = (count: number): GaussRule => {
  const known = rules.get(count);
  if (known !== undefined) return known;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let t = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let round = 0; round < 100; round++) {
      let before = 1;
      let value = t;
      for (let n = 1; n < count; n++) [before, value] = [value, ((2 * n + 1) * t * value - n * before) / (n + 1)];
      slope = (count * (before - t * value)) / (1 - t * t);
      const step = value / slope;
      t -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[i] = t;
    weights[i] = 2 / ((1 - t * t) * slope * slope);
  }
  const rule = { nodes, weights };
  rules.set(count, rule);
  return rule;
};

/** P_0 to P_(orders-1) at t, into `out[offset...]`. */
export const legendreAt = (t: number, orders: number, out: Float64Array, offset: number): void => {
  out[offset] = 1;
  if (orders > 1) out[offset + 1] = t;
  for (let n = 1; n + 1 < orders; n++)
    out[offset + n + 1] = ((2 * n + 1) * t * out[offset + n] - n * out[offset + n - 1]) / (n + 1);
};

/** A stretch of one axis, with the polynomials that are orthonormal on it: sqrt((2 p + 1) / length) P_p. */
export interface Stretch {
  readonly fromM: number;
  readonly toM: number;
  readonly orders: number;
  /** Places of the quadrature, metres. */
  readonly atM: Float64Array;
  /** Weight times the polynomial of order p at place j, at p * places + j. */
  readonly weighted: Float64Array;
}

/**
 * Points that a quadrature of `orders` polynomials takes against functions that vary as fast as e^(j kappa x), with `half` w = kappa
 * length / 2: w / 2 + 2.5 w^(1/3) + 1 + orders / 2 leave less than 1e-5 (tried against closed forms).
 */
export const placesOf = (orders: number, half: number): number =>
  Math.ceil(half / 2 + 2.5 * Math.cbrt(half) + orders / 2) + 1;

/** The quadrature of a stretch for `orders` polynomials against functions that vary as fast as e^(j kappa x). */
export const stretchOf = (fromM: number, toM: number, orders: number, kappa: number): Stretch => {
  const lengthM = toM - fromM;
  const places = placesOf(orders, (kappa * lengthM) / 2);
  const { nodes, weights } = gaussRule(places);
  const atM = new Float64Array(places);
  const weighted = new Float64Array(orders * places);
  const values = new Float64Array(orders);
  for (let j = 0; j < places; j++) {
    atM[j] = fromM + (lengthM * (nodes[j] + 1)) / 2;
    legendreAt(nodes[j], orders, values, 0);
    for (let p = 0; p < orders; p++)
      weighted[p * places + j] = ((weights[j] * lengthM) / 2) * Math.sqrt((2 * p + 1) / lengthM) * values[p];
  }
  return { fromM, toM, orders, atM, weighted };
};
