import { cloudNoise, grey, type Pattern, tileNoise } from './noise.ts';

/** Cut wool pile: tufts a few millimetres across, softly trodden over a hand's breadth. */
export const carpetPattern = (seed: number): Pattern => {
  const tufts = tileNoise(seed, 128);
  const pile = tileNoise(seed + 1, 250);
  const trodden = cloudNoise(seed + 2, 3, 3, 3);
  return (u, v, out) => {
    grey(out, 0.6 + 0.42 * tufts(u, v) + 0.26 * pile(u, v) + 0.2 * (trodden(u, v) - 0.5));
  };
};

/** Plain weave of uneven threads, `threads` both ways in a tile. */
export const weavePattern = (seed: number, threads: number, depth: number): Pattern => {
  const warp = tileNoise(seed, threads, 6);
  const weft = tileNoise(seed + 1, 6, threads);
  return (u, v, out) => {
    const a = u * threads;
    const b = v * threads;
    const over = (Math.floor(a) + Math.floor(b)) % 2 === 0;
    const across = Math.sin((a - Math.floor(a)) * Math.PI);
    const up = Math.sin((b - Math.floor(b)) * Math.PI);
    const thread = over ? across * (0.7 + 0.3 * up) : up * (0.7 + 0.3 * across);
    const uneven = over ? warp(u, v) : weft(u, v);
    grey(out, 1 - depth + depth * thread + 0.3 * depth * (uneven - 0.5) * 2);
  };
};

/** Velvet: almost no texture of its own, but a nap that has been stroked this way and that. */
export const velvetPattern = (seed: number): Pattern => {
  const stroked = cloudNoise(seed, 4, 3, 3);
  const nap = tileNoise(seed + 1, 128);
  return (u, v, out) => {
    grey(out, 0.8 + 0.34 * stroked(u, v) + 0.08 * (nap(u, v) - 0.5));
  };
};

/** Leather: pebbles between creases, by the distance to the nearest of jittered points. */
export const leatherPattern = (seed: number): Pattern => {
  const cells = 40;
  const jitterU = tileNoise(seed, cells);
  const jitterV = tileNoise(seed + 1, cells);
  const worn = cloudNoise(seed + 2, 3, 3, 3);
  return (u, v, out) => {
    const a = u * cells;
    const b = v * cells;
    let nearest = 9;
    let second = 9;
    for (let j = -1; j <= 1; j++)
      for (let i = -1; i <= 1; i++) {
        const ci = Math.floor(a) + i;
        const cj = Math.floor(b) + j;
        const x = ci + 0.15 + 0.7 * jitterU(ci / cells, cj / cells);
        const y = cj + 0.15 + 0.7 * jitterV(ci / cells, cj / cells);
        const d = Math.hypot(a - x, b - y);
        if (d < nearest) {
          second = nearest;
          nearest = d;
        } else if (d < second) second = d;
      }
    const crease = Math.min(1, (second - nearest) / 0.25);
    const tone = 0.8 + 0.16 * crease + 0.16 * (worn(u, v) - 0.5);
    grey(out, tone);
    out.gloss = 0.35 + 0.65 * crease;
  };
};
