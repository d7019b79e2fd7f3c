import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { admittanceFromDiffuse, diffuseAbsorption } from '../../src/engines/acoustics/admittance.ts';
import { airAttenuationDbPerM, speedOfSound } from '../../src/engines/acoustics/air.ts';
import type { OctaveValues } from '../../src/engines/acoustics/bands.ts';
import { absorptionBand, absorptionOf, finishAbsorptions } from '../../src/engines/acoustics/materials.ts';
import { criticalDistanceM, reverberation } from '../../src/engines/acoustics/reverberation.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const alpha = real(0.01, 0.95);
const spectrum: fc.Arbitrary<OctaveValues> = fc.tuple(alpha, alpha, alpha, alpha, alpha, alpha);
const area = fc.record({ areaM2: real(0.1, 80), absorption: spectrum });
const room = fc.record({ volumeM3: real(10, 400), areas: fc.array(area, { minLength: 1, maxLength: 8 }) });

describe('reverberation', () => {
  it('Eyring is shorter than Sabine, and both fall when anything is added', () => {
    fc.assert(
      fc.property(room, real(0.01, 5), real(1e-5, 0.02), (given, extra, air) => {
        const base = reverberation({ ...given, speedMS: 343.2 });
        const six = (v: number): OctaveValues => [v, v, v, v, v, v];
        const objectsM2 = six(extra);
        const airPerM = six(air);
        const more = reverberation({ ...given, objectsM2, speedMS: 343.2 });
        const damp = reverberation({ ...given, airPerM, speedMS: 343.2 });
        for (let i = 0; i < 6; i += 1) {
          expect(base.eyringS[i]).toBeLessThan(base.sabineS[i]);
          expect(more.sabineS[i]).toBeLessThan(base.sabineS[i]);
          expect(more.eyringS[i]).toBeLessThan(base.eyringS[i]);
          expect(damp.sabineS[i]).toBeLessThan(base.sabineS[i]);
          expect(damp.eyringS[i]).toBeLessThan(base.eyringS[i]);
        }
      }),
    );
  });

  it('a room s times as large rings s times as long; cutting a surface in two changes nothing', () => {
    fc.assert(
      fc.property(room, real(0.2, 5), real(0.05, 0.95), (given, s, cut) => {
        const base = reverberation({ ...given, speedMS: 343.2 });
        const big = reverberation({
          volumeM3: given.volumeM3 * s ** 3,
          areas: given.areas.map((a) => ({ ...a, areaM2: a.areaM2 * s ** 2 })),
          speedMS: 343.2,
        });
        const halves = reverberation({
          ...given,
          areas: given.areas.flatMap((a) => [
            { ...a, areaM2: a.areaM2 * cut },
            { ...a, areaM2: a.areaM2 * (1 - cut) },
          ]),
          speedMS: 343.2,
        });
        for (let i = 0; i < 6; i += 1) {
          expect(big.eyringS[i] / (s * base.eyringS[i])).toBeCloseTo(1, 9);
          expect(halves.eyringS[i] / base.eyringS[i]).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  it('at the critical distance Q / (4 pi r^2) equals 4 / A', () => {
    fc.assert(
      fc.property(room, real(1, 10), (given, q) => {
        const solved = reverberation({ ...given, speedMS: 343.2 });
        const r = criticalDistanceM(given.volumeM3, solved.sabineS[3], 343.2, q);
        expect(q / (4 * Math.PI * r * r) / (4 / solved.equivalentAreaM2[3])).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('wall admittance', () => {
  it('goes to absorption and back, and rises with it', () => {
    fc.assert(
      fc.property(real(1e-4, 0.6), real(1e-3, 0.03), (b, more) => {
        const absorption = diffuseAbsorption(b);
        expect(absorption).toBeGreaterThan(0);
        expect(absorption).toBeLessThan(1);
        expect(admittanceFromDiffuse(absorption).admittance).toBeCloseTo(b, 6);
        expect(diffuseAbsorption(b + more)).toBeGreaterThan(absorption);
      }),
    );
  });

  it('a reactive part never adds absorption to a hard wall and its sign does not matter', () => {
    fc.assert(
      fc.property(real(1e-3, 0.5), real(0.001, 2), (b, s) => {
        expect(diffuseAbsorption(b, s)).toBe(diffuseAbsorption(b, -s));
        expect(diffuseAbsorption(b, s)).toBeLessThan(diffuseAbsorption(b) + 1e-12);
      }),
    );
  });
});

it('the absorption used for a finish lies within its own tables', () => {
  fc.assert(
    fc.property(fc.constantFrom(...finishAbsorptions), fc.nat(5), (finish, i) => {
      const { low, high } = absorptionBand(finish);
      expect(low[i]).toBeLessThanOrEqual(absorptionOf(finish)[i]);
      expect(high[i]).toBeGreaterThanOrEqual(absorptionOf(finish)[i]);
    }),
  );
});

it('air: attenuation is positive and rises with frequency, the speed of sound with temperature', () => {
  fc.assert(
    fc.property(real(-10, 40), real(10, 100), real(50, 8000), (t, h, hz) => {
      const air = { temperatureC: t, relativeHumidityPercent: h };
      const here = airAttenuationDbPerM(hz, air);
      expect(here).toBeGreaterThan(0);
      expect(airAttenuationDbPerM(hz * 1.1, air)).toBeGreaterThan(here);
      expect(speedOfSound(t + 1)).toBeGreaterThan(speedOfSound(t));
    }),
  );
});
