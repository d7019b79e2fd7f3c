import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bassReadout } from '../../src/analysis/bass.ts';
import { geometryReadout } from '../../src/analysis/geometry.ts';
import { earTriples, METRIC_FREQUENCIES_HZ, roomSpec, sourceTriples } from '../../src/analysis/inputs.ts';
import { createRoomField } from '../../src/engines/bass/create-room-field.ts';
import type { Project } from '../../src/model/project.ts';
import { projectOf } from '../unit/analysis/rooms.ts';

/** A room with every length of it, bodies included, k times as large. */
const scaled = (k: number, x: number, z: number, admittance: number): Project => {
  const wall = { admittance: [admittance, 0] };
  const surfaces = { front: wall, back: wall, left: wall, right: wall, floor: wall, ceiling: wall };
  return projectOf({
    format: 'parterre/project',
    version: 1,
    room: {
      plan: { shape: 'rectangle', widthM: 4 * k, lengthM: 6 * k },
      ceiling: { shape: 'flat', heightM: 2.5 * k },
      surfaces,
    },
    people: { eyeAbovePanM: 0.69 * k, earAbovePanM: 0.68 * k, earBehindEyeM: 0.1 * k, crownAboveEyeM: 0.115 * k },
    picture: { widthM: 2 * k, bottomM: 0.7 * k, offFrontWallM: 0.1 * k, centreXM: 0 },
    rows: [
      { id: 'f', eyeZM: 2.6 * k, seat: { panHeightM: 0.43 * k }, seats: [{ id: 'a', xM: 0.3 * k }] },
      { id: 'b', eyeZM: 4.2 * k, floorM: 0.2 * k, seat: { panHeightM: 0.43 * k }, seats: [{ id: 'b', xM: 0 }] },
    ],
    loudspeakers: [{ id: 'X', channel: 'M+030', atM: [x * k, 1.2 * k, z * k] }],
    subwoofers: [{ id: 'S', atM: [x * k, 0.3 * k, z * k] }],
  });
};

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const cases = fc.record({ k: real(0.8, 1.3), x: real(-1.9, 1.9), z: real(0.2, 1.8), admittance: real(0.01, 0.3) });

describe('a room k times as large', () => {
  it('has the same angles, k times the distances, 20 log10 k less level', () => {
    fc.assert(
      fc.property(cases, ({ k, x, z, admittance }) => {
        const small = geometryReadout(scaled(1, x, z, admittance));
        const large = geometryReadout(scaled(k, x, z, admittance));
        small.seats.forEach((seat, index) => {
          const other = large.seats[index];
          for (const angle of ['horizontalDeg', 'verticalDeg', 'offAxisDeg', 'topElevationDeg'] as const)
            expect(other.picture[angle]).toBeCloseTo(seat.picture[angle], 6);
          expect(other.picture.distanceM).toBeCloseTo(seat.picture.distanceM * k, 8);
          expect(other.picture.distanceHeights).toBeCloseTo(seat.picture.distanceHeights, 8);
          if (seat.picture.clearanceMm !== null)
            expect(other.picture.clearanceMm).toBeCloseTo(seat.picture.clearanceMm * k, 6);
          const [a, b] = [seat.loudspeakers[0], other.loudspeakers[0]];
          expect(b.azimuthDeg).toBeCloseTo(a.azimuthDeg, 6);
          expect(b.elevationDeg).toBeCloseTo(a.elevationDeg, 6);
          expect(b.arrivalMs).toBeCloseTo(a.arrivalMs * k, 8);
          expect(b.levelDb).toBeCloseTo(a.levelDb - 20 * Math.log10(k), 6);
        });
        expect(large.room.rt60S['500']).toBeCloseTo(small.room.rt60S['500'] * k, 8);
        expect(large.room.volumeM3).toBeCloseTo(small.room.volumeM3 * k ** 3, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('has at 1/k of a frequency the level it had there, 20 log10 k lower', () => {
    fc.assert(
      fc.property(cases, ({ k, x, z, admittance }) => {
        const levels = (size: number) => {
          const project = scaled(size, x, z, admittance);
          const frequenciesHz = METRIC_FREQUENCIES_HZ.map((hz) => hz / size);
          const field = createRoomField(roomSpec(project), 'fine');
          const at = (list: Float64Array) => field.unitResponses(sourceTriples(project), earTriples(project), list);
          const units = { frequenciesHz, nominal: at(frequenciesHz), low: null, high: null };
          return bassReadout(project, units, at(METRIC_FREQUENCIES_HZ)).seats.map(({ levelDb }) => levelDb);
        };
        const [small, large] = [levels(1), levels(k)];
        small.forEach((level, seat) => {
          const strongest = Math.max(...level);
          level.forEach((db, f) => {
            // The engine keeps terms to 1e-4 of the field, and how many that is may change with size: 0.02 dB off nulls.
            if (db > strongest - 25) expect(Math.abs(large[seat][f] - (db - 20 * Math.log10(k)))).toBeLessThan(0.02);
          });
        });
      }),
      { numRuns: 15 },
    );
  });
});
