import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../src/engines/bass/box-field.ts';
import { bandDecayS, dampingOf, resonantSize, THIRD_OCTAVES } from '../../../../src/engines/bass/modal-terms.ts';
import type { BoxSpec } from '../../../../src/engines/bass/room-field.ts';

const box = (beta: number): BoxSpec => ({
  sizeM: [4.1, 2.7, 5.9],
  soundSpeed: 343.2,
  admittance: Array.from({ length: 6 }, () => [beta, 0] as const),
});

describe('one mode by itself', () => {
  it('is what the whole field is at a resonance that stands alone in a lightly damped room', () => {
    const field = createBoxField(box(0.002));
    const places = Float64Array.of(0.3, 0.3, 0.3, 3.6, 1.35, 5.5);
    const shapes = field.modeShapes(60, places);
    field.modes(60).forEach((mode, n) => {
      const coupling = Math.abs(shapes[2 * n] * shapes[2 * n + 1]);
      if (coupling < 0.02) return;
      const alone = resonantSize({ ...mode, coupling }, 343.2);
      const whole = field.unitResponses(places.slice(0, 3), places.slice(3), Float64Array.of(mode.dampedHz));
      const ratio = Math.hypot(whole.re[0], whole.im[0]) / alone;
      // At a reverberation time of ten seconds the other modes add a few hundredths.
      expect(Math.abs(ratio - 1), `${mode.hz} Hz`).toBeLessThan(0.06);
    });
  });

  it('has shapes whose squares have the integral 1 over the room', () => {
    const { sizeM } = box(0);
    const steps = 24;
    const points: number[] = [];
    for (let i = 0; i < steps; i++)
      for (let j = 0; j < steps; j++)
        for (let k = 0; k < steps; k++) points.push(...[i, j, k].map((n, axis) => ((n + 0.5) / steps) * sizeM[axis]));
    const count = points.length / 3;
    const shapes = createBoxField(box(0)).modeShapes(70, Float64Array.from(points));
    const cell = (sizeM[0] * sizeM[1] * sizeM[2]) / count;
    expect(shapes.length / count).toBeGreaterThan(5);
    for (let mode = 0; mode < shapes.length / count; mode++) {
      let integral = 0;
      for (let p = 0; p < count; p++) integral += shapes[mode * count + p] ** 2 * cell;
      // The midpoint rule is exact for these cosines.
      expect(integral).toBeCloseTo(1, 9);
    }
  });
});

describe('a band’s decay', () => {
  it('is the mode’s own where there is one, whatever its strength', () => {
    for (const decayS of [0.2, 0.7, 3]) expect(bandDecayS([{ hz: 50, decayS, coupling: 0.3 }])).toBeCloseTo(decayS, 9);
  });

  it('of two modes lies where the two exponentials, added, fall through -5 and -25 dB', () => {
    const terms = [
      { hz: 50, decayS: 0.3, coupling: 1 },
      { hz: 50, decayS: 1.2, coupling: 0.2 },
    ];
    // The same by a table of ten thousand steps instead of bisection.
    const energy = (t: number) =>
      terms.reduce((sum, m) => sum + m.coupling ** 2 * m.decayS * Math.exp((-6 * Math.LN10 * t) / m.decayS), 0);
    const level = (t: number) => 10 * Math.log10(energy(t) / energy(0));
    const at = (db: number) =>
      Array.from({ length: 12_000 }, (_, i) => i / 10_000).find((t) => level(t) <= db) ?? Number.NaN;
    const expected = 3 * (at(-25) - at(-5));
    expect(expected).toBeGreaterThan(0.3);
    expect(expected).toBeLessThan(1.2);
    // A step of the table either way at both ends, three times.
    expect(Math.abs((bandDecayS(terms) ?? Number.NaN) - expected)).toBeLessThan(6e-4);
  });

  it('is none without modes that decay', () => {
    expect(bandDecayS([])).toBeNull();
    expect(bandDecayS([{ hz: 40, decayS: Number.POSITIVE_INFINITY, coupling: 1 }])).toBeNull();
    expect(bandDecayS([{ hz: 40, decayS: 0.4, coupling: 0 }])).toBeNull();
  });

  it('takes 60 dB in the reverberation time', () => {
    expect(20 * Math.log10(Math.exp(-dampingOf(0.8) * 0.8))).toBeCloseTo(-60, 9);
  });

  it('has bands without gaps, centred on 1000 x 10^(n/10)', () => {
    expect(THIRD_OCTAVES.length).toBe(11);
    // Exact centres 19.953, 25.119 and 199.53 Hz (IEC 61260-1, base ten, from memory).
    expect(Math.sqrt(THIRD_OCTAVES[0].lowHz * THIRD_OCTAVES[0].highHz)).toBeCloseTo(19.953, 3);
    expect(Math.sqrt(THIRD_OCTAVES[1].lowHz * THIRD_OCTAVES[1].highHz)).toBeCloseTo(25.119, 3);
    expect(Math.sqrt(THIRD_OCTAVES[10].lowHz * THIRD_OCTAVES[10].highHz)).toBeCloseTo(199.526, 3);
    for (let i = 1; i < 11; i++) expect(THIRD_OCTAVES[i].lowHz).toBeCloseTo(THIRD_OCTAVES[i - 1].highHz, 9);
  });
});
