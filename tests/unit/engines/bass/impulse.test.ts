import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../src/engines/bass/box-field.ts';
import { decayPicture } from '../../../../src/engines/bass/decay-picture.ts';
import { impulseGrid, impulseResponse, playedWeight } from '../../../../src/engines/bass/impulse.ts';

/** Slope of levels over time as a reverberation time, by least squares. */
const decayTime = (timesS: ArrayLike<number>, levelsDb: ArrayLike<number>): number => {
  const n = timesS.length;
  let [t, l, tt, tl] = [0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    t += timesS[i] / n;
    l += levelsDb[i] / n;
  }
  for (let i = 0; i < n; i++) {
    tt += (timesS[i] - t) ** 2;
    tl += (timesS[i] - t) * (levelsDb[i] - l);
  }
  return -60 / (tl / tt);
};

describe('a response over time', () => {
  it('of one damped resonance, from its spectrum by hand, is that resonance', () => {
    const grid = impulseGrid(1, 400);
    const [omega, delta] = [2 * Math.PI * 60, 9];
    const re = new Float64Array(grid.frequenciesHz.length);
    const im = new Float64Array(re.length);
    grid.frequenciesHz.forEach((hz, i) => {
      // omega / ((s + delta)^2 + omega^2) at s = growth + j 2 pi f.
      const [a, b] = [grid.growthPerS + delta, 2 * Math.PI * hz];
      const [dRe, dIm] = [a * a - b * b + omega * omega, 2 * a * b];
      const size = dRe * dRe + dIm * dIm;
      re[i] = (omega * dRe) / size;
      im[i] = (-omega * dIm) / size;
    });
    const h = impulseResponse(grid, re, im);
    const perS = grid.samples / grid.durationS;
    for (const t of [0.05, 0.1234, 0.3, 0.5, 0.8]) {
      const n = Math.round(t * perS);
      const exact = Math.exp((-delta * n) / perS) * Math.sin((omega * n) / perS);
      // What lies above the taper is a few hundredths of the kink at the beginning, far away here.
      expect(Math.abs(h[n] - exact), `${t} s`).toBeLessThan(2e-3);
    }
  });

  it('sends through a high-pass that is 3 dB down at its corner and turns by the delay', () => {
    const out = new Float64Array(2);
    const drive = { gainDb: 6, delayMs: 0, inverted: false, highPassHz: 20 };
    playedWeight(drive, 20, 0, out);
    expect(20 * Math.log10(Math.hypot(out[0], out[1]))).toBeCloseTo(6 - 3.0103, 4);
    playedWeight(drive, 2000, 0, out);
    const before = Math.atan2(out[1], out[0]);
    playedWeight({ ...drive, delayMs: 0.1, inverted: true }, 2000, 3, out);
    // A fifth of a turn for 0.1 ms at 2 kHz, and half a turn for the sign.
    const turned = (before - Math.atan2(out[1], out[0]) + 4 * Math.PI) % (2 * Math.PI);
    expect(turned).toBeCloseTo(2 * Math.PI * 0.2 + Math.PI, 3);
  });
});

describe('the picture of a decay', () => {
  it('of an exponential is the exponential, by hand', () => {
    const [perS, delta] = [4000, 12];
    const h = Float64Array.from({ length: 8000 }, (_, n) => Math.exp((-delta * n) / perS));
    const times = Float64Array.of(0, 0.1, 0.25, 0.5);
    const frequencies = Float64Array.of(20, 50);
    const levels = decayPicture(h, perS, frequencies, times);
    for (const [i, t] of times.entries())
      for (const [f, hz] of frequencies.entries()) {
        const exact = 20 * Math.log10(Math.exp(-delta * t) / Math.hypot(delta, 2 * Math.PI * hz));
        // The trapezoid rule at 4000 samples a second: (omega dt)^2 / 12 and the cut at two seconds (e^-24).
        expect(Math.abs(levels[i * 2 + f] - exact)).toBeLessThan(0.01);
      }
  });

  it('of the reference room falls at its lowest mode as the finite-element reference says (G_box_decay, read)', () => {
    const reference = JSON.parse(readFileSync('tests/fixtures/bass/G_box_decay.json', 'utf8')) as {
      room: { dims_m: [number, number, number] };
      modes: { n: number[]; f_hz: number; T60_s: number }[];
    };
    const [mode] = reference.modes;
    expect(mode.n).toEqual([1, 0, 0]);
    const [x, y, z] = reference.room.dims_m;
    const field = createBoxField({
      sizeM: [x, y, z],
      soundSpeed: 343.2,
      admittance: Array.from({ length: 6 }, () => [0.02, 0] as const),
    });
    const grid = impulseGrid(2.4, 400);
    // In the middle of width and height the neighbouring modes across are not excited.
    const source = Float64Array.of(0.2, y / 2, z / 2);
    const seat = Float64Array.of(5.4, y / 2, z / 2);
    const { re, im } = field.unitResponses(source, seat, grid.frequenciesHz, grid.growthPerS);
    const weight = new Float64Array(2);
    const drive = { gainDb: 0, delayMs: 0, inverted: false, highPassHz: 10 };
    const driven = [new Float64Array(re.length), new Float64Array(re.length)];
    grid.frequenciesHz.forEach((hz, i) => {
      playedWeight(drive, hz, grid.growthPerS, weight);
      driven[0][i] = re[i] * weight[0] - im[i] * weight[1];
      driven[1][i] = re[i] * weight[1] + im[i] * weight[0];
    });
    const h = impulseResponse(grid, driven[0], driven[1]);
    const times = Float64Array.from({ length: 60 }, (_, i) => 0.2 + i * 0.015);
    const at = Float64Array.of(mode.f_hz);
    const levels = decayPicture(h, grid.samples / grid.durationS, at, times);
    // Neighbours (the next along the room is an octave up) ripple by a few tenths of a decibel, which the fit averages.
    expect(Math.abs(decayTime(times, levels) / mode.T60_s - 1)).toBeLessThan(0.02);

    // It begins at the steady level there, high-pass included (-0.07 dB at 28 Hz).
    const steady = field.unitResponses(source, seat, at);
    playedWeight(drive, mode.f_hz, 0, weight);
    const expected = 20 * Math.log10(Math.hypot(steady.re[0], steady.im[0]) * Math.hypot(weight[0], weight[1]));
    const [begun] = decayPicture(h, grid.samples / grid.durationS, at, Float64Array.of(0));
    expect(Math.abs(begun - expected)).toBeLessThan(0.1);
  });
});
