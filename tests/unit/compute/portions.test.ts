import { describe, expect, it } from 'vitest';
import { createDesk } from '../../../src/compute/desk.ts';
import { createRecent } from '../../../src/compute/recent.ts';
import type { Admittance, BoxSpec, PrismSpec } from '../../../src/engines/bass/room-field.ts';

const WALL: Admittance = [0.03, 0];
const plan = (widthM: number): PrismSpec => ({
  axis: 1,
  lengthM: 2.5,
  cornersM: [
    [0, 0],
    [widthM, 0],
    [widthM, 2],
    [2, 2],
    [2, 3.5],
    [0, 3.5],
  ],
  soundSpeed: 343.2,
  edges: [WALL, WALL, WALL, WALL, WALL, WALL],
  ends: [WALL, WALL],
});
const HZ = Float64Array.of(40, 80);
const PLACE = Float64Array.of(1, 0.3, 1);
const SEAT = Float64Array.of(1.5, 1.1, 2.5);

describe('a room prepared in portions', () => {
  it('takes many, then answers as a room made in one go', () => {
    const desk = createDesk();
    let portions = 1;
    while (!desk.run({ kind: 'warm', spec: plan(4), frequenciesHz: HZ })) portions += 1;
    expect(portions).toBeGreaterThan(5);
    expect(desk.run({ kind: 'warm', spec: plan(4), frequenciesHz: HZ })).toBe(true);
    const job = { kind: 'responses', spec: plan(4), sourcesM: PLACE, receiversM: SEAT, frequenciesHz: HZ } as const;
    expect(desk.run(job)).toEqual(createDesk().run(job));
  });

  it('may be left half done for another room and begun again', () => {
    const desk = createDesk();
    for (let portion = 0; portion < 3; portion += 1)
      expect(desk.run({ kind: 'warm', spec: plan(4.2), frequenciesHz: HZ })).toBe(false);
    const job = { kind: 'responses', spec: plan(4.4), sourcesM: PLACE, receiversM: SEAT, frequenciesHz: HZ } as const;
    expect(desk.run(job).re).toHaveLength(2);
    let portions = 0;
    while (!desk.run({ kind: 'warm', spec: plan(4.2), frequenciesHz: HZ })) portions += 1;
    expect(portions).toBeGreaterThan(2);
  });
});

describe('modes in portions', () => {
  const door = { wall: 0, fromM: [0.5, 0], toM: [1.4, 2], admittance: [1, 0] } as const;
  const box: BoxSpec = { sizeM: [4, 2.5, 3.5], soundSpeed: 343.2, admittance: Array(6).fill(WALL), patches: [door] };
  it.each([
    ['a box with a door', box],
    ['a prism with a door', { ...plan(4), patches: [door] }],
  ])('%s: many portions, then at hand, the same as in one go', (_, spec) => {
    const desk = createDesk();
    const portion = { kind: 'warm', spec, frequenciesHz: new Float64Array(0), modesToHz: 90, decays: true } as const;
    let portions = 1;
    while (!desk.run(portion)) portions += 1;
    expect(portions).toBeGreaterThan(8);
    expect(desk.engineCalls.modes).toBe(1);
    const job = { kind: 'modes', spec, maxHz: 90 } as const;
    const modes = desk.run(job);
    expect(desk.engineCalls.modes).toBe(1);
    expect(modes).toEqual(createDesk().run(job));
    expect(modes.length).toBeGreaterThan(5);
  });
});

describe('what is kept by weight', () => {
  it('drops the oldest until the rest weighs no more, never the newest', () => {
    const recent = createRecent<number>(5);
    for (const weight of [30, 40, 50]) recent.get(`${weight}`, () => weight);
    recent.get('30', () => 0);
    recent.trim((value) => value, 85);
    expect(['30', '40', '50'].filter((key) => recent.has(key))).toEqual(['30', '50']);
    recent.trim((value) => value, 10);
    expect(['30', '40', '50'].filter((key) => recent.has(key))).toEqual(['30']);
  });
});
