import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bassReadout } from '../../src/analysis/bass.ts';
import { findings } from '../../src/analysis/findings.ts';
import { geometryReadout } from '../../src/analysis/geometry.ts';
import { earTriples, METRIC_FREQUENCIES_HZ, roomSpec, sourceTriples } from '../../src/analysis/inputs.ts';
import type { GeometryReadout } from '../../src/analysis/types.ts';
import { createRoomField } from '../../src/engines/bass/create-room-field.ts';
import type { Project } from '../../src/model/project.ts';
import { projectOf } from '../unit/analysis/rooms.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

interface Drawn {
  readonly widthM: number;
  readonly lengthM: number;
  readonly heightM: number;
  readonly left: number;
  readonly right: number;
  readonly seats: readonly number[];
  readonly facingDeg: number;
  readonly backFloorM: number;
  readonly speakers: readonly { x: number; y: number; z: number; pattern: string }[];
  readonly subwoofers: readonly { x: number; z: number; gainDb: number }[];
}

const drawn: fc.Arbitrary<Drawn> = fc.record({
  widthM: real(3.2, 7),
  lengthM: real(5, 9),
  heightM: real(2.4, 3.5),
  left: real(0.005, 0.3),
  right: real(0.005, 0.3),
  seats: fc.uniqueArray(fc.integer({ min: -2, max: 2 }), { minLength: 1, maxLength: 3 }),
  facingDeg: real(-30, 30),
  backFloorM: real(0, 0.4),
  speakers: fc.array(
    fc.record({
      x: real(-0.45, 0.45),
      y: real(0.3, 2.2),
      z: real(0.05, 0.95),
      pattern: fc.constantFrom('box', 'omni', 'dipole', 'bipole'),
    }),
    { minLength: 1, maxLength: 4 },
  ),
  subwoofers: fc.array(fc.record({ x: real(-0.4, 0.4), z: real(0.05, 0.95), gainDb: real(-6, 3) }), {
    minLength: 1,
    maxLength: 3,
  }),
});

/** The room as drawn (side 1) or as a mirror on its middle line shows it (side -1). */
const room = (d: Drawn, side: 1 | -1, facingDeg = d.facingDeg): Project => {
  const wall = (admittance: number) => ({ admittance: [admittance, 0] });
  const half = d.widthM / 2;
  const seat = (row: string) => (place: number) => ({
    id: `${row}${place}`,
    xM: side * place * 0.55,
    facingDeg: side * facingDeg,
  });
  return projectOf({
    format: 'parterre/project',
    version: 1,
    room: {
      plan: { shape: 'rectangle', widthM: d.widthM, lengthM: d.lengthM },
      ceiling: { shape: 'flat', heightM: d.heightM },
      surfaces: { left: wall(side === 1 ? d.left : d.right), right: wall(side === 1 ? d.right : d.left) },
      objects: [
        {
          id: 'post',
          kind: 'box',
          name: '',
          minM: side === 1 ? [0.3, 0, 1] : [-0.6, 0, 1],
          maxM: side === 1 ? [0.6, 1.1, 1.2] : [-0.3, 1.1, 1.2],
        },
      ],
    },
    picture: { widthM: 1.5, centreXM: side * 0.1 },
    rows: [
      { id: 'f', eyeZM: d.lengthM * 0.45, seats: d.seats.map(seat('f')) },
      { id: 'b', eyeZM: d.lengthM * 0.45 + 1.6, floorM: d.backFloorM, seats: d.seats.map(seat('b')) },
    ],
    referenceSeat: `f${d.seats[0]}`,
    loudspeakers: d.speakers.map(({ x, y, z, pattern }, i) => ({
      id: `s${i}`,
      channel: i === 0 ? 'M+000' : side === 1 ? 'M+090' : 'M-090',
      atM: [side * 2 * half * x, y, d.lengthM * z],
      pattern,
      // A dipole aimed straight at an ear has no side its null would sooner face: it hangs along its wall instead.
      ...(pattern === 'dipole' ? {} : { aim: 'reference' }),
    })),
    subwoofers: d.subwoofers.map(({ x, z, gainDb }, i) => ({
      id: `w${i}`,
      atM: [side * 2 * half * x, 0.2, d.lengthM * z],
      gainDb,
    })),
  });
};

/** Every number of a readout under its path; azimuths and x coordinates turned over for the mirror image. */
const numbers = (readout: GeometryReadout, side: 1 | -1): Record<string, number | null> => {
  const found: Record<string, number | null> = {};
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'number' || value === null) {
      const turned = /azimuthDeg$|(eyeM|earM)\.0$/.test(path);
      found[path] = value === null ? null : turned ? side * value : value;
    } else if (typeof value === 'object')
      for (const [key, inner] of Object.entries(value)) visit(inner, `${path}.${key}`);
  };
  visit(readout, '');
  return found;
};

describe('a room and its mirror image', () => {
  it('have mirrored readouts', () => {
    fc.assert(
      fc.property(drawn, (d) => {
        // A dipole on the middle line has its lobes to left and right: which is its front no mirror can tell.
        fc.pre(d.speakers.every(({ pattern, x }) => pattern !== 'dipole' || Math.abs(x) > 1e-6));
        // Chairs face the picture: the drawn skin of a turned figure is not quite the mirror image of one turned the other way.
        const here = numbers(geometryReadout(room(d, 1, 0)), 1);
        const there = numbers(geometryReadout(room(d, -1, 0)), -1);
        expect(Object.keys(there)).toEqual(Object.keys(here));
        for (const [path, value] of Object.entries(here)) {
          const other = there[path];
          if (value === null || other === null) expect([path, other]).toEqual([path, value]);
          else {
            // A share is a count of cells: one cell along one outline across the grid may turn, 32 of 32 x 32 or 320 of
            // 320 x 180, because mirrored triangles in single precision do not round alike. An azimuth of 180 is -180.
            const share = path.endsWith('visibleFraction');
            const slack = share ? (path.includes('loudspeakers') ? 1 / 32 : 1 / 180) : 1e-7;
            const apart = Math.abs(value - other);
            expect(Math.min(apart, Math.abs(apart - 360)), path).toBeLessThan(slack);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('have the same bass at mirrored seats', () => {
    fc.assert(
      fc.property(drawn, (d) => {
        const bass = ([1, -1] as const).map((side) => {
          const project = room(d, side);
          const nominal = createRoomField(roomSpec(project), 'fine').unitResponses(
            sourceTriples(project),
            earTriples(project),
            METRIC_FREQUENCIES_HZ,
          );
          return bassReadout(project, { frequenciesHz: METRIC_FREQUENCIES_HZ, nominal, low: null, high: null });
        });
        bass[0].seats.forEach(({ levelDb }, index) => {
          const strongest = Math.max(...levelDb);
          levelDb.forEach((level, f) => {
            // Off deep nulls, where a rounding of 1e-12 of the field shows.
            if (level > strongest - 60) expect(Math.abs(level - bass[1].seats[index].levelDb[f])).toBeLessThan(1e-4);
          });
        });
      }),
      { numRuns: 15 },
    );
  });
});

describe('any room', () => {
  it('has shares from 0 to 1, and never more in view with a tall person before a short one', () => {
    fc.assert(
      fc.property(drawn, (d) => {
        for (const { picture, loudspeakers } of geometryReadout(room(d, 1)).seats) {
          const shares = [
            picture.visibleFraction,
            picture.worstCase.visibleFraction,
            ...loudspeakers.map((one) => one.visibleFraction),
          ];
          for (const share of shares) expect(share >= 0 && share <= 1).toBe(true);
          if (picture.clearanceMm !== null) expect(picture.worstCase.clearanceMm).toBeLessThan(picture.clearanceMm);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('gives the same readout again, whatever was asked in between', () => {
    fc.assert(
      fc.property(drawn, drawn, (a, b) => {
        const first = geometryReadout(room(a, 1));
        geometryReadout(room(b, 1));
        expect(geometryReadout(room(a, 1))).toEqual(first);
      }),
      { numRuns: 25 },
    );
  });

  it('has findings with a sentence each, and ids of their own', () => {
    fc.assert(
      fc.property(drawn, fc.constantFrom('living', 'standard', 'diffuse'), (d, set) => {
        const project = room(d, 1);
        const list = findings({ ...project, targets: { ...project.targets, set } }, geometryReadout(project), null);
        expect(new Set(list.map(({ id }) => id)).size).toBe(list.length);
        for (const { text } of list) {
          expect(text).toMatch(/^\S.*\.$/s);
          expect(text).not.toMatch(/NaN|undefined|null|Infinity|-0 /);
        }
      }),
      { numRuns: 40 },
    );
  });
});
