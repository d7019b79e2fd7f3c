import { createPatchedBoxField } from '../../src/engines/bass/patches/patched-box-field.ts';
import type { BoxSpec, WallPatch } from '../../src/engines/bass/room-field.ts';
import { denseResponses, denseRoom } from './baselines/dense-galerkin.ts';
import { FREQUENCIES_HZ, floorPlane, meanOverRms, type Scene } from './scene.ts';
import { type createLedger, interleave } from './timing.ts';

/** Rigid modes of the dense baseline reach this high; they leave 2 % where the engine leaves 0.1 %. */
const DENSE_HZ = 300;
/** The dense baseline is solved at these frequencies only; its time is multiplied. */
const SAMPLED = [0, 20, 40, 60];
const SLICE_HZ = 63;
const EAR_M = 1.2;
const weights = Float64Array.of(1, 0, 1, 0, 0.5, 0.5, 0, -1);

/** An absorber on a side wall, a door in the back wall, a panel on the ceiling. */
const threePatches = ([w, h, l]: readonly [number, number, number]): WallPatch[] => [
  { wall: 0, fromM: [0.2 * h, 0.3 * l], toM: [0.65 * h, 0.6 * l], admittance: [0.35, 0] },
  { wall: 5, fromM: [0.1 * w, 0], toM: [0.3 * w, 0.75 * h], admittance: [0.06, 0.05] },
  { wall: 3, fromM: [0.25 * w, 0.3 * l], toM: [0.7 * w, 0.7 * l], admittance: [0.25, 0.2] },
];

/** Boxes with patches against a dense Galerkin solution in rigid modes. */
export const benchPatches = (scene: Scene, ledger: ReturnType<typeof createLedger>): void => {
  const { sizeM, soundSpeed, admittance } = scene.spec;
  const spec: BoxSpec = { ...scene.spec, patches: threePatches(sizeM) };
  const dense = denseRoom(sizeM, soundSpeed, admittance, spec.patches ?? [], DENSE_HZ);
  const sampled = Float64Array.from(SAMPLED, (i) => FREQUENCIES_HZ[i]);
  const plain = { re: [] as number[], im: [] as number[] };
  for (const hz of sampled) {
    const { re, im } = denseResponses(dense, soundSpeed, hz, scene.sources, scene.rows);
    plain.re.push(...re);
    plain.im.push(...im);
  }
  const h = createPatchedBoxField(spec).unitResponses(scene.sources, scene.rows, sampled);
  const ours = { re: [] as number[], im: [] as number[] };
  for (let f = 0; f < sampled.length; f++)
    for (let i = f; i < h.re.length; i += sampled.length) {
      ours.re.push(h.re[i]);
      ours.im.push(h.im[i]);
    }
  ledger.bound(
    `three patches: mean difference from rigid modes to ${DENSE_HZ} Hz over the rms`,
    meanOverRms(ours, plain),
    0.03,
  );

  const warm = createPatchedBoxField(spec);
  warm.unitResponses(scene.sources, scene.rows, FREQUENCIES_HZ);
  const dragging = createPatchedBoxField(spec);
  dragging.unitResponses(scene.sources, scene.rows, FREQUENCIES_HZ);
  const moved = Float64Array.from(scene.rows);
  const [cold, oneDense, same, reseated, drag] = interleave(5, [
    {
      label: 'a new room',
      run: () => createPatchedBoxField(spec).unitResponses(scene.sources, scene.rows, FREQUENCIES_HZ),
    },
    {
      label: 'dense, one frequency',
      run: (round) => denseResponses(dense, soundSpeed, sampled[round % sampled.length], scene.sources, scene.rows),
    },
    { label: 'known', run: () => warm.unitResponses(scene.sources, scene.rows, FREQUENCIES_HZ) },
    {
      label: 'known, other seats',
      run: (round) => {
        for (let i = 2; i < moved.length; i += 3) moved[i] = scene.rows[i] + 0.001 * round;
        warm.unitResponses(scene.sources, moved, FREQUENCIES_HZ);
      },
    },
    {
      label: 'drag',
      run: (round) => dragging.unitResponses(Float64Array.of(0.3 + 0.02 * round, 0.2, 0.3), scene.rows, FREQUENCIES_HZ),
    },
  ]);
  ledger.ratio(
    'three patches: full response, 4 x 12 x 80, room new',
    cold,
    oneDense * FREQUENCIES_HZ.length,
    8,
    ` for dense Galerkin (${dense.orders.length} modes, extrapolated from one frequency)`,
  );
  ledger.ratio('three patches: drag of one subwoofer', drag, cold, 10, ' for a new room');
  ledger.time('three patches: full response, room known', same, '');
  ledger.time('three patches: full response, room known, every seat moved', reseated, '');

  const plane = floorPlane(scene, EAR_M, 128);
  const sources = Float64Array.from(scene.sources);
  const [slice, sweep] = interleave(21, [
    {
      label: 'slice while a subwoofer is dragged',
      run: (round) => {
        sources[0] = 0.3 + 0.01 * round;
        warm.slice(plane, sources, weights, SLICE_HZ);
      },
    },
    {
      label: 'slice at another frequency',
      run: (round) => warm.slice(plane, scene.sources, weights, FREQUENCIES_HZ[round % 80]),
    },
  ]);
  ledger.time('three patches: slice 128 x 128, a subwoofer dragged', slice, '');
  ledger.time('three patches: slice 128 x 128, another frequency', sweep, '');

  const forty: WallPatch[] = Array.from({ length: 40 }, (_, i) => {
    const [u, v] = [0.1 + 0.5 * (Math.floor(i / 6) % 4), 0.1 + 0.9 * Math.floor(i / 24)];
    return { wall: i % 6, fromM: [u, v], toM: [u + 0.4, v + 0.7], admittance: [0.1 + 0.02 * i, 0] };
  });
  const many = createPatchedBoxField({ ...scene.spec, patches: forty });
  const begun = performance.now();
  many.unitResponses(scene.sources, scene.rows, FREQUENCIES_HZ);
  ledger.time('forty patches: full response, room new', performance.now() - begun, '');
  const [manyDrag] = interleave(5, [
    {
      label: 'drag',
      run: (round) => many.unitResponses(Float64Array.of(0.3 + 0.02 * round, 0.2, 0.3), scene.rows, FREQUENCIES_HZ),
    },
  ]);
  ledger.time('forty patches: drag of one subwoofer', manyDrag, '');
};
