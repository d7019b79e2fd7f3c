// Modes of a box between walls that absorb a great deal, followed from rigid walls by Newton's method on the axes'
// equations (tests/fixtures/bass/made/heavy_box.py). Standing: derived, made outside the program, shares nothing with src.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../src/engines/bass/box-field.ts';
import { createPatchedBoxField } from '../../src/engines/bass/patches/patched-box-field.ts';
import { createPrismField } from '../../src/engines/bass/prism/prism-field.ts';
import type { Admittance, Axis, BoxSpec, PrismSpec, RoomMode } from '../../src/engines/bass/room-field.ts';

interface HeavyFile {
  constants: { c_m_s: number };
  size_m: [number, number, number];
  betas: number[];
  modes: { n: [number, number, number]; k: ([number, number] | null)[] }[];
}
const file = JSON.parse(
  readFileSync(new URL('../fixtures/bass/Q_heavy_box_modes.json', import.meta.url), 'utf8'),
) as HeavyFile;
const C = file.constants.c_m_s;
const SIZE = file.size_m;

const box = (beta: number): BoxSpec => ({
  sizeM: SIZE,
  soundSpeed: C,
  admittance: Array.from({ length: 6 }, (): Admittance => [beta, 0]),
});
const prism = (beta: number, axis: Axis): PrismSpec => {
  const [u, v] = [0, 1, 2].filter((a) => a !== axis);
  const wall: Admittance = [beta, 0];
  return {
    axis,
    lengthM: SIZE[axis],
    cornersM: [
      [0, 0],
      [SIZE[u], 0],
      [SIZE[u], SIZE[v]],
      [0, SIZE[v]],
    ],
    soundSpeed: C,
    edges: [wall, wall, wall, wall],
    ends: [wall, wall],
  };
};
/** The box with all of one wall stated as two patches on a rigid one. */
const patched = (beta: number): BoxSpec => ({
  ...box(beta),
  admittance: Array.from({ length: 6 }, (_, wall): Admittance => [wall === 4 ? 0.8 * beta : beta, 0]),
  patches: [
    { wall: 4, fromM: [0, 0], toM: [2, SIZE[1]], admittance: [beta, 0] },
    { wall: 4, fromM: [2, 0], toM: [SIZE[0], SIZE[1]], admittance: [beta, 0] },
  ],
});

const KINDS: readonly (readonly [string, number, (beta: number) => RoomMode[]])[] = [
  // relative bounds: a box is exact; meshes and their walls' functions leave 2e-4 at 0.3 and 1e-3 at 0.5; patches 0.3 %
  ['box', 1e-6, (beta) => createBoxField(box(beta)).modes(82)],
  ['prism along x', 2e-3, (beta) => createPrismField(prism(beta, 0), 'fine').modes(82)],
  ['upright prism', 2e-3, (beta) => createPrismField(prism(beta, 1), 'fine').modes(82)],
  ['prism along z', 2e-3, (beta) => createPrismField(prism(beta, 2), 'fine').modes(82)],
  ['box with patches', 1e-2, (beta) => createPatchedBoxField(patched(beta)).modes(82)],
];
const rigidHz = (n: readonly number[]): number => (C / 2) * Math.hypot(...n.map((order, a) => order / SIZE[a]));
/** delta in first order: (c / 2) sum eps 2 beta / L (Kuttruff, Room Acoustics, ch. 3; from memory). */
const estimateS = (n: readonly number[], beta: number): number =>
  (3 * Math.LN10) / n.reduce((sum, order, a) => sum + (C * (order === 0 ? 1 : 2) * beta) / SIZE[a], 0);

describe.each(KINDS)('%s', (_, bound, modesOf) => {
  it.each([0.3, 0.5])('beta %f: the modes that ring decay as they do, the others have the estimate', (beta) => {
    const modes = modesOf(beta);
    let ringing = 0;
    for (const { n, k } of file.modes) {
      const truth = k[file.betas.indexOf(beta)];
      // in ascending order the reference's ten modes are the ten lowest
      const mode =
        modes[
          file.modes
            .map(({ n: other }) => rigidHz(other))
            .sort((a, b) => a - b)
            .indexOf(rigidHz(n))
        ];
      expect(Math.abs(mode.hz / rigidHz(n) - 1)).toBeLessThan(3e-4);
      if (truth === null) {
        expect(Math.abs(mode.decayS / estimateS(n, beta) - 1), n.join()).toBeLessThan(bound);
        expect(mode.dampedHz).toBeCloseTo(mode.hz, 9);
        continue;
      }
      ringing++;
      expect(Math.abs((mode.decayS * C * truth[1]) / (3 * Math.LN10) - 1), n.join()).toBeLessThan(bound);
      expect(Math.abs(mode.dampedHz - (truth[0] * C) / (2 * Math.PI))).toBeLessThan(0.05);
    }
    expect(ringing).toBe(beta === 0.3 ? 10 : 7);
  });

  it('beta 1: nothing rings, and nothing takes long', () => {
    const modes = modesOf(1);
    const first = modes[0];
    expect(Math.abs(first.decayS / estimateS([0, 0, 1], 1) - 1)).toBeLessThan(bound);
    for (const { decayS, dampedHz } of modes) {
      expect(decayS).toBeGreaterThan(0.005);
      expect(decayS).toBeLessThan(0.04);
      expect(dampedHz).toBeGreaterThan(20);
    }
  });
});
