import { seededRandom } from '../../../math/random.ts';

/** Value noise on a torus: repeats after `period` cells both ways, so that a tile has no seam. */
export type TileNoise = (u: number, v: number) => number;

/** Noise in [0, 1] over u, v in [0, 1), `across` by `up` cells, from a seed. */
export const tileNoise = (seed: number, across: number, up: number = across): TileNoise => {
  const random = seededRandom(seed);
  const lattice = Float32Array.from({ length: across * up }, random);
  return (u, v) => {
    const x = (u - Math.floor(u)) * across;
    const y = (v - Math.floor(v)) * up;
    const i = Math.floor(x) % across;
    const j = Math.floor(y) % up;
    const i1 = (i + 1) % across;
    const j1 = (j + 1) % up;
    const fx = x - Math.floor(x);
    const fy = y - Math.floor(y);
    const sx = fx * fx * (3 - 2 * fx);
    const sy = fy * fy * (3 - 2 * fy);
    const low = lattice[j * across + i] * (1 - sx) + lattice[j * across + i1] * sx;
    const high = lattice[j1 * across + i] * (1 - sx) + lattice[j1 * across + i1] * sx;
    return low * (1 - sy) + high * sy;
  };
};

/** Several octaves of tile noise, halving in strength; in [0, 1] about 0.5. */
export const cloudNoise = (seed: number, across: number, up: number, octaves: number): TileNoise => {
  const layers = Array.from({ length: octaves }, (_, k) => tileNoise(seed + k * 101, across << k, up << k));
  return (u, v) => {
    let sum = 0;
    let weight = 0;
    for (let k = 0; k < octaves; k++) {
      const w = 1 / (1 << k);
      sum += layers[k](u, v) * w;
      weight += w;
    }
    return sum / weight;
  };
};

/** What a pattern writes at a texel: factors on the material's colour (1 leaves it) and how glossy it is there, 0 to 1. */
export interface Texel {
  red: number;
  green: number;
  blue: number;
  gloss: number;
}

export type Pattern = (u: number, v: number, out: Texel) => void;

export interface PatternImage {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array<ArrayBuffer>;
}

const byte = (value: number): number => Math.max(0, Math.min(255, Math.round(value)));

/** Factors are stored halved (128 = 1), so that a tile can lighten as well as darken. */
export const paintPattern = (width: number, height: number, pattern: Pattern): PatternImage => {
  const data = new Uint8Array(width * height * 4);
  const texel: Texel = { red: 1, green: 1, blue: 1, gloss: 1 };
  for (let j = 0, at = 0; j < height; j++)
    for (let i = 0; i < width; i++, at += 4) {
      texel.red = texel.green = texel.blue = texel.gloss = 1;
      pattern((i + 0.5) / width, (j + 0.5) / height, texel);
      data[at] = byte(texel.red * 128);
      data[at + 1] = byte(texel.green * 128);
      data[at + 2] = byte(texel.blue * 128);
      data[at + 3] = byte(texel.gloss * 255);
    }
  return { width, height, data };
};

export const grey = (out: Texel, factor: number): void => {
  out.red = out.green = out.blue = factor;
};
