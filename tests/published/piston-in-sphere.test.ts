// A loudspeaker box at 1 kHz against the classical series for a vibrating cap in a rigid sphere (Morse and Ingard, Theoretical
// Acoustics, section 7.2; remembered), worked here from nothing but Legendre and spherical Bessel recurrences.
import { describe, expect, it } from 'vitest';
import { patternGainDb } from '../../src/engines/loudspeakers/directivity.ts';

const sphereM = 0.125;
const capM = 0.065;
const c = 343.2;

/** Spherical Bessel functions j and y of orders 0 to n: j downward (Miller), y upward. */
const bessels = (n: number, x: number): { j: number[]; y: number[] } => {
  const y = [-Math.cos(x) / x, -Math.cos(x) / x ** 2 - Math.sin(x) / x];
  for (let i = 1; i < n; i += 1) y[i + 1] = ((2 * i + 1) / x) * y[i] - y[i - 1];
  const j: number[] = [];
  let above = 0;
  let here = 1e-30;
  for (let i = n + 30; i >= 0; i -= 1) {
    if (i <= n) j[i] = here;
    const below = ((2 * i + 1) / x) * here - above;
    above = here;
    here = below;
  }
  const scale = Math.sin(x) / x / j[0];
  return { j: j.map((v) => v * scale), y };
};

const legendre = (n: number, cosine: number): number[] => {
  const p = [1, cosine];
  for (let i = 1; i < n; i += 1) p[i + 1] = ((2 * i + 1) * cosine * p[i] - i * p[i - 1]) / (i + 1);
  return p;
};

/** Squared far pressure, up to a constant: sum over n of w_n j^n P_n(cos theta) / h_n'(ka). */
const power = (hz: number, deg: number): number => {
  const x = (2 * Math.PI * hz * sphereM) / c;
  const n = 24;
  const { j, y } = bessels(n + 1, x);
  const rim = legendre(n + 1, Math.sqrt(1 - (capM / sphereM) ** 2));
  const p = legendre(n, Math.cos((deg * Math.PI) / 180));
  let re = 0;
  let im = 0;
  for (let i = 0; i < n; i += 1) {
    const w = (i === 0 ? 1 - rim[1] : rim[i - 1] - rim[i + 1]) * p[i];
    const dRe = (i / x) * j[i] - j[i + 1];
    const dIm = -((i / x) * y[i] - y[i + 1]);
    const size = dRe * dRe + dIm * dIm;
    const qRe = (w * dRe) / size;
    const qIm = (-w * dIm) / size;
    const turn = i % 4;
    re += turn === 0 ? qRe : turn === 1 ? -qIm : turn === 2 ? -qRe : qIm;
    im += turn === 0 ? qIm : turn === 1 ? qRe : turn === 2 ? -qIm : -qRe;
  }
  return re * re + im * im;
};

/** Mean over the octave about 1 kHz of the power against straight ahead, dB. */
const octaveDb = (deg: number): number => {
  let sum = 0;
  for (let i = 0; i < 25; i += 1) {
    const hz = 1000 * 2 ** (i / 24 - 0.5);
    sum += power(hz, deg) / power(hz, 0);
  }
  return 10 * Math.log10(sum / 25);
};

describe('box pattern in the 1 kHz octave', () => {
  it('the series itself is omni at 20 Hz', () => {
    expect(Math.abs(10 * Math.log10(power(20, 180) / power(20, 0)))).toBeLessThan(0.05);
  });

  it.each([15, 30, 45, 60, 75, 90, 105, 120, 135])('at %d degrees lies within 0.75 dB of the sphere', (deg) => {
    const series = octaveDb(deg);
    expect(series).toBeLessThan(0);
    expect(Math.abs(patternGainDb('box', deg) - series), `series ${series.toFixed(2)}`).toBeLessThanOrEqual(0.75);
  });
});
