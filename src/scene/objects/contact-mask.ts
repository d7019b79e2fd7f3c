import type { Solid } from '../../shapes/solid.ts';
import { toWorld, worldMatrix } from '../light/placing.ts';

/** A soft dark patch under a standing thing: how dark at each of SIZE x SIZE texels over a rectangle on the floor. */
export interface ContactMask {
  readonly size: number;
  readonly fromXM: number;
  readonly fromZM: number;
  readonly widthM: number;
  readonly depthM: number;
  readonly darkness: Float32Array;
}

const SIZE = 48;
const MARGIN_M = 0.26;
/** Height at which a part overhead darkens the floor a third as much as one that touches it. */
const FADE_M = 0.14;
const REACH_M = 0.5;

interface Spread {
  minX: number;
  minZ: number;
  maxX: number;
  maxZ: number;
}

const spreadOf = (points: Float64Array, baseM: number): Spread | null => {
  const spread: Spread = { minX: Infinity, minZ: Infinity, maxX: -Infinity, maxZ: -Infinity };
  for (let i = 0; i < points.length; i += 3) {
    if (points[i + 1] > baseM + REACH_M) continue;
    spread.minX = Math.min(spread.minX, points[i]);
    spread.maxX = Math.max(spread.maxX, points[i]);
    spread.minZ = Math.min(spread.minZ, points[i + 2]);
    spread.maxZ = Math.max(spread.maxZ, points[i + 2]);
  }
  return spread.minX <= spread.maxX ? spread : null;
};

const worldPoints = (solid: Solid): Float64Array => {
  const { positions } = solid.geometry;
  const points = new Float64Array(positions.length);
  const matrix = worldMatrix(solid.placement);
  for (let i = 0; i < positions.length; i += 3)
    toWorld(matrix, positions[i], positions[i + 1], positions[i + 2], points.subarray(i, i + 3));
  return points;
};

/** Looks down on the low parts of a thing standing at height `baseM`, lower parts darker, then softens what it sees. */
export const contactMask = (solids: readonly Solid[], baseM: number): ContactMask | null => {
  const clouds = solids.map(worldPoints);
  const spreads = clouds.map((points) => spreadOf(points, baseM)).filter((spread) => spread !== null);
  if (spreads.length === 0) return null;
  const fromX = Math.min(...spreads.map(({ minX }) => minX)) - MARGIN_M;
  const fromZ = Math.min(...spreads.map(({ minZ }) => minZ)) - MARGIN_M;
  const width = Math.max(...spreads.map(({ maxX }) => maxX)) + MARGIN_M - fromX;
  const depth = Math.max(...spreads.map(({ maxZ }) => maxZ)) + MARGIN_M - fromZ;
  const darkness = new Float32Array(SIZE * SIZE);
  solids.forEach((solid, k) => {
    const points = clouds[k];
    const { indices } = solid.geometry;
    for (let t = 0; t < indices.length; t += 3)
      drawTriangle(darkness, points, indices[t] * 3, indices[t + 1] * 3, indices[t + 2] * 3, {
        baseM,
        fromX,
        fromZ,
        stepX: width / SIZE,
        stepZ: depth / SIZE,
      });
  });
  const blurX = Math.max(1, Math.round((0.075 * SIZE) / width));
  const blurZ = Math.max(1, Math.round((0.075 * SIZE) / depth));
  for (let pass = 0; pass < 3; pass++) {
    blur(darkness, 1, SIZE, blurX);
    blur(darkness, SIZE, 1, blurZ);
  }
  return { size: SIZE, fromXM: fromX, fromZM: fromZ, widthM: width, depthM: depth, darkness };
};

interface Grid {
  readonly baseM: number;
  readonly fromX: number;
  readonly fromZ: number;
  readonly stepX: number;
  readonly stepZ: number;
}

const drawTriangle = (out: Float32Array, p: Float64Array, a: number, b: number, c: number, grid: Grid): void => {
  const up = (p[a + 1] + p[b + 1] + p[c + 1]) / 3 - grid.baseM;
  if (up > REACH_M) return;
  const weight = Math.exp(-Math.max(0, up) / FADE_M);
  const ax = (p[a] - grid.fromX) / grid.stepX;
  const az = (p[a + 2] - grid.fromZ) / grid.stepZ;
  const bx = (p[b] - grid.fromX) / grid.stepX;
  const bz = (p[b + 2] - grid.fromZ) / grid.stepZ;
  const cx = (p[c] - grid.fromX) / grid.stepX;
  const cz = (p[c + 2] - grid.fromZ) / grid.stepZ;
  const area = (bx - ax) * (cz - az) - (bz - az) * (cx - ax);
  if (Math.abs(area) < 1e-6) return;
  const firstX = Math.max(0, Math.floor(Math.min(ax, bx, cx)));
  const lastX = Math.min(SIZE - 1, Math.ceil(Math.max(ax, bx, cx)));
  const firstZ = Math.max(0, Math.floor(Math.min(az, bz, cz)));
  const lastZ = Math.min(SIZE - 1, Math.ceil(Math.max(az, bz, cz)));
  for (let j = firstZ; j <= lastZ; j++)
    for (let i = firstX; i <= lastX; i++) {
      const x = i + 0.5;
      const z = j + 0.5;
      const u = ((bx - x) * (cz - z) - (bz - z) * (cx - x)) / area;
      const v = ((cx - x) * (az - z) - (cz - z) * (ax - x)) / area;
      if (u < 0 || v < 0 || u + v > 1) continue;
      const at = j * SIZE + i;
      out[at] = Math.max(out[at], weight);
    }
};

const line = new Float32Array(SIZE);

/** Running mean along one axis; outside the mask it is light. */
const blur = (values: Float32Array, step: number, stride: number, radius: number): void => {
  for (let k = 0; k < SIZE; k++) {
    const start = k * stride;
    let sum = 0;
    for (let i = 0; i < Math.min(radius, SIZE); i++) sum += values[start + i * step];
    for (let i = 0; i < SIZE; i++) {
      if (i + radius < SIZE) sum += values[start + (i + radius) * step];
      if (i - radius - 1 >= 0) sum -= values[start + (i - radius - 1) * step];
      line[i] = sum / (2 * radius + 1);
    }
    for (let i = 0; i < SIZE; i++) values[start + i * step] = line[i];
  }
};
