import { seededRandom } from '../../../math/random.ts';
import { cloudNoise, type Pattern, tileNoise } from './noise.ts';

interface Board {
  readonly tone: number;
  readonly warmth: number;
  readonly shift: number;
}

/**
 * Floor boards along v: `boards` across the tile, each cut into two lengths at its own place, grain drawn out along the
 * board, a dark joint between neighbours. Boards differ in tone as oak does.
 */
export const boardPattern = (seed: number, boards: number): Pattern => {
  const random = seededRandom(seed);
  const cuts = Array.from({ length: boards }, random);
  const tones: Board[] = Array.from({ length: boards * 2 }, () => ({
    tone: 0.84 + 0.3 * random(),
    warmth: (random() - 0.5) * 0.1,
    shift: random(),
  }));
  const fibres = tileNoise(seed + 1, 256, 10);
  const fine = tileNoise(seed + 2, 512, 24);
  const flame = cloudNoise(seed + 3, 16, 3, 3);
  return (u, v, out) => {
    const across = u * boards;
    const column = Math.min(boards - 1, Math.floor(across));
    const inBoard = across - column;
    const along = (v + cuts[column]) % 1;
    const half = along < 0.46 ? 0 : 1;
    const board = tones[column * 2 + half];
    const toEnd = Math.min(along, Math.abs(along - 0.46), 1 - along);
    const shifted = v + board.shift;
    const rings = Math.sin((flame(u + board.shift, shifted) * 9 + inBoard * 1.5) * Math.PI);
    let tone = board.tone * (0.86 + 0.16 * fibres(u + board.shift, shifted) + 0.1 * fine(u, shifted) + 0.06 * rings);
    const edge = Math.min(inBoard, 1 - inBoard);
    const joint = Math.min(1, edge / 0.022) * Math.min(1, toEnd / 0.0022);
    tone *= 0.42 + 0.58 * joint;
    out.red = tone * (1 + board.warmth);
    out.green = tone;
    out.blue = tone * (1 - board.warmth);
    out.gloss = (0.55 + 0.45 * fibres(u, shifted)) * joint * (0.75 + board.tone * 0.25);
  };
};

/** Close dark grain along v, as a veneered cabinet or a stained frame has. */
export const veneerPattern = (seed: number): Pattern => {
  const fibres = tileNoise(seed, 96, 5);
  const fine = tileNoise(seed + 1, 256, 16);
  const flame = cloudNoise(seed + 2, 6, 2, 3);
  return (u, v, out) => {
    const rings = Math.sin(flame(u, v) * 26);
    const tone = 0.78 + 0.2 * fibres(u, v) + 0.14 * fine(u, v) + 0.1 * rings;
    out.red = tone * 1.03;
    out.green = tone;
    out.blue = tone * 0.96;
    out.gloss = 0.6 + 0.4 * fine(u, v);
  };
};
