import { describe, expect, it } from 'vitest';
import { absorptionAt, octaveAbsorption, wallAdmittance } from '../../../src/analysis/inputs/treatment.ts';
import {
  bassFieldKey,
  bassPlacesKey,
  type Damping,
  defaultFrequenciesHz,
  driveKey,
  earTriples,
  geometryKey,
  opensWithSpreadGrid,
  roomSpec,
  sourceTriples,
} from '../../../src/analysis/inputs.ts';
import { type BoxSpec, isPrism } from '../../../src/engines/bass/room-field.ts';
import type { Project } from '../../../src/model/project.ts';
import { demo, plain } from './rooms.ts';

/** The diffuse-incidence integral by midpoint sum over mu = cos of the angle of incidence: 2 int alpha(mu) mu dmu. */
const diffuse = (re: number, im: number): number => {
  const steps = 200_000;
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const mu = (i + 0.5) / steps;
    sum += ((4 * re * mu) / ((mu + re) ** 2 + im * im)) * mu;
  }
  return (2 * sum) / steps;
};

const surfaces = (front: unknown) => ({
  room: {
    plan: { shape: 'rectangle', widthM: 4, lengthM: 6 },
    ceiling: { shape: 'flat', heightM: 2.5 },
    surfaces: { front },
  },
});

describe('what a surface is made of', () => {
  it('absorption at the lowest band given becomes the admittance that absorbs as much', () => {
    const of63 = wallAdmittance({ absorption: { '63': 0.2, '125': 0.4 } }, 'brick');
    expect(diffuse(...(of63 as [number, number]))).toBeCloseTo(0.2, 6);
    const of125 = wallAdmittance({ absorption: { '125': 0.4, '250': 0.1 } }, 'brick');
    expect(diffuse(...(of125 as [number, number]))).toBeCloseTo(0.4, 6);
    expect(of125[1]).toBe(0);
  });

  it('a finish takes its table at 125 Hz: plasterboard on studs, 0.29 (a handbook, read)', () => {
    expect(diffuse(...(wallAdmittance({ finish: 'plasterboard-on-studs' }, 'brick') as [number, number]))).toBeCloseTo(
      0.29,
      6,
    );
  });

  it('an admittance is taken as it is, and alone it gives absorption by the same integral', () => {
    expect(wallAdmittance({ admittance: [0.02, 0.3], absorption: { '125': 0.9 } }, 'brick')).toEqual([0.02, 0.3]);
    const values = octaveAbsorption({ admittance: [0.05, 0] }, 'brick');
    expect(values[0]).toBeCloseTo(diffuse(0.05, 0), 6);
    expect(values[5]).toBe(values[0]);
    expect(octaveAbsorption({ admittance: [0.1, 0.4] }, 'brick')[2]).toBeCloseTo(diffuse(0.1, 0.4), 6);
    expect(octaveAbsorption({ admittance: [0.05, 0], finish: 'brick' }, '')[0]).toBe(0.03);
  });

  it('bands between those given lie on a straight line over the logarithm of frequency; past the ends they are held', () => {
    const bands = { '125': 0.1, '500': 0.5 };
    expect(absorptionAt(bands, 250)).toBeCloseTo(0.3, 12);
    expect(absorptionAt(bands, 63)).toBe(0.1);
    expect(absorptionAt(bands, 4000)).toBe(0.5);
  });

  it('absorption no real admittance has takes the greatest', () => {
    const [re] = wallAdmittance({ absorption: { '125': 1 } }, 'brick');
    // Maximum of 8 b (1 + b / (1 + b) - 2 b ln(1 + 1 / b)): 0.951 near b = 0.64 (derived).
    expect(re).toBeGreaterThan(0.6);
    expect(re).toBeLessThan(0.68);
  });
});

const boxOf = (project: Project, damping: Damping = 'nominal'): BoxSpec => {
  const spec = roomSpec(project, damping);
  if (isPrism(spec)) throw new TypeError('the room is no box');
  return spec;
};

describe('the box', () => {
  it('turns axes once: left wall x = 0, the front wall z = 0, walls in the engine’s order', () => {
    const project = plain(surfaces({ admittance: [0.07, 0.01] }));
    const spec = boxOf(project);
    expect(spec.sizeM).toEqual([4, 2.5, 6]);
    expect(spec.admittance[4]).toEqual([0.07, 0.01]);
    expect(spec.admittance[5]).not.toEqual([0.07, 0.01]);
    const ears = earTriples(project);
    expect([...ears].map((v) => Number(v.toFixed(9)))).toEqual([2, 1.11, 3.3]);
    const sources = sourceTriples(demo());
    expect(sources.length).toBe(12);
    expect(sources[0]).toBeCloseTo(-1.88 + 2.15, 12);
    expect([sources[1], sources[2]]).toEqual([0.22, 0.27]);
  });

  it('bounds the damping by sqrt(3) either way: real parts only', () => {
    const project = plain(surfaces({ admittance: [0.09, 0.2] }));
    expect(boxOf(project, 'low').admittance[4][0]).toBeCloseTo(0.09 / Math.sqrt(3), 12);
    expect(boxOf(project, 'high').admittance[4][0]).toBeCloseTo(0.09 * Math.sqrt(3), 12);
    expect(boxOf(project, 'high').admittance[4][1]).toBe(0.2);
  });

  it('warms the air: 343.2 m/s at 20 degrees, 331.3 at 0', () => {
    expect(roomSpec(plain()).soundSpeed).toBeCloseTo(343.2, 9);
    expect(roomSpec(plain({ air: { temperatureC: 0 } })).soundSpeed).toBeCloseTo(331.29, 2);
  });

  it('default frequencies are 80, 24 to the octave from 20 Hz, and open with the spread grid', () => {
    const hz = defaultFrequenciesHz();
    expect(hz.length).toBe(80);
    expect(hz[24]).toBeCloseTo(40, 9);
    expect(hz[48]).toBeCloseTo(80, 9);
    expect(opensWithSpreadGrid(hz)).toBe(true);
    expect(opensWithSpreadGrid(hz.slice(0, 40))).toBe(false);
    expect(opensWithSpreadGrid(hz.map((f) => f + 1))).toBe(false);
  });
});

describe('inputs keys change exactly when inputs change', () => {
  const keys = { field: bassFieldKey, places: bassPlacesKey, drive: driveKey, geometry: geometryKey };
  const changed = (next: Project): string[] =>
    Object.entries(keys)
      .filter(([, key]) => key(next) !== key(demo()))
      .map(([name]) => name);
  const base = demo();
  const first = <T>(list: readonly T[], over: Partial<T>): T[] =>
    list.map((one, i) => (i === 0 ? { ...one, ...over } : one));

  it('a subwoofer’s place: only the places', () => {
    expect(changed({ ...base, subwoofers: first(base.subwoofers, { atM: [0, 0.2, 0.3] }) })).toEqual(['places']);
  });

  it('gain, delay, polarity: only the drive', () => {
    for (const over of [{ gainDb: -3 }, { delayMs: 4 }, { inverted: true }])
      expect(changed({ ...base, subwoofers: first(base.subwoofers, over) })).toEqual(['drive']);
  });

  it('names, notes, units, locks, the level asked for, the high-pass: nothing', () => {
    expect(changed({ ...base, name: 'Another', notes: 'n', display: { units: 'imperial' } })).toEqual([]);
    expect(changed({ ...base, listening: { reReferenceDb: 0 } })).toEqual([]);
    expect(changed({ ...base, subwoofers: first(base.subwoofers, { locked: true, highPassHz: 30 }) })).toEqual([]);
    expect(changed({ ...base, loudspeakers: first(base.loudspeakers, { locked: true }) })).toEqual([]);
    const objects = first(base.room.objects, { name: 'Tray' });
    expect(changed({ ...base, room: { ...base.room, objects } })).toEqual([]);
  });

  it('a projector hangs in the way: geometry; its light does not', () => {
    const projector = { lumens: 3000, calibratedFraction: 0.6, atM: [0, 2.45, 5.5] as [number, number, number] };
    expect(changed({ ...base, picture: { ...base.picture, projector } })).toEqual([]);
    const moved = { ...projector, atM: [0, 2.2, 4] as [number, number, number] };
    expect(changed({ ...base, picture: { ...base.picture, projector: moved } })).toEqual(['geometry']);
  });

  it('a seat: places and geometry; a loudspeaker: geometry; a finish: field and geometry', () => {
    const rows = base.rows.map((row, i) => (i === 0 ? { ...row, eyeZM: 3.1 } : row));
    expect(changed({ ...base, rows })).toEqual(['places', 'geometry']);
    expect(changed({ ...base, loudspeakers: first(base.loudspeakers, { atM: [-1.3, 1.1, 0.2] }) })).toEqual([
      'geometry',
    ]);
    const room = { ...base.room, surfaces: { ...base.room.surfaces, back: { finish: 'brick' } } };
    expect(changed({ ...base, room })).toEqual(['field', 'geometry']);
    expect(changed({ ...base, air: { temperatureC: 25 } })).toEqual(['field', 'geometry']);
  });
});
