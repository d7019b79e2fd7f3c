import { createBoxField } from '../../src/engines/bass/box-field.ts';
import { perPairResponses } from './baselines/per-pair.ts';
import { type PlainRoom, plainRoom } from './baselines/plain-axis.ts';
import { factoredSlice, sourceShapes, tripleSumAt } from './baselines/slices.ts';
import { benchMemory } from './memory.ts';
import { benchPatches } from './patches.ts';
import { benchPlacement } from './placement.ts';
import { benchPlan } from './plan.ts';
import { benchPrism } from './prism.ts';
import { CUT_HZ, EPSILON, FREQUENCIES_HZ, floorPlane, meanOverRms, SCENES, type Scene, worstOverRms } from './scene.ts';
import { benchSymmetric } from './symmetric.ts';
import { createLedger, interleave } from './timing.ts';

/**
 * The bass engine against plain baselines, which are also its oracles: same walls, same truncation, code that shares
 * nothing with src. Runs are interleaved, medians and their ratios printed; exits with 1 when an aim is missed.
 */
const ledger = createLedger();
const SLICE_HZ = 63;
const POINTS = 128;
/** Height of the slice: 1 m above the subwoofers. */
const EAR_M = 1.2;
/** The per-pixel triple sum is timed on every 256th pixel only and its time multiplied. */
const PIXEL_STEP = 256;
const TRIPLE_HZ = 400;
const weights = Float64Array.of(1, 0, 1, 0, 0.5, 0.5, 0, -1);

interface Field {
  re: Float64Array;
  im: Float64Array;
}

const benchResponses = (scene: Scene): void => {
  for (const [name, seats, least] of [
    ['seats in rows', scene.rows, 5],
    ['seats scattered', scene.scattered, 3],
  ] as const) {
    let plain: Field = { re: new Float64Array(0), im: new Float64Array(0) };
    let ours = plain;
    const warm = createBoxField(scene.spec);
    warm.unitResponses(scene.sources, seats, FREQUENCIES_HZ);
    const moved = Float64Array.from(seats);
    const dragging = createBoxField(scene.spec);
    const [full, literal, reseated, drag] = interleave(61, [
      {
        label: 'a new room',
        run: () => {
          ours = createBoxField(scene.spec).unitResponses(scene.sources, seats, FREQUENCIES_HZ);
        },
      },
      {
        label: 'per pair',
        run: () => {
          plain = perPairResponses(scene.spec, scene.sources, seats, FREQUENCIES_HZ, EPSILON, CUT_HZ);
        },
      },
      {
        label: 'same room, other seats',
        run: (round) => {
          for (let i = 2; i < moved.length; i += 3) moved[i] = seats[i] + 0.001 * round;
          warm.unitResponses(scene.sources, moved, FREQUENCIES_HZ);
        },
      },
      {
        label: 'drag',
        run: (round) => {
          const dragged = Float64Array.of(0.3 + 0.02 * round, 0.2, 0.3);
          dragging.unitResponses(dragged, seats, FREQUENCIES_HZ);
        },
      },
    ]);
    ledger.bound(`${name}: worst difference from the per-pair sum over the rms`, worstOverRms(ours, plain), 1e-6);
    ledger.ratio(
      `${name}: full response, 4 x 12 x 80, room new`,
      full,
      literal,
      least,
      ' for the literal per-pair sum',
    );
    ledger.time(`${name}: full response, room known, every seat moved`, reseated, '');
    ledger.ratio(`${name}: drag of one subwoofer`, drag, reseated, 3, ' for a full response in the same known room');
  }
};

const benchSlices = (scene: Scene): void => {
  const { sizeM, soundSpeed, admittance } = scene.spec;
  const plane = floorPlane(scene, EAR_M, POINTS);
  const field = createBoxField(scene.spec);
  const rooms: PlainRoom[] = [];
  for (const hz of FREQUENCIES_HZ) {
    rooms.push(plainRoom(sizeM, soundSpeed, admittance, hz, CUT_HZ, rooms.at(-1) ?? null));
  }
  const room = plainRoom(sizeM, soundSpeed, admittance, SLICE_HZ, CUT_HZ, null);
  field.warmUp(FREQUENCIES_HZ);

  const pixels = Array.from(
    { length: (POINTS * POINTS) / PIXEL_STEP },
    (_, i) => (i * 127 * PIXEL_STEP + 37 * i) % (POINTS * POINTS),
  );
  const sampled = { re: new Float64Array(pixels.length), im: new Float64Array(pixels.length) };
  const sources = Float64Array.from(scene.sources);
  let ours: Field = field.slice(plane, sources, weights, SLICE_HZ);
  let plain = ours;
  const [slice, factored] = interleave(21, [
    {
      label: 'slice while a subwoofer is dragged',
      run: (round) => {
        sources[0] = 0.3 + 0.01 * round;
        ours = field.slice(plane, sources, weights, SLICE_HZ);
      },
    },
    {
      label: 'factored',
      run: () => {
        plain = factoredSlice(room, sources, weights, EAR_M, plane.uM, plane.vM, EPSILON, CUT_HZ);
      },
    },
  ]);
  const shapes = sourceShapes(room, sources, weights);
  // in the same minute, the engine's slice in between
  const [again, sample] = interleave(3, [
    {
      label: 'slice',
      run: () => {
        ours = field.slice(plane, sources, weights, SLICE_HZ);
      },
    },
    {
      label: 'per pixel',
      run: () => {
        for (const [i, pixel] of pixels.entries()) {
          const at = [plane.uM[pixel % POINTS], EAR_M, plane.vM[Math.floor(pixel / POINTS)]] as const;
          [sampled.re[i], sampled.im[i]] = tripleSumAt(room, shapes, at, TRIPLE_HZ);
        }
      },
    },
  ]);
  const triple = sample * PIXEL_STEP;
  ledger.bound('slice: worst difference from factored code over the rms', worstOverRms(ours, plain), 1e-6);
  const ourPixels = { re: pixels.map((p) => ours.re[p]), im: pixels.map((p) => ours.im[p]) };
  ledger.bound(
    'slice: mean difference from the triple sum to 400 Hz over the rms',
    meanOverRms(ourPixels, sampled),
    0.03,
  );
  ledger.ratio(
    'slice 128 x 128, 4 subwoofers',
    Math.max(slice, again),
    triple,
    1000,
    ` for the per-pixel triple sum (extrapolated from 1 pixel in ${PIXEL_STEP})`,
  );
  ledger.ratio('slice 128 x 128, 4 subwoofers', slice, factored, 1.4, ' for factored plain code');

  const [sweep, factoredSweep] = interleave(5, [
    {
      label: 'sweep',
      run: () => {
        for (const hz of FREQUENCIES_HZ) field.slice(plane, sources, weights, hz);
      },
    },
    {
      label: 'factored sweep',
      run: () => {
        for (const each of rooms) factoredSlice(each, sources, weights, EAR_M, plane.uM, plane.vM, EPSILON, CUT_HZ);
      },
    },
  ]);
  ledger.ratio('sweep of 80 slices', sweep, factoredSweep, 1, ' for factored plain code');

  const low = floorPlane(scene, 0.2, POINTS);
  const [through, still] = interleave(9, [
    {
      label: 'through the sources, one dragged',
      run: (round) => {
        sources[0] = 0.3 + 0.01 * round;
        field.slice(low, sources, weights, SLICE_HZ);
      },
    },
    {
      label: 'through the sources, nothing moved',
      run: (round) => field.slice(low, sources, weights, FREQUENCIES_HZ[round]),
    },
  ]);
  ledger.time('slice through four subwoofers, one of them dragged', through, '');
  ledger.time('slice through four subwoofers, another frequency', still, '');
};

for (const scene of SCENES) {
  console.log(`\n${scene.title}`);
  benchResponses(scene);
  benchSlices(scene);
  benchPlacement(scene, ledger);
  benchPatches(scene, ledger);
}
console.log('\nPlans of any shape');
benchPlan(ledger);
benchSymmetric(ledger);
benchPrism(ledger);
benchMemory(ledger);
const missed = ledger.outcomes.filter(({ met }) => !met);
console.log(`\n${ledger.outcomes.length - missed.length} aims met, ${missed.length} missed`);
process.exit(missed.length > 0 ? 1 : 0);
