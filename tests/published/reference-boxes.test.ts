// The project's reference boxes A, B, R and G: made with general-purpose finite-element software and an exact separable
// solution outside this project (tests/fixtures/bass, copied whole). Standing: derived elsewhere, independent of src.
// `results` are exact to 1e-8 dB; the finite-element columns carry their own stated error.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../src/engines/bass/box-field.ts';

interface Row {
  f_hz: number;
  pn: [number, number][];
}
interface Forced {
  constants: { c_m_s: number };
  room: { dims_m: [number, number, number] };
  walls: { beta: [number, number] }[];
  sources: { position_m: number[] }[];
  receivers: { position_m: number[] }[];
  results: Row[];
  crosscheck_fem: Record<'coarse' | 'fine', { max_diff_over_rms_pn: number; results: Row[] }>;
}

const load = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../fixtures/bass/${name}.json`, import.meta.url), 'utf8'));

/** Largest |H - pn| over the rms of |pn| over the receivers at that frequency. */
const worstError = (room: Forced, rows: Row[]): number => {
  const field = createBoxField({
    sizeM: room.room.dims_m,
    soundSpeed: room.constants.c_m_s,
    admittance: room.walls.map((wall) => wall.beta),
  });
  const h = field.unitResponses(
    Float64Array.from(room.sources.flatMap((source) => source.position_m)),
    Float64Array.from(room.receivers.flatMap((receiver) => receiver.position_m)),
    Float64Array.from(rows, (row) => row.f_hz),
  );
  let worst = 0;
  for (const [f, { pn }] of rows.entries()) {
    const rms = Math.sqrt(pn.reduce((sum, [re, im]) => sum + re * re + im * im, 0) / pn.length);
    for (const [r, [re, im]] of pn.entries()) {
      const i = r * rows.length + f;
      worst = Math.max(worst, Math.hypot(h.re[i] - re, h.im[i] - im) / rms);
    }
  }
  return worst;
};

describe.each(['A_box_uniform', 'B_box_unequal_single', 'R_box_rigid'])('%s', (name) => {
  const room = load(name) as Forced;

  it('exact results: complex error at most 2e-4 of the rms over the receivers', () => {
    expect(room.results.length).toBeGreaterThanOrEqual(15);
    expect(worstError(room, room.results)).toBeLessThanOrEqual(2e-4);
  });

  it.each(['coarse', 'fine'] as const)('%s finite elements: within their own stated error', (mesh) => {
    const { results, max_diff_over_rms_pn } = room.crosscheck_fem[mesh];
    expect(results.length).toBeGreaterThanOrEqual(3);
    // their distance from the exact results, plus the engine's own 2e-4
    expect(worstError(room, results)).toBeLessThanOrEqual(max_diff_over_rms_pn + 2e-4);
  });
});

describe('G_box_decay', () => {
  const room = load('G_box_decay') as {
    room: { dims_m: [number, number, number] };
    walls: { beta: [number, number] }[];
    modes: {
      n: number[];
      f_rigid_hz: number;
      f_hz: number;
      T60_s: number;
      fem_f_hz: { fine: number };
      fem_rel_diff_f: number;
      fem_delta_per_s: { fine: number };
      fem_rel_diff_delta: number;
    }[];
  };
  const modes = createBoxField({
    sizeM: room.room.dims_m,
    soundSpeed: 343.2,
    admittance: room.walls.map((wall) => wall.beta),
  }).modes(120);

  it('the first twelve damped modes: frequency and decay to 1e-6', () => {
    expect(room.modes).toHaveLength(12);
    for (const [i, expected] of room.modes.entries()) {
      const mode = modes[i];
      expect(mode.order).toEqual(expected.n);
      expect(Math.abs(mode.hz / expected.f_rigid_hz - 1)).toBeLessThanOrEqual(1e-6);
      expect(Math.abs(mode.dampedHz / expected.f_hz - 1)).toBeLessThanOrEqual(1e-6);
      expect(Math.abs(mode.decayS / expected.T60_s - 1)).toBeLessThanOrEqual(1e-6);
    }
  });

  it('and the finite elements within their stated differences', () => {
    for (const [i, { fem_f_hz, fem_rel_diff_f, fem_delta_per_s, fem_rel_diff_delta }] of room.modes.entries()) {
      const delta = (3 * Math.LN10) / modes[i].decayS;
      // the columns are printed to 1e-6 Hz and 1e-7 1/s, the differences to two digits
      const rounding = 0.5e-6 / fem_f_hz.fine;
      expect(Math.abs(modes[i].dampedHz / fem_f_hz.fine - 1)).toBeLessThanOrEqual(fem_rel_diff_f * 1.05 + rounding);
      expect(Math.abs(delta / fem_delta_per_s.fine - 1)).toBeLessThanOrEqual(fem_rel_diff_delta * 1.05 + 1e-8);
    }
  });
});
