import { createBoxField } from '../../src/engines/bass/box-field.ts';
import { createPlacementSearch } from '../../src/engines/bass/placement-search.ts';
import { plainFourSearch } from './baselines/placement.ts';
import type { Scene } from './scene.ts';
import { type createLedger, interleave } from './timing.ts';

const PLACES = 40;
const OFF_WALL_M = 0.3;

/** Forty places along the walls of a box, evenly spaced. */
const alongWalls = ([w, , l]: readonly [number, number, number]): Float64Array => {
  const [across, along] = [w - 2 * OFF_WALL_M, l - 2 * OFF_WALL_M];
  const step = (2 * (across + along)) / PLACES;
  return Float64Array.from(
    Array.from({ length: PLACES }, (_, i) => {
      const at = i * step;
      if (at < across) return [OFF_WALL_M + at, 0.2, OFF_WALL_M];
      if (at < across + along) return [w - OFF_WALL_M, 0.2, OFF_WALL_M + at - across];
      if (at < 2 * across + along) return [w - OFF_WALL_M - (at - across - along), 0.2, l - OFF_WALL_M];
      return [OFF_WALL_M, 0.2, l - OFF_WALL_M - (at - 2 * across - along)];
    }).flat(),
  );
};

/** Four of forty places at twelve seats: every choice, against incremental plain code in the same minutes. */
export const benchPlacement = (scene: Scene, ledger: ReturnType<typeof createLedger>): void => {
  for (const [count, frequencies] of [
    [49, Float64Array.from({ length: 49 }, (_, i) => 20 * 2 ** (i / 24))],
    [63, Float64Array.from({ length: 63 }, (_, i) => 20 * 2 ** (i / 24))],
  ] as const) {
    const candidates = createBoxField(scene.spec).unitResponses(alongWalls(scene.spec.sizeM), scene.rows, frequencies);
    const seats = scene.rows.length / 3;
    let plain: Float64Array = new Float64Array(0);
    let ours: Float32Array = new Float32Array(0);
    const [fast, slow] = interleave(
      5,
      [
        {
          label: 'compiled',
          run: () => {
            const search = createPlacementSearch({ candidates, base: null, choose: 4 });
            while (!search.step(5000));
            ours = search.spreadDb;
          },
        },
        {
          label: 'plain',
          run: () => {
            plain = plainFourSearch(candidates.re, candidates.im, PLACES, seats, count);
          },
        },
      ],
      2,
    );
    const worst = plain.reduce((most, value, i) => Math.max(most, Math.abs(value - ours[i])), 0);
    ledger.bound(`four of ${PLACES} places, ${count} frequencies: worst difference in dB`, worst, 3e-5);
    ledger.ratio(
      `${plain.length} arrangements, ${seats} seats, ${count} frequencies`,
      fast,
      slow,
      15,
      ' for incremental plain code',
    );
  }
};
