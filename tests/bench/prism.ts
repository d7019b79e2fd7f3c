import { createPlanBasis } from '../../src/engines/bass/plan/create-plan-basis.ts';
import { createPrismField } from '../../src/engines/bass/prism/prism-field.ts';
import type { PrismSpec, SlicePlane } from '../../src/engines/bass/room-field.ts';
import { type LiteralPoint, type LiteralPrism, literalResponses } from './baselines/prism-literal.ts';
import { FREQUENCIES_HZ, meanOverRms } from './scene.ts';
import { type createLedger, interleave } from './timing.ts';

/** 8 x 6 m without 4 x 2 m, 2.6 m high, four subwoofers, two rows of six seats. */
const BETAS = [0.05, 0.08, 0.03, 0.05, 0.02, 0.1];
const ENDS = [0.03, 0.05] as const;
const spec = (widthM: number): PrismSpec => ({
  axis: 1,
  lengthM: 2.6,
  cornersM: [
    [0, 0],
    [widthM, 0],
    [widthM, 4],
    [4, 4],
    [4, 6],
    [0, 6],
  ],
  soundSpeed: 343.2,
  edges: BETAS.map((beta) => [beta, 0] as const),
  ends: [
    [ENDS[0], 0],
    [ENDS[1], 0],
  ],
});
const SOURCES = Float64Array.of(0.3, 0.2, 0.3, 7.7, 0.2, 0.3, 0.3, 0.2, 5.7, 7.7, 0.2, 3.7);
const SEATS = Float64Array.from(
  [2.4, 3.4].flatMap((z) => Array.from({ length: 6 }, (_, i) => [1 + 0.9 * i, 1.15, z])).flat(),
);
const WEIGHTS = Float64Array.of(1, 0, 1, 0, 0.5, 0.5, 0, -1);
const planeAt = (atM: number): SlicePlane => ({
  normal: 1,
  atM,
  uAxis: 0,
  vAxis: 2,
  uM: Float64Array.from({ length: 140 }, (_, i) => (8 * (i + 0.5)) / 140),
  vM: Float64Array.from({ length: 100 }, (_, i) => (6 * (i + 0.5)) / 100),
});
/** The literal evaluation is timed at these frequencies only, and its time multiplied. */
const SAMPLED = [4, 28, 52];
/** As many functions as the engine takes for this plan, and as many orders. */
const LITERAL = { maxHz: 300, wallFunctions: 8, orders: 5 };

const literalRoom = (): { prism: LiteralPrism; sources: LiteralPoint[]; seats: LiteralPoint[] } => {
  const { cornersM, soundSpeed, lengthM } = spec(8);
  const basis = createPlanBasis(cornersM, { ...LITERAL, soundSpeed });
  const walls = new Float64Array(basis.size * basis.size);
  for (const [edge, beta] of BETAS.entries())
    basis.edgeMatrix(edge).forEach((value, i) => {
      walls[i] += beta * value;
    });
  const points = (triples: Float64Array): LiteralPoint[] =>
    Array.from({ length: triples.length / 3 }, (_, p) => ({
      z: triples[3 * p + 1],
      values: basis.valuesAt(Float64Array.of(triples[3 * p], triples[3 * p + 2])),
    }));
  return {
    prism: { lengthM, soundSpeed, lambda: basis.lambda, walls, ends: ENDS, orders: LITERAL.orders },
    sources: points(SOURCES),
    seats: points(SEATS),
  };
};

/** The L of 40 m2: from nothing, warm, dragged, and slices, against the literal evaluation. */
export const benchPrism = (ledger: ReturnType<typeof createLedger>): void => {
  let widthM = 8;
  const timed = (run: () => void): number => {
    const start = performance.now();
    run();
    return performance.now() - start;
  };
  for (const detail of ['first', 'fine'] as const) {
    const times = [0, 1, 2].map(() => {
      // another plan each time: bases are kept
      widthM += 0.001;
      return timed(() =>
        createPrismField(spec(widthM), detail).unitResponses(SOURCES.slice(0, 3), SEATS, FREQUENCIES_HZ),
      );
    });
    ledger.time(`${detail}: a new L with its first subwoofer's 12 x 80 responses`, times.sort((a, b) => a - b)[1], '');
  }
  const field = createPrismField(spec(8), 'fine');
  const literal = literalRoom();
  const sampled = Float64Array.from(SAMPLED, (i) => FREQUENCIES_HZ[i]);
  const plain = { re: [] as number[], im: [] as number[] };
  const ours = { re: [] as number[], im: [] as number[] };
  const h = field.unitResponses(SOURCES, SEATS, sampled);
  sampled.forEach((hz, f) => {
    const { re, im } = literalResponses(literal.prism, hz, literal.sources, literal.seats);
    plain.re.push(...re);
    plain.im.push(...im);
    for (let i = f; i < h.re.length; i += sampled.length) {
      ours.re.push(h.re[i]);
      ours.im.push(h.im[i]);
    }
  });
  ledger.bound('the L: mean difference from the literal sum over the rms', meanOverRms(ours, plain), 5e-3);

  // each keeps one grid
  const [reseating, over, across] = [0, 1, 2].map(() => createPrismField(spec(8), 'fine'));
  const seats = Float64Array.from(SEATS);
  field.unitResponses(SOURCES, SEATS, FREQUENCIES_HZ);
  const plane = planeAt(1.2);
  const low = planeAt(0.2);
  const dragged = Float64Array.from(SOURCES);
  const [reseated, oneLiteral, drag, slice, slicing, through] = interleave(3, [
    {
      label: 'room known, every seat moved, 4 x 12 x 80',
      run: (round) => {
        for (let i = 2; i < seats.length; i += 3) seats[i] = SEATS[i] + 0.001 * round;
        reseating.unitResponses(SOURCES, seats, FREQUENCIES_HZ);
      },
    },
    {
      label: 'literal, one frequency',
      run: (round) => literalResponses(literal.prism, sampled[round % 3], literal.sources, literal.seats),
    },
    {
      label: 'drag',
      run: (round) => field.unitResponses(Float64Array.of(0.3 + 0.02 * round, 0.2, 0.31), SEATS, FREQUENCIES_HZ),
    },
    { label: 'slice', run: () => over.slice(plane, SOURCES, WEIGHTS, 63) },
    {
      label: 'slice, one dragged',
      run: (round) => {
        dragged[0] = 0.3 + 0.01 * round;
        over.slice(plane, dragged, WEIGHTS, 63);
      },
    },
    { label: 'slice through sources', run: () => across.slice(low, SOURCES, WEIGHTS, 63) },
  ]);
  const wholeLiteral = oneLiteral * FREQUENCIES_HZ.length;
  ledger.ratio(
    'the L: full response, 4 x 12 x 80, every seat moved',
    reseated,
    wholeLiteral,
    5,
    ' for the literal sum (extrapolated)',
  );
  ledger.ratio('the L: drag of one subwoofer', drag, reseated, 20, ' for a full response in the same known room');
  ledger.time('the L: drag of one subwoofer (aim 30 ms)', drag, '');
  ledger.time('the L: slice 140 x 100, nothing moved (aim 5 ms)', slice, '');
  ledger.time('the L: slice 140 x 100, one subwoofer dragged', slicing, '');
  ledger.time('the L: slice through four subwoofers, nothing moved', through, '');
};
