import { curveFrequenciesHz } from '../../src/analysis/curves.ts';
import { decayGrid } from '../../src/analysis/decay.ts';
import { createDesk } from '../../src/compute/desk.ts';
import type { Admittance, Detail, PrismSpec, SlicePlane } from '../../src/engines/bass/room-field.ts';

/**
 * What a worker holds after a long session in an L-shaped room of the area in square metres given as argument (40 if none): prints
 * heap and typed arrays in MB, the largest seen and what is left at the end, garbage collected. Needs --expose-gc.
 */
const areaM2 = Number(process.argv[2] ?? 40);
const C = 343.2;
const HZ = Float64Array.from({ length: 80 }, (_, i) => 20 * 2 ** (i / 24));
const scale = Math.sqrt(areaM2 / 40);
const at = (x: number, z: number): [number, number] => [x * scale, z * scale];

const room = (share: number): PrismSpec => {
  const beta = (re: number): Admittance => [re * share, 0.01];
  return {
    axis: 1,
    lengthM: 2.6,
    cornersM: [at(0, 0), at(8, 0), at(8, 4), at(4, 4), at(4, 6), at(0, 6)],
    soundSpeed: C,
    edges: [0.03, 0.02, 0.05, 0.03, 0.02, 0.04].map(beta),
    ends: [beta(0.02), beta(0.05)],
    patches: [
      { wall: 0, fromM: [1, 0.4], toM: [3, 1.9], admittance: beta(0.35) },
      { wall: 1, fromM: [1, 0], toM: [1.9, 2.05], admittance: [1, 0] },
      { wall: 7, fromM: at(1, 1), toM: at(3, 3), admittance: beta(0.3) },
    ],
  };
};

const seatsM = Float64Array.from(
  [3, 3.8, 4.6].flatMap((z) => [0.8, 1.5, 2.2, 2.9].flatMap((x) => [x * scale, 1.1, z * scale])),
);
const fixedM = [0.3, 0.2, 0.3, 7.6 * scale, 0.2, 0.3, 0.3, 0.2, 5.6 * scale];
const subwoofersM = (step: number): Float64Array => Float64Array.from([...fixedM, 1 + 0.03 * step, 0.2, 0.4]);
const line = (lengthM: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => (lengthM * (i + 0.5)) / count);
const floor = (atM: number): SlicePlane => ({
  normal: 1,
  atM,
  uAxis: 0,
  vAxis: 2,
  uM: line(8 * scale, 70),
  vM: line(6 * scale, 100),
});

const desk = createDesk();
let mostMb = 0;
const heldMb = (): number => {
  globalThis.gc?.();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  const held = (heapUsed + arrayBuffers) / 1e6;
  mostMb = Math.max(mostMb, held);
  return held;
};

const ask = (spec: PrismSpec, detail: Detail, step: number): void => {
  const sourcesM = subwoofersM(step);
  desk.run({ kind: 'responses', spec, detail, sourcesM, receiversM: seatsM, frequenciesHz: HZ });
  desk.run({ kind: 'slices', spec, detail, sourcesM, plane: floor(1.1), frequencyHz: HZ[step % 80] });
};

/** Drags, sweeps, slices at other heights, the damping band, curves, modes and a decay: what a worker of either lane is asked. */
const session = (spec: PrismSpec): void => {
  for (let step = 0; step < 20; step++) ask(spec, 'first', step);
  heldMb();
  while (!desk.run({ kind: 'warm', spec, frequenciesHz: HZ })) heldMb();
  for (let step = 0; step < 20; step++) ask(spec, 'fine', step);
  heldMb();
  for (const hz of HZ) desk.run({ kind: 'slices', spec, sourcesM: subwoofersM(0), plane: floor(1.3), frequencyHz: hz });
  heldMb();
  const common = { kind: 'responses', sourcesM: subwoofersM(3), receiversM: seatsM } as const;
  for (const share of [1 / Math.sqrt(3), Math.sqrt(3)]) {
    desk.run({ ...common, spec: room(share), frequenciesHz: HZ });
    heldMb();
  }
  desk.run({ ...common, spec, frequenciesHz: curveFrequenciesHz() });
  heldMb();
  const modes = desk.run({ kind: 'modes', spec, maxHz: 250 });
  heldMb();
  desk.run({ kind: 'shapes', spec, maxHz: 250, pointsM: seatsM });
  desk.run({ ...common, spec, receiversM: seatsM.slice(0, 3), ...decayGrid(Math.min(1, modes[0].decayS)) });
  heldMb();
};

const before = heldMb();
session(room(1));
session(room(0.8));
console.log(JSON.stringify({ beforeMb: before, endMb: heldMb(), mostMb }));
