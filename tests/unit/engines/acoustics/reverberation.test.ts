import { describe, expect, it } from 'vitest';
import { airAttenuationDbPerM, energyAttenuationPerM } from '../../../../src/engines/acoustics/air.ts';
import { exactMidbandHz, type OctaveValues, octaves } from '../../../../src/engines/acoustics/bands.ts';
import {
  criticalDistanceM,
  eyringS,
  reverberation,
  reverberationS,
  sabineS,
} from '../../../../src/engines/acoustics/reverberation.ts';

const flat = (value: number): OctaveValues => octaves(() => value);
const c = 343.2;

describe('reverberation', () => {
  it('has the constant 0.161 at 20 degrees Celsius', () => {
    expect(reverberationS(1, 1, c)).toBeCloseTo(0.16102, 5);
  });

  it('is infinite without absorption, and 0 by Eyring where all is absorbed', () => {
    expect(reverberationS(50, 0, c)).toBe(Number.POSITIVE_INFINITY);
    expect(eyringS(50, 80, 1, c)).toBe(0);
    expect(eyringS(50, 80, 1.1, c)).toBe(0);
  });

  it('tends to Sabine for hard walls and is shorter for soft ones', () => {
    expect(eyringS(50, 80, 1e-6, c) / sabineS(50, 80e-6, c)).toBeCloseTo(1 - 0.5e-6, 9);
    expect(eyringS(50, 80, 0.5, c) / sabineS(50, 40, c)).toBeCloseTo(0.5 / Math.LN2, 9);
  });

  it('sums areas and objects', () => {
    const room = reverberation({
      volumeM3: 60,
      areas: [
        { areaM2: 60, absorption: flat(0.1) },
        { areaM2: 40, absorption: [0.02, 0.06, 0.14, 0.37, 0.6, 0.65] },
      ],
      objectsM2: flat(2),
      speedMS: c,
    });
    expect(room.surfaceM2).toBe(100);
    expect(room.equivalentAreaM2[3]).toBeCloseTo(6 + 14.8 + 2, 9);
    expect(room.meanAbsorption[3]).toBeCloseTo(0.228, 9);
    expect(room.sabineS[3]).toBeCloseTo((0.16102 * 60) / 22.8, 4);
    expect(room.eyringS[3]).toBeCloseTo((0.16102 * 60) / (-100 * Math.log(0.772)), 4);
    expect(room.eyringS[0]).toBeGreaterThan(room.eyringS[3]);
  });

  it('counts the air when asked: the top octave shortens most', () => {
    const areas = [{ areaM2: 100, absorption: flat(0.1) }];
    const airPerM = octaves((i) =>
      energyAttenuationPerM(airAttenuationDbPerM(exactMidbandHz(i), { temperatureC: 20, relativeHumidityPercent: 50 })),
    );
    const dry = reverberation({ volumeM3: 60, areas, speedMS: c });
    const damp = reverberation({ volumeM3: 60, areas, airPerM, speedMS: c });
    const loss = dry.sabineS.map((t, i) => t / damp.sabineS[i] - 1);
    for (let i = 1; i < 6; i += 1) expect(loss[i]).toBeGreaterThan(loss[i - 1]);
    // 29.4 dB/km at 4 kHz: m = 0.0294 / 4.343; 4 m V = 1.63 m2 beside 10 m2.
    expect(loss[5]).toBeCloseTo((4 * (0.02942 / 4.3429) * 60) / 10, 2);
  });
});

it('critical distance: 0.057 sqrt(Q V / T) (remembered), the constant as rounded in print', () => {
  expect(Math.abs(criticalDistanceM(1, 1, c) - 0.057)).toBeLessThan(0.0005);
  expect(criticalDistanceM(60, 0.4, c, 2) / criticalDistanceM(1, 1, c)).toBeCloseTo(Math.sqrt((2 * 60) / 0.4), 9);
});
