// Rigid eigenvalues of an L-shaped plan (D) and of a rectangle with a cut corner (E), and the 25 lowest eigenfrequencies of the rooms
// 2.6 m high above them: general-purpose finite elements outside this project, 1e-5 Hz (tests/fixtures/bass, copied whole).
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createPlanBasis } from '../../src/engines/bass/plan/create-plan-basis.ts';
import { PLAN_DETAIL } from '../../src/engines/bass/plan/element-choice.ts';
import type { PlanBasis } from '../../src/engines/bass/plan/plan-basis.ts';

interface Reference {
  constants: { c_m_s: number };
  room: { polygon_m: [number, number][]; height_m: number };
  modes: { f_hz: number; m: number; q: number }[];
  lambda2d_per_m2: number[];
}

const load = (name: string): Reference =>
  JSON.parse(readFileSync(new URL(`../fixtures/bass/${name}.json`, import.meta.url), 'utf8')) as Reference;

const basisOf = ({ room, constants }: Reference, detail: 'first' | 'fine'): PlanBasis =>
  createPlanBasis(room.polygon_m, {
    maxHz: 300,
    soundSpeed: constants.c_m_s,
    wallFunctions: 0,
    ...PLAN_DETAIL[detail],
  });

/** Worst relative error of the frequencies of the plan's modes. */
const worst = (reference: Reference, basis: PlanBasis): number =>
  Math.max(
    ...reference.lambda2d_per_m2.slice(1).map((value, i) => Math.abs(Math.sqrt(basis.rigid[i + 1] / value) - 1)),
  );

describe.each(['D_lshape_eigen', 'E_cutcorner_eigen'])('%s', (name) => {
  const reference = load(name);
  const { c_m_s } = reference.constants;

  it('fine: the twenty plan modes (to about 145 Hz) within 1e-4, ten times closer than asked to 200 Hz', () => {
    expect(reference.lambda2d_per_m2).toHaveLength(20);
    expect(worst(reference, basisOf(reference, 'fine'))).toBeLessThanOrEqual(1e-4);
  });

  it('for a picture: within 1e-3', () => {
    expect(worst(reference, basisOf(reference, 'first'))).toBeLessThanOrEqual(1e-3);
  });

  it('the 25 lowest of the room: plan modes and half waves over the height', () => {
    const basis = basisOf(reference, 'fine');
    const found: number[] = [];
    for (const plan of basis.rigid) {
      for (let q = 0; q < 20; q++)
        found.push((c_m_s / (2 * Math.PI)) * Math.sqrt(plan + ((q * Math.PI) / reference.room.height_m) ** 2));
    }
    found.sort((a, b) => a - b);
    expect(reference.modes).toHaveLength(25);
    for (const [i, { f_hz }] of reference.modes.entries())
      expect(Math.abs(found[i + 1] / f_hz - 1)).toBeLessThanOrEqual(1e-4);
  });

  it('to 200 Hz: fine within 1e-3 of elements of order 7 half as long, made by the same code and held to the reference above', () => {
    const fine = basisOf(reference, 'fine').rigid;
    const exact = createPlanBasis(reference.room.polygon_m, {
      maxHz: 205,
      soundSpeed: c_m_s,
      wallFunctions: 0,
      order: 7,
      meshM: 1,
      cornerShare: 1e-3,
      slope: 0.7,
    }).rigid;
    for (const [i, value] of reference.lambda2d_per_m2.entries())
      expect(Math.abs(exact[i] - value)).toBeLessThanOrEqual(1e-6 * value + 1e-9);
    const to200 = exact.filter((value) => value > 0.01 && value <= ((2 * Math.PI * 200) / c_m_s) ** 2);
    expect(to200.length).toBeGreaterThanOrEqual(30);
    for (const [i, value] of to200.entries())
      expect(Math.abs(Math.sqrt(fine[i + 1] / value) - 1)).toBeLessThanOrEqual(1e-3);
  });
});
