// Damped modes of prisms with patches by Arnoldi's method on spectral elements, about three frequencies each
// (tests/fixtures/bass/made/patched_modes.py; its own error is in each file, at most 5e-5 of k). Standing: derived elsewhere,
// independent of src: no rigid mode is followed there, so that modes are compared as a set.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createPrismField } from '../../src/engines/bass/prism/prism-field.ts';
import type { RoomMode } from '../../src/engines/bass/room-field.ts';
import { asSpec, type PrismFile } from './prism-files.ts';

interface DecayFile extends Pick<PrismFile, 'constants' | 'room' | 'walls' | 'patches'> {
  modes: { k: [number, number] }[];
}
const load = (name: string): DecayFile =>
  JSON.parse(readFileSync(new URL(`../fixtures/bass/${name}.json`, import.meta.url), 'utf8')) as DecayFile;

const modesOf = (file: DecayFile, detail: 'first' | 'fine'): RoomMode[] =>
  createPrismField(asSpec({ ...file, sources: [], receivers: [], results: [] }, 1).spec, detail).modes(108);

/** Per mode of the file: how far the nearest of `modes` in the plane of k is off, Re in Hz and the decay relative. */
const errors = (file: DecayFile, modes: readonly RoomMode[]): { hz: number; decay: number }[] => {
  const c = file.constants.c_m_s;
  const left = [...modes];
  return file.modes.map(({ k: [re, im] }) => {
    const hz = (re * c) / (2 * Math.PI);
    const deltaHz = (im * c) / (2 * Math.PI);
    const gap = (mode: RoomMode): number =>
      Math.hypot(mode.dampedHz - hz, (3 * Math.LN10) / mode.decayS / (2 * Math.PI) - deltaHz);
    const nearest = left.reduce((best, mode) => (gap(mode) < gap(best) ? mode : best));
    // each mode answers for one of the file's
    left.splice(left.indexOf(nearest), 1);
    return {
      hz: Math.abs(nearest.dampedHz - hz),
      decay: Math.abs((nearest.decayS * 2 * Math.PI * deltaHz) / (3 * Math.LN10) - 1),
    };
  });
};

describe.each([
  ['M_L_open_door', 0.002],
  ['M_Z_panel', 0.002],
  ['M_T_absorber', 0.002],
  ['M_alcove_absorber', 0.002],
  // an opening and two absorbers, one of them over the bay's whole back: measured 0.65 % at worst, 0.22 % in the middle
  ['M_bay', 0.003],
  ['M_cut_corner', 0.002],
] as const)('%s', (name, half) => {
  it(`every mode within 0.1 Hz and 1 % of its decay, half of them within ${100 * half} %`, () => {
    const found = errors(load(name), modesOf(load(name), 'fine'));
    expect(found.length).toBeGreaterThan(12);
    // measured 0.08 Hz and 0.77 %: what the plan's functions leave beside an opening
    for (const { hz, decay } of found) {
      expect(hz).toBeLessThan(0.1);
      expect(decay).toBeLessThan(0.01);
    }
    const sorted = found.map(({ decay }) => decay).sort((a, b) => a - b);
    expect(sorted[sorted.length >> 1]).toBeLessThan(half);
  });
});

describe('patches spread over their walls, as a first picture takes them', () => {
  it('would be tens of per cent off: the coupling is what the comparison above sees', () => {
    const file = load('M_L_open_door');
    const worst = Math.max(...errors(file, modesOf(file, 'first')).map(({ decay }) => decay));
    expect(worst).toBeGreaterThan(0.2);
  });
});
