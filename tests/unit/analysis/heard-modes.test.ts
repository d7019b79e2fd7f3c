import { describe, expect, it } from 'vitest';
import { decayGrid, decayOf, playedDrives, shownS } from '../../../src/analysis/decay.ts';
import { heardModes } from '../../../src/analysis/heard-modes.ts';
import { earTriples, seatIdsInOrder, sourceTriples } from '../../../src/analysis/inputs.ts';
import { createBoxField } from '../../../src/engines/bass/box-field.ts';
import type { Project } from '../../../src/model/project.ts';
import { boxSpec } from './even-box.ts';
import { demo } from './rooms.ts';

const MODES_TO_HZ = 210;
const project = demo();
const field = createBoxField(boxSpec(project, 0.25));
const modes = field.modes(MODES_TO_HZ);

const heard = (of: Project, seatId = 'front-1') => {
  const places = Float64Array.from([...sourceTriples(of), ...earTriples(of)]);
  return heardModes(of, seatId, modes, field.modeShapes(MODES_TO_HZ, places));
};

describe('what a seat hears of each mode', () => {
  it('is sorted, complete, and a gain on all subwoofers lifts every mode alike', () => {
    const list = heard(project).modes;
    expect(list.length).toBe(modes.length);
    for (let i = 1; i < list.length; i += 1) expect(list[i].levelDb).toBeLessThanOrEqual(list[i - 1].levelDb);
    const louder = heard({ ...project, subwoofers: project.subwoofers.map((s) => ({ ...s, gainDb: s.gainDb + 4 })) });
    for (const [i, mode] of louder.modes.entries())
      if (mode.levelDb > -200) expect(mode.levelDb - list[i].levelDb).toBeCloseTo(4, 6);
  });

  it('is nothing of a mode with its node at the seat, nor of one that opposite subwoofers cancel', () => {
    const { modes: middle } = heard(project, 'front-2');
    // Front-2 sits on the middle line: modes of odd order across have their node there.
    const odd = middle.filter(({ order }) => (order?.[0] ?? 0) % 2 === 1);
    expect(odd.length).toBeGreaterThan(10);
    for (const { levelDb } of odd) expect(levelDb).toBeLessThan(-60);
    const [a] = project.subwoofers;
    const pair = { ...project, subwoofers: [a, { ...a, id: 'S2', inverted: true }] };
    for (const { levelDb } of heard(pair).modes) expect(levelDb).toBeLessThan(-60);
  });

  it('is what the whole field has at a low mode that stands alone', () => {
    const [first] = project.subwoofers;
    const alone = { ...project, subwoofers: [{ ...first, gainDb: 0, delayMs: 0 }] };
    const seat = seatIdsInOrder(project).indexOf('front-1');
    const ears = earTriples(project).slice(3 * seat, 3 * seat + 3);
    const list = heard(alone).modes;
    const lowest = list.find(({ hz }) => hz === modes[0].hz);
    const { re, im } = field.unitResponses(sourceTriples(alone), ears, Float64Array.of(modes[0].dampedHz));
    // A third of a neper of other modes' tails at most: two decibels.
    expect(Math.abs((lowest?.levelDb ?? 0) - 20 * Math.log10(Math.hypot(re[0], im[0])))).toBeLessThan(2);
  });

  it('gives third octaves the decay of the modes heard in them, and none where there are none', () => {
    const { thirds } = heard(project);
    expect(thirds.map(({ hz }) => hz)).toEqual([20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200]);
    const [lowest] = modes;
    for (const { hz, decayS, modes: count } of thirds) {
      const within = modes.filter((m) => Math.abs(Math.log2(m.dampedHz / hz)) < 1 / 6);
      if (count === 0) expect(decayS).toBeNull();
      else {
        expect(decayS).toBeGreaterThanOrEqual(Math.min(...within.map((m) => m.decayS)) * 0.999);
        expect(decayS).toBeLessThanOrEqual(Math.max(...within.map((m) => m.decayS)) * 1.001);
      }
      if (hz < lowest.dampedHz * 0.85) expect(count).toBe(0);
    }
  });
});

describe('the picture of a seat’s decay', () => {
  it('shows a second, or as long as the longest mode takes, at most two', () => {
    const of = (decayS: number) => shownS([{ hz: 50, order: null, dampedHz: 50, decayS }]);
    expect([of(0.3), of(1.31), of(9)]).toEqual([1, 1.4, 2]);
  });

  it('begins at the steady level with the subwoofers’ high-pass, and never grows much', () => {
    const seat = seatIdsInOrder(project).indexOf('front-1');
    const ears = earTriples(project).slice(3 * seat, 3 * seat + 3);
    const [first] = project.subwoofers;
    const alone = { ...project, subwoofers: [{ ...first, gainDb: -2, highPassHz: 15 }] };
    const damped = createBoxField(boxSpec(project, 1.5));
    const { frequenciesHz, growthPerS } = decayGrid(1);
    const units = damped.unitResponses(sourceTriples(alone), ears, frequenciesHz, growthPerS);
    const picture = decayOf({ drives: playedDrives(alone), showsS: 1, units });
    expect(picture.timesS[100]).toBeCloseTo(1, 9);
    const steady = damped.unitResponses(sourceTriples(alone), ears, picture.frequenciesHz);
    const count = picture.frequenciesHz.length;
    for (let f = 0; f < count; f += 1) {
      // A second-order Butterworth high-pass: |H|^2 = r^4 / (1 + r^4).
      const r4 = (picture.frequenciesHz[f] / 15) ** 4;
      const expected = 20 * Math.log10(Math.hypot(steady.re[f], steady.im[f])) - 2 + 10 * Math.log10(r4 / (1 + r4));
      if (expected > -10) expect(Math.abs(picture.levelDb[f] - expected)).toBeLessThan(0.5);
      // After a second of a room that takes a third of one, nothing is left but what wraps round.
      expect(picture.levelDb[100 * count + f]).toBeLessThan(-30);
    }
  });
});
