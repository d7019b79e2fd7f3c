// Random-incidence absorption, 125 250 500 1k 2k 4k, typed from the tables themselves (all read): "27.1" a handbook's table
// 27.1, "RT" an acoustics reference table, "AE" an audio engineering handbook ch. 29, "Ev" Everest p. 188.
import { expect, it } from 'vitest';
import { finishAbsorption, upholsteredSeats } from '../../src/engines/acoustics/materials.ts';

it.each([
  ['brick', '.03 .03 .03 .04 .05 .07', '27.1, RT'],
  ['brick-painted', '.01 .01 .02 .02 .02 .03', '27.1, RT'],
  ['carpet-on-concrete', '.02 .06 .14 .37 .60 .65', '27.1, RT, AE'],
  ['carpet-on-felt', '.08 .24 .57 .69 .71 .73', '27.1, RT'],
  ['carpet-latex-on-felt', '.08 .27 .39 .34 .48 .63', '27.1'],
  ['carpet-thin', '.01 .05 .10 .20 .45 .65', 'AE'],
  ['concrete-block', '.36 .44 .31 .29 .39 .25', '27.1, RT'],
  ['concrete-block-painted', '.10 .05 .06 .07 .09 .08', '27.1, RT'],
  ['curtain-light', '.03 .04 .11 .17 .24 .35', '27.1, RT'],
  ['curtain-medium-draped', '.07 .31 .49 .75 .70 .60', '27.1, RT'],
  ['curtain-heavy-draped', '.14 .35 .55 .72 .70 .65', '27.1, RT'],
  ['concrete', '.01 .01 .015 .02 .02 .02', 'Ev'],
  ['concrete', '.01 .01 .02 .02 .02 .02', '27.1'],
  ['linoleum-on-concrete', '.02 .03 .03 .03 .03 .02', 'RT'],
  ['wood-floor-on-joists', '.15 .11 .10 .07 .06 .07', '27.1, RT'],
  ['parquet-on-concrete', '.04 .04 .07 .06 .06 .07', '27.1, RT'],
  ['glass-large-pane', '.18 .06 .04 .03 .02 .02', '27.1, RT'],
  ['glass-window', '.35 .25 .18 .12 .07 .04', '27.1, RT'],
  ['plasterboard-on-studs', '.29 .10 .05 .04 .07 .09', 'Ev'],
  ['plasterboard-on-studs', '.10 .08 .05 .03 .03 .03', '27.1, which contradicts it'],
  ['plasterboard-deep-air', '.20 .15 .10 .05 .05 .05', 'AE'],
  ['plaster-on-brick', '.013 .015 .02 .03 .04 .05', '27.1'],
  ['acoustic-tile', '.09 .28 .78 .84 .73 .64', 'Ev'],
  ['fibre-panel-50', '.22 .82 .99 .99 .99 .99', 'RT'],
  ['fibre-panel-25', '.10 .30 .55 .65 .75 .80', 'AE'],
  ['fibre-panel-50', '.20 .45 .70 .80 .80 .80', 'AE'],
])('%s: %s (%s)', (id, printed) => {
  const values = printed.split(' ').map(Number);
  expect(finishAbsorption(id)?.tables.map((t) => [...t.values])).toContainEqual(values);
});

it('upholstered seats, empty and occupied (RT)', () => {
  expect(upholsteredSeats.empty.values).toEqual([0.49, 0.66, 0.8, 0.88, 0.82, 0.7]);
  expect(upholsteredSeats.occupied.values).toEqual([0.6, 0.74, 0.88, 0.96, 0.93, 0.85]);
});
