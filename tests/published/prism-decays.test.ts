// Damped modes of prisms with patches by Arnoldi's method on spectral elements, about three or four frequencies each
// (tests/fixtures/bass/made/patched_modes.py; its own error is in each file, at most 1.3e-4 of k). Standing: derived elsewhere,
// independent of src: no rigid mode is followed there, so that modes are compared as a set.
import { describe, expect, it } from 'vitest';
import { createPrismField } from '../../src/engines/bass/prism/prism-field.ts';
import type { Axis, PrismSpec, RoomMode } from '../../src/engines/bass/room-field.ts';
import { asPrism } from './box-as-prism.ts';
import { asBox, decayErrors, loadModes, type ModeFile } from './mode-files.ts';
import { asSpec } from './prism-files.ts';

const upright = (file: ModeFile): PrismSpec => asSpec({ ...file, sources: [], receivers: [], results: [] }, 1).spec;

const expectWithin = (
  file: ModeFile,
  modes: readonly RoomMode[],
  most: { hz: number; decay: number; half: number },
) => {
  const found = decayErrors(file, modes);
  expect(found.length).toBeGreaterThan(12);
  for (const { hz, decay } of found) {
    expect(hz).toBeLessThan(most.hz);
    expect(decay).toBeLessThan(most.decay);
  }
  const sorted = found.map(({ decay }) => decay).sort((a, b) => a - b);
  expect(sorted[sorted.length >> 1]).toBeLessThan(most.half);
};

// among them openings of admittance 1, an absorber over the whole back of a bay, a patch in an inward corner
describe.each(['M_L_open_door', 'M_Z_panel', 'M_T_absorber', 'M_alcove_absorber', 'M_bay', 'M_cut_corner'])(
  '%s',
  (name) => {
    it('every mode to 100 Hz within 0.003 Hz and 0.15 % of its decay, half of them within 0.05 %', () => {
      const file = loadModes(name);
      expectWithin(file, createPrismField(upright(file), 'fine').modes(110), { hz: 3e-3, decay: 1.5e-3, half: 5e-4 });
    });
  },
);

// the same rooms as of boxes in patched-box.test.ts: along their height, and lying with the opening on a side and on an end
describe.each(['M_box_open_door', 'M_square_box_open_door'])('%s as a prism', (name) => {
  const file = loadModes(name);
  it.each<[string, PrismSpec]>([
    ['upright', upright(file)],
    ...([0, 1] as const).map((axis: Axis): [string, PrismSpec] => [`along ${axis}`, asPrism(asBox(file), axis)]),
  ])(
    '%s: every mode to 145 Hz, close pairs too, within 0.01 Hz and 0.3 % of its decay, half of them within 0.05 %',
    (_, spec) => {
      expectWithin(file, createPrismField(spec, 'fine').modes(150), { hz: 0.01, decay: 3e-3, half: 5e-4 });
    },
  );
});

describe('patches spread over their walls, as a first picture takes them', () => {
  it('would be tens of per cent off: the coupling is what the comparison above sees', () => {
    const file = loadModes('M_L_open_door');
    const first = createPrismField(upright(file), 'first').modes(110);
    const worst = Math.max(...decayErrors(file, first).map(({ decay }) => decay));
    expect(worst).toBeGreaterThan(0.2);
  });
});
