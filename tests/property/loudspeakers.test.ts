import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { directionFrom, offAxisDeg } from '../../src/engines/loudspeakers/angles.ts';
import { patternGainDb } from '../../src/engines/loudspeakers/directivity.ts';
import { azimuthFromItu, ituSystems, pointFromItu } from '../../src/engines/loudspeakers/itu-layout.ts';
import { degreesOutside, insideRange, matchLayout } from '../../src/engines/loudspeakers/layout-match.ts';
import { alignmentDelaysMs, levelDb, trimsDb } from '../../src/engines/loudspeakers/levels.ts';
import type { Vec3 } from '../../src/math/vec3.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point: fc.Arbitrary<Vec3> = fc.tuple(real(-4, 4), real(0, 3), real(0, 9));
const mirror = ([x, y, z]: Vec3): Vec3 => [-x, y, z];
const apart = (a: Vec3, b: Vec3): void => fc.pre(Math.hypot(a[0] - b[0], a[2] - b[2]) > 0.01);
const pattern = fc.constantFrom('box' as const, 'omni' as const, 'dipole' as const, 'bipole' as const);

describe('directions', () => {
  it('in the mirror the azimuth changes sign and nothing else', () => {
    fc.assert(
      fc.property(point, point, point, (ear, source, facing) => {
        apart(ear, source);
        const plain = directionFrom(ear, source);
        const other = directionFrom(mirror(ear), mirror(source));
        fc.pre(Math.abs(plain.azimuthDeg) < 179.999);
        expect(other.azimuthDeg).toBeCloseTo(-plain.azimuthDeg, 9);
        expect(other.elevationDeg).toBeCloseTo(plain.elevationDeg, 9);
        expect(other.distanceM).toBeCloseTo(plain.distanceM, 9);
        const off = offAxisDeg(source, facing, ear);
        expect(offAxisDeg(mirror(source), mirror(facing), mirror(ear))).toBeCloseTo(off, 9);
      }),
    );
  });

  it('at another scale only the distance changes', () => {
    fc.assert(
      fc.property(point, point, real(0.1, 10), (ear, source, s) => {
        apart(ear, source);
        const plain = directionFrom(ear, source);
        const big = directionFrom([s * ear[0], s * ear[1], s * ear[2]], [s * source[0], s * source[1], s * source[2]]);
        // Round the circle: 180 and -180 are one direction.
        expect(Math.abs(degreesOutside(big.azimuthDeg, [plain.azimuthDeg, plain.azimuthDeg]))).toBeLessThan(1e-6);
        expect(big.elevationDeg).toBeCloseTo(plain.elevationDeg, 6);
        expect(big.distanceM / s).toBeCloseTo(plain.distanceM, 6);
      }),
    );
  });

  it('undo the standard polar form', () => {
    fc.assert(
      fc.property(real(-179, 179), real(-80, 80), real(0.5, 10), point, (azimuth, elevation, r, ear) => {
        const offset = pointFromItu(azimuth, elevation, r);
        const found = directionFrom(ear, [ear[0] + offset[0], ear[1] + offset[1], ear[2] + offset[2]]);
        expect(azimuthFromItu(found.azimuthDeg)).toBeCloseTo(azimuth, 6);
        expect(found.elevationDeg).toBeCloseTo(elevation, 6);
        expect(found.distanceM).toBeCloseTo(r, 9);
      }),
    );
  });
});

describe('levels', () => {
  it('never rise with distance, and lose 6.02 dB at twice of it', () => {
    fc.assert(
      fc.property(real(0.1, 20), real(0, 10), pattern, real(0, 180), (d, more, kind, off) => {
        expect(levelDb(d + more, kind, off)).toBeLessThanOrEqual(levelDb(d, kind, off));
        expect(levelDb(d, kind, off) - levelDb(2 * d, kind, off)).toBeCloseTo(20 * Math.log10(2), 9);
      }),
    );
  });

  it('patterns are continuous and lie between -15 and 0 dB', () => {
    fc.assert(
      fc.property(pattern, real(0, 179.99), (kind, off) => {
        const gain = patternGainDb(kind, off);
        expect(gain).toBeLessThanOrEqual(1e-12);
        expect(gain).toBeGreaterThanOrEqual(-15);
        // The steepest: a dipole just above its floor, 20 log10 e tan(80 degrees) = 0.86 dB a degree.
        expect(Math.abs(patternGainDb(kind, off + 0.01) - gain)).toBeLessThan(0.009);
      }),
    );
  });

  it('delays bring every arrival together and trims every level', () => {
    fc.assert(
      fc.property(fc.array(real(0.5, 12), { minLength: 1, maxLength: 12 }), (distances) => {
        const delays = alignmentDelaysMs(distances, 343.2);
        const arrivals = distances.map((d, i) => (d / 343.2) * 1000 + delays[i]);
        expect(Math.max(...arrivals) - Math.min(...arrivals)).toBeLessThan(1e-9);
        expect(Math.min(...delays)).toBe(0);
        const trimmed = trimsDb(distances).map((t, i) => t + distances[i]);
        expect(Math.max(...trimmed) - Math.min(...trimmed)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('layouts', () => {
  it('every system is recognised from its own labels in any order, and judged alike on both sides', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ituSystems), fc.infiniteStream(fc.nat()), (system, keys) => {
        const labels = system.positions
          .map((p) => ({ label: p.label, key: keys.next().value ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map((p) => p.label);
        expect(matchLayout(labels)).toEqual({ letter: system.letter, missing: [], extra: [] });
      }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...ituSystems), real(-180, 180), real(-40, 95), (system, azimuth, elevation) => {
        for (const p of system.positions) {
          const twin = system.positions.find((q) => q.label === p.label.replace('+', '-'));
          if (!twin) continue;
          expect(insideRange(twin, -azimuth, elevation), p.label).toBe(insideRange(p, azimuth, elevation));
        }
      }),
    );
  });
});
