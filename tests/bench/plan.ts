import { createPlanBasis } from '../../src/engines/bass/plan/create-plan-basis.ts';
import { PLAN_DETAIL } from '../../src/engines/bass/plan/element-choice.ts';
import type { PlanBasis } from '../../src/engines/bass/plan/plan-basis.ts';
import { plainPlanValues } from './baselines/plain-plan.ts';
import type { createLedger } from './timing.ts';

/** 8 x 6 m without 4 x 2 m. */
const CORNERS: readonly [number, number][] = [
  [0, 0],
  [8, 0],
  [8, 6],
  [4, 6],
  [4, 4],
  [0, 4],
];
const SOUND_SPEED = 343.2;
const TOP_HZ = 300;
/** What a first picture is made of. */
const FIRST_HZ = 180;
const SIDE_M = 0.4;
const STEPS = 260;
const SUBWOOFERS = Float64Array.of(0.3, 0.3, 7.7, 0.3, 0.3, 3.7, 7.7, 5.7);
const ROUNDS = 3;

const make = (detail: 'first' | 'fine'): PlanBasis =>
  createPlanBasis(CORNERS, {
    maxHz: detail === 'first' ? FIRST_HZ : TOP_HZ,
    soundSpeed: SOUND_SPEED,
    wallFunctions: detail === 'first' ? 2 : 5,
    ...PLAN_DETAIL[detail],
  });

/** Worst relative difference of frequencies to `hz` between rigid modes and values found elsewhere. */
const worstTo = (hz: number, found: ArrayLike<number>, other: ArrayLike<number>): number => {
  const top = ((2 * Math.PI * hz) / SOUND_SPEED) ** 2;
  let worst = 0;
  for (let i = 1; i < other.length && other[i] <= top; i++)
    worst = Math.max(worst, Math.abs(Math.sqrt(found[i] / other[i]) - 1));
  return worst;
};

/**
 * Modes of an L of 40 m2, to 180 Hz first and 300 Hz fine, and functions for its walls, against plain quadratic elements on an even
 * grid without functions or eigenvectors. The first call of each is timed apart: a room is worked out once.
 */
export const benchPlan = (ledger: ReturnType<typeof createLedger>): void => {
  const timed = (run: () => void): number => {
    const start = performance.now();
    run();
    return performance.now() - start;
  };
  let [first, fine, plain]: [PlanBasis | null, PlanBasis | null, number[]] = [null, null, []];
  const cold = [timed(() => (first = make('first'))), timed(() => (fine = make('fine')))];
  ledger.time('plan of 40 m2: first usable basis, never run before', cold[0], ' (aim 300 ms)');
  ledger.time('plan of 40 m2: refined basis, never run before', cold[1], ' (aim 1000 ms)');
  const times: number[][] = [[], [], [], []];
  for (let round = 0; round < ROUNDS; round++) {
    times[0].push(timed(() => (first = make('first'))));
    times[1].push(timed(() => (fine = make('fine'))));
    times[2].push(
      timed(() => {
        plain = plainPlanValues([8, 6, 4, 2], SIDE_M, ((2 * Math.PI * TOP_HZ) / SOUND_SPEED) ** 2, STEPS);
      }),
    );
    times[3].push(timed(() => fine?.withPoints(SUBWOOFERS)));
  }
  const [firstMs, fineMs, plainMs, pointsMs] = times.map((list) => list.sort((a, b) => a - b)[ROUNDS >> 1]);
  if (first === null || fine === null) return;
  const rigid = [(first as PlanBasis).rigid, (fine as PlanBasis).rigid];
  ledger.bound('plan of 40 m2: first from fine, frequencies to 120 Hz', worstTo(120, rigid[0], rigid[1]), 1e-3);
  // quadratic elements 0.4 m long: (k h)^4 at 200 Hz and h^(4/3) at the re-entrant corner
  ledger.bound('plan of 40 m2: plain grid from fine, frequencies to 200 Hz', worstTo(200, plain, rigid[1]), 8e-3);
  ledger.ratio('plan of 40 m2: first basis', firstMs, plainMs, 10, ' for plain quadratic elements');
  ledger.ratio('plan of 40 m2: refined basis', fineMs, plainMs, 1.5, ' for plain quadratic elements');
  ledger.time('plan of 40 m2: four subwoofers more', pointsMs, '');
  ledger.time('plan of 40 m2: memory of the refined basis', (fine as PlanBasis).bytes / 1e6, ' (MB, not ms)');
};
