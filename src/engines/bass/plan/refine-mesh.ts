import type { Stretch, Triangles } from './inside-triangles.ts';
import type { SizeAt } from './mesh-size.ts';

/** A triangle is cut when the radius of its circumcircle is over this share of the wanted side (0.577: equal sides). */
const RADIUS_SHARE = 0.72;
/** A stretch is never halved below this share of the wanted side. */
const SHORTEST_SHARE = 0.5;
/** A new point keeps this share of the wanted side from every other. */
const CLEARANCE_SHARE = 0.45;

/** Halves a stretch in place; the new point is the last of `coords`. */
const halve = (coords: number[], stretches: Stretch[], i: number): void => {
  const { a, b, edge, fromM, toM } = stretches[i];
  const middle = coords.length / 2;
  coords.push((coords[2 * a] + coords[2 * b]) / 2, (coords[2 * a + 1] + coords[2 * b + 1]) / 2);
  stretches[i] = { a, b: middle, edge, fromM, toM: (fromM + toM) / 2 };
  stretches.push({ a: middle, b, edge, fromM: (fromM + toM) / 2, toM });
};

const mayHalve = (coords: number[], { a, b, fromM, toM }: Stretch, sizeAt: SizeAt): boolean => {
  const size = sizeAt((coords[2 * a] + coords[2 * b]) / 2, (coords[2 * a + 1] + coords[2 * b + 1]) / 2);
  return (toM - fromM) / 2 >= SHORTEST_SHARE * size;
};

/** Positive inside the circle over a stretch: -(p - a) . (p - b). */
const encroaches = (coords: number[], { a, b }: Stretch, u: number, v: number): boolean =>
  (u - coords[2 * a]) * (u - coords[2 * b]) + (v - coords[2 * a + 1]) * (v - coords[2 * b + 1]) < 0;

const isClear = (coords: number[], u: number, v: number, distance: number): boolean => {
  for (let i = 0; i < coords.length; i += 2) if (Math.hypot(coords[i] - u, coords[i + 1] - v) < distance) return false;
  return true;
};

interface Wanted {
  readonly u: number;
  readonly v: number;
  readonly size: number;
  readonly excess: number;
}

/** Centres of the circumcircles that are too large, the worst first. */
const tooLarge = (coords: number[], triangles: Triangles, sizeAt: SizeAt): Wanted[] => {
  const wanted: Wanted[] = [];
  for (let t = 0; t < triangles.points.length; t += 3) {
    const [a, b, c] = triangles.points.subarray(t, t + 3);
    const [bu, bv] = [coords[2 * b] - coords[2 * a], coords[2 * b + 1] - coords[2 * a + 1]];
    const [cu, cv] = [coords[2 * c] - coords[2 * a], coords[2 * c + 1] - coords[2 * a + 1]];
    const four = 2 * (bu * cv - bv * cu);
    const [bb, cc] = [bu * bu + bv * bv, cu * cu + cv * cv];
    const [du, dv] = [(cv * bb - bv * cc) / four, (bu * cc - cu * bb) / four];
    const radius = Math.hypot(du, dv);
    if (!Number.isFinite(radius)) continue;
    const size = sizeAt(coords[2 * a] + (bu + cu) / 3, coords[2 * a + 1] + (bv + cv) / 3);
    const excess = radius / size;
    if (excess > RADIUS_SHARE) wanted.push({ u: coords[2 * a] + du, v: coords[2 * a + 1] + dv, size, excess });
  }
  return wanted.sort((first, second) => second.excess - first.excess);
};

/**
 * One round of refinement, in place: the centres of too large circumcircles that keep clear of each other and of the outline
 * become points; stretches of outline they would crowd are halved instead. False when nothing was left to do.
 */
export const refineOnce = (coords: number[], stretches: Stretch[], triangles: Triangles, sizeAt: SizeAt): boolean => {
  const before = coords.length;
  const known = stretches.length;
  const crowded = new Uint8Array(known);
  for (let half = 0; half < triangles.stretch.length; half++) {
    const i = triangles.stretch[half];
    if (i < 0) continue;
    const apex = triangles.points[half % 3 === 0 ? half + 2 : half - 1];
    if (encroaches(coords, stretches[i], coords[2 * apex], coords[2 * apex + 1])) crowded[i] = 1;
  }
  for (const { u, v, size } of tooLarge(coords, triangles, sizeAt)) {
    let inTheWay = false;
    for (let i = 0; i < known; i++) {
      if (!encroaches(coords, stretches[i], u, v)) continue;
      inTheWay = true;
      crowded[i] = 1;
    }
    const target = sizeAt(u, v);
    if (
      !inTheWay &&
      isClear(coords, u, v, CLEARANCE_SHARE * Math.min(size, target)) &&
      isInside(coords, stretches, known, u, v)
    )
      coords.push(u, v);
  }
  for (let i = 0; i < known; i++) if (crowded[i] && mayHalve(coords, stretches[i], sizeAt)) halve(coords, stretches, i);
  return coords.length > before;
};

/** Whether a place lies inside the outline: a ray along u crosses an odd number of stretches. */
const isInside = (coords: number[], stretches: readonly Stretch[], known: number, u: number, v: number): boolean => {
  let inside = false;
  for (let i = 0; i < known; i++) {
    const { a, b } = stretches[i];
    const [av, bv] = [coords[2 * a + 1], coords[2 * b + 1]];
    if (av > v === bv > v) continue;
    const cross = coords[2 * a] + ((v - av) / (bv - av)) * (coords[2 * b] - coords[2 * a]);
    if (u < cross) inside = !inside;
  }
  return inside;
};

/** Every point that is not on the outline goes to the mean of its neighbours. */
export const smooth = (coords: Float64Array, triangles: Triangles): Float64Array<ArrayBuffer> => {
  const moved = new Float64Array(coords.length);
  const neighbours = new Float64Array(coords.length / 2);
  const fixed = new Uint8Array(coords.length / 2);
  for (let half = 0; half < triangles.points.length; half++) {
    const a = triangles.points[half];
    const b = triangles.points[half % 3 === 2 ? half - 2 : half + 1];
    if (triangles.stretch[half] >= 0) {
      fixed[a] = 1;
      fixed[b] = 1;
    }
    moved[2 * a] += coords[2 * b];
    moved[2 * a + 1] += coords[2 * b + 1];
    neighbours[a] += 1;
  }
  for (let i = 0; i < neighbours.length; i++) {
    const free = fixed[i] === 0 && neighbours[i] > 0;
    moved[2 * i] = free ? moved[2 * i] / neighbours[i] : coords[2 * i];
    moved[2 * i + 1] = free ? moved[2 * i + 1] / neighbours[i] : coords[2 * i + 1];
  }
  return moved;
};
