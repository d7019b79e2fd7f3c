import { edgeDistance, isWithin } from '../../../math/polygon.ts';
import { NEAREST_M } from '../screened.ts';
import type { Edge, PrismGeometry } from './prism-geometry.ts';

/**
 * Near a source the field is that of the source and of its images in the walls next to it, screened (screened.ts): for every
 * image e^(-sR) / R, and its slope e^(-sR) / 2s. The images need not fit the walls: the modes take up what they leave. They
 * must only not lie in the room, so each is weighted down as it comes near a wall from behind (at inward corners).
 */
/**
 * Decay per metre. Weaker screens leave less to the modes (errors halve from 3 to 2, and again to 1.2), but more images count at
 * every place.
 */
export const SCREEN_PER_M = 2;
/** Images farther than this many decay lengths are dropped: e^-10 / 5 = 1e-5. */
const FARTHEST = 10;
/** Walls farther from the source than this have no image. */
const NEXT_TO_M = 2.4;
/** A source nearer to a wall is imaged as if it stood this far from it. */
const LEAST_GAP_M = 1e-3;
const SQUARE = 1e-6;

const smooth = (t: number): number => (t <= 0 ? 0 : t >= 1 ? 1 : t * t * (3 - 2 * t));

interface Image {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

const gapOf = (edge: Edge, x: number, y: number): number =>
  (edge.from[0] - x) * edge.outward[0] + (edge.from[1] - y) * edge.outward[1];

const mirrored = (edge: Edge, x: number, y: number): [number, number] => {
  const gap = gapOf(edge, x, y);
  return [x + 2 * gap * edge.outward[0], y + 2 * gap * edge.outward[1]];
};

/** 1 for an image with only its own wall between it and the room, falling to 0 as another part of the room comes near it. */
const weightOf = (geometry: PrismGeometry, edge: Edge, x: number, y: number): number => {
  const gap = gapOf(edge, x, y);
  if (gap < -1e-9 || gap > NEXT_TO_M) return 0;
  const shift = Math.max(0, LEAST_GAP_M - gap);
  const [ix, iy] = mirrored(edge, x - shift * edge.outward[0], y - shift * edge.outward[1]);
  if (isWithin(geometry.corners, [ix, iy])) return 0;
  const ratio = edgeDistance(geometry.corners, [ix, iy]) / (gap + shift);
  return smooth((ratio - 0.5) / 0.4) * smooth((NEXT_TO_M - gap) / 0.6);
};

/** The source and its images in the cross-section, as x, y, weight; the source first. */
export const planImages = (geometry: PrismGeometry, x: number, y: number): Float64Array => {
  const { edges } = geometry;
  const images: Image[] = [{ x, y, weight: 1 }];
  const weights = edges.map((edge) => weightOf(geometry, edge, x, y));
  edges.forEach((edge, i) => {
    if (weights[i] === 0) return;
    const [ix, iy] = mirrored(edge, x, y);
    images.push({ x: ix, y: iy, weight: weights[i] });
  });
  // in a square corner the image of the image
  edges.forEach((edge, i) => {
    const j = (i + 1) % edges.length;
    const next = edges[j];
    const weight = weights[i] * weights[j];
    const dot = edge.outward[0] * next.outward[0] + edge.outward[1] * next.outward[1];
    const outwardCorner = gapOf(edge, next.to[0], next.to[1]) > 0;
    if (weight === 0 || Math.abs(dot) > SQUARE || !outwardCorner) return;
    const [ix, iy] = mirrored(edge, x, y);
    const [jx, jy] = mirrored(next, ix, iy);
    images.push({ x: jx, y: jy, weight });
  });
  return Float64Array.from(images.flatMap((image) => [image.x, image.y, image.weight]));
};

/** Places of the images of z0 in the two ends, within `reach` of 0..lengthM. */
export const endImages = (z0: number, lengthM: number): Float64Array => {
  const reach = FARTHEST / SCREEN_PER_M;
  const found: number[] = [];
  const most = Math.ceil((reach + lengthM) / (2 * lengthM)) + 1;
  for (let m = -most; m <= most; m++)
    for (const z of [2 * m * lengthM + z0, 2 * m * lengthM - z0])
      if (z >= -reach && z <= lengthM + reach) found.push(z);
  return Float64Array.from(found);
};

/** The near part and its slope; scratch, overwritten by each call. */
export const screened = { near: 0, slope: 0 };

/** Sums of e^(-sR) / R and e^(-sR) / 2s over all images at a point, into `screened`. */
export const sumScreened = (plan: Float64Array, ends: Float64Array, x: number, y: number, z: number): void => {
  const reach2 = (FARTHEST / SCREEN_PER_M) ** 2;
  let near = 0;
  let slope = 0;
  for (let i = 0; i < plan.length; i += 3) {
    const across = (plan[i] - x) ** 2 + (plan[i + 1] - y) ** 2;
    if (across > reach2) continue;
    for (let j = 0; j < ends.length; j++) {
      const r2 = across + (ends[j] - z) ** 2;
      if (r2 > reach2) continue;
      const r = Math.max(NEAREST_M, Math.sqrt(r2));
      const decayed = plan[i + 2] * Math.exp(-SCREEN_PER_M * r);
      near += decayed / r;
      slope += decayed;
    }
  }
  screened.near = near;
  screened.slope = slope / (2 * SCREEN_PER_M);
};
