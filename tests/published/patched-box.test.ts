// Boxes with rectangular patches against spectral-element solutions made outside the program (tests/fixtures/bass/made: numpy
// and scipy, two discretisations compared; their own error is at most 5.3e-4 of the rms over the receivers, 0.006 dB off nulls).
// Standing: derived elsewhere, independent of src. The aim is the issue's: 95 % of points within 0.1 dB, all but notches
// within 0.3 dB; what is held here is what the engine reaches.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createPatchedBoxField } from '../../src/engines/bass/patches/patched-box-field.ts';
import type { Admittance, BoxSpec } from '../../src/engines/bass/room-field.ts';
import { asBox, decayErrors, loadModes } from './mode-files.ts';

interface Forced {
  accuracy: { max_diff_over_rms_pn: number };
  constants: { c_m_s: number };
  room: { dims_m: [number, number, number] };
  walls: { beta: Admittance }[];
  patches: { wall: number; from_m: [number, number]; to_m: [number, number]; beta: Admittance }[];
  sources: { position_m: number[] }[];
  receivers: { position_m: number[] }[];
  results: { f_hz: number; pn: [number, number][] }[];
}

const load = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../fixtures/bass/${name}.json`, import.meta.url), 'utf8'));

const specOf = ({ room, constants, walls, patches }: Omit<Forced, 'accuracy'>): BoxSpec => ({
  sizeM: room.dims_m,
  soundSpeed: constants.c_m_s,
  admittance: walls.map(({ beta }) => beta),
  patches: patches.map(({ wall, from_m, to_m, beta }) => ({ wall, fromM: from_m, toM: to_m, admittance: beta })),
});

/** Per frequency and receiver: error over the rms over the receivers, and in dB where the level is within 20 dB of it. */
const compare = (data: Omit<Forced, 'accuracy'>): { overRms: number[]; decibels: number[] } => {
  const h = createPatchedBoxField(specOf(data)).unitResponses(
    Float64Array.from(data.sources.flatMap(({ position_m }) => position_m)),
    Float64Array.from(data.receivers.flatMap(({ position_m }) => position_m)),
    Float64Array.from(data.results, ({ f_hz }) => f_hz),
  );
  const overRms: number[] = [];
  const decibels: number[] = [];
  for (const [f, { pn }] of data.results.entries()) {
    const rms = Math.sqrt(pn.reduce((sum, [re, im]) => sum + re * re + im * im, 0) / pn.length);
    for (const [r, [re, im]] of pn.entries()) {
      const i = r * data.results.length + f;
      overRms.push(Math.hypot(h.re[i] - re, h.im[i] - im) / rms);
      const size = Math.hypot(re, im);
      if (size > rms / 10) decibels.push(Math.abs(20 * Math.log10(Math.hypot(h.re[i], h.im[i]) / size)));
    }
  }
  return { overRms: overRms.sort((a, b) => a - b), decibels: decibels.sort((a, b) => a - b) };
};

describe.each(['P_box_four_patches', 'P_box_one_opening', 'P_box_heavy_walls'])('%s', (name) => {
  const data = load(name) as Forced;

  it('95 % of points within 0.02 dB, all off notches within 0.04 dB, all within 0.2 % of the rms', () => {
    const { overRms, decibels } = compare(data);
    expect(overRms.length).toBe(90);
    expect(decibels.length).toBeGreaterThanOrEqual(85);
    expect(decibels[Math.floor(0.95 * decibels.length)]).toBeLessThan(0.02);
    expect(decibels.at(-1)).toBeLessThan(0.04);
    // the reference's own error and the engine's
    expect(overRms.at(-1)).toBeLessThan(data.accuracy.max_diff_over_rms_pn + 1e-3);
  });

  it('and without its patches the same room is far off: the check can fail', () => {
    const { decibels } = compare({ ...data, patches: [] });
    expect(decibels[Math.floor(0.5 * decibels.length)]).toBeGreaterThan(1);
  });
});

// waves run along the panels, slower than in air: with functions enough for air alone 0.19 of the rms was missing at 200 Hz.
describe('P_box_stiff_panels', () => {
  const data = load('P_box_stiff_panels') as Forced;

  it('110 to 200 Hz: all points within 0.04 dB, and 0.1 % of the rms besides the reference’s own error', () => {
    const { overRms, decibels } = compare(data);
    expect(overRms.length).toBe(42);
    expect(decibels.at(-1)).toBeLessThan(0.04);
    expect(overRms.at(-1)).toBeLessThan(data.accuracy.max_diff_over_rms_pn + 1e-3);
  });
});

describe('P_boxes_random', () => {
  // drawn at random: a cube, walls 0.001 to 0.3 and reactive, patches to admittance 3. Rooms 0 and 6 showed what soft and stiff
  // patches and sources near them need, so they are no blind trial. The reference's own error is up to 4.5e-3 (the cube) and
  // stands beside each frequency.
  const { rooms, constants } = load('P_boxes_random') as {
    constants: { c_m_s: number };
    rooms: (Omit<Forced, 'results' | 'accuracy' | 'constants'> & {
      results: (Forced['results'][number] & { max_diff_over_rms_pn: number })[];
    })[];
  };

  it.each([
    [0, 2e-3],
    [1, 2e-3],
    [2, 2e-3],
    [3, 2e-3],
    [4, 2e-3],
    [5, 2e-3],
    // a stiff patch of 0.5 + 1.5 j, on which surface waves run, 0.27 m beside the source
    [6, 2.5e-2],
  ])('room %i: within its own error and %f of the rms', (index, most) => {
    const room = rooms[index];
    expect(room.results.length).toBe(5);
    for (const row of room.results) {
      const { overRms } = compare({ ...room, constants, results: [row] });
      expect(overRms.length).toBe(5);
      expect(overRms.at(-1)).toBeLessThan(row.max_diff_over_rms_pn + most);
    }
  });
});

describe('P_box_four_patches_decay', () => {
  const box = load('P_box_four_patches') as Forced;
  const decay = load('P_box_four_patches_decay') as {
    modes: { n: number[]; f_rigid_hz: number; k: [number, number]; rel_diff_k: number }[];
  };
  const modes = createPatchedBoxField(specOf(box)).modes(100);

  it('damped frequency within 0.02 %, decay within 0.3 %: coupled, not summed mode by mode', () => {
    // the orders in the file are those each search began from, not names of what it found
    expect(decay.modes.length).toBe(15);
    for (const { n, f_rigid_hz, rel_diff_k } of decay.modes) {
      expect(rel_diff_k).toBeLessThan(2e-5);
      const mode = modes.find(({ order }) => order.every((value, i) => value === n[i]));
      expect(mode).toBeDefined();
      expect(Math.abs((mode?.hz ?? 0) / f_rigid_hz - 1)).toBeLessThan(1e-6);
    }
    for (const [i, { hz, decay: off }] of decayErrors({ ...decay, constants: box.constants }, modes).entries()) {
      expect(hz / decay.modes[i].f_rigid_hz).toBeLessThan(2e-4);
      expect(off).toBeLessThan(3e-3);
    }
  });
});

// Nearly square and square plans with an open door and an absorber, whose patches tie modes of almost one frequency; all modes
// about four frequencies by Arnoldi's method on spectral elements (tests/fixtures/bass/made/patched_modes.py): no rigid
// mode is followed there.
describe.each(['M_box_open_door', 'M_square_box_open_door'])('%s', (name) => {
  const file = loadModes(name);
  const spec = asBox(file);
  const modes = createPatchedBoxField(spec).modes(150);

  it('every mode to 145 Hz, close pairs too: within 0.005 Hz and 0.2 % of its decay, half of them within 0.04 %', () => {
    const found = decayErrors(file, modes);
    expect(found.length).toBeGreaterThan(25);
    for (const { hz, decay } of found) {
      expect(hz).toBeLessThan(5e-3);
      expect(decay).toBeLessThan(2e-3);
    }
    expect(found.map(({ decay }) => decay).sort((a, b) => a - b)[found.length >> 1]).toBeLessThan(4e-4);
  });

  it('first order would be wrong by a third', () => {
    const slight = (admittance: Admittance): Admittance => [1e-3 * admittance[0], 1e-3 * admittance[1]];
    const light = createPatchedBoxField({
      ...spec,
      admittance: spec.admittance.map(slight),
      patches: spec.patches?.map((patch) => ({ ...patch, admittance: slight(patch.admittance) })),
    }).modes(150);
    const worst = decayErrors(
      file,
      light.map((mode) => ({ ...mode, decayS: mode.decayS / 1e3 })),
    ).reduce((most, { decay }) => Math.max(most, decay), 0);
    expect(worst).toBeGreaterThan(0.3);
  });
});
