import { describe, expect, it } from 'vitest';
import { bassNotes } from '../../../src/analysis/bass-notes.ts';
import { roomReadout } from '../../../src/analysis/geometry/room.ts';
import { bassFieldKey, geometryKey } from '../../../src/analysis/inputs/keys.ts';
import { roomSpec } from '../../../src/analysis/inputs/room-spec.ts';
import { asStated } from '../../../src/analysis/inputs/stated-times.ts';
import { isPrism } from '../../../src/engines/bass/room-field.ts';
import { demo, plain } from './rooms.ts';

const BOX = { plan: { shape: 'rectangle', widthM: 4, lengthM: 6 }, ceiling: { shape: 'flat', heightM: 2.5 } };
const [VOLUME_M3, SURFACE_M2, SPEED_MS] = [60, 98, 343.2];

/** Eyring turned round: the mean absorption that makes a time (textbook formula, derived here by hand). */
const meanFor = (timeS: number): number =>
  1 - Math.exp((-24 * Math.LN10 * VOLUME_M3) / (SPEED_MS * SURFACE_M2 * timeS));

const everywhere = (treatment: object) =>
  Object.fromEntries(['front', 'back', 'left', 'right', 'floor', 'ceiling'].map((name) => [name, treatment]));
const room = (over: object) => plain({ room: { ...BOX, ...over } });

const wallsOf = (project: ReturnType<typeof room>) => {
  const spec = roomSpec(project);
  if (isPrism(spec)) throw new Error('no box');
  return spec.admittance;
};

describe('damping stated by reverberation time', () => {
  it('makes Eyring’s times those that are stated, whatever the surfaces, patches and openings are', () => {
    const { room: real, ...rest } = demo();
    const reverberationS = { '125': 0.62, '250': 0.48, '500': 0.31, '1000': 0.33, '2000': 0.42, '4000': 0.5 };
    const project = { ...rest, room: { ...real, reverberationS } };
    expect(roomReadout(demo()).rt60S['125']).not.toBeCloseTo(0.62, 1);
    for (const [octave, timeS] of Object.entries(reverberationS))
      expect(roomReadout(project).rt60S[octave]).toBeCloseTo(timeS, 9);
  });

  it('leaves what each surface is against the others: of two, the softer stays the softer', () => {
    const { surfaces } = asStated(
      room({ surfaces: { left: { finish: 'brick' } }, reverberationS: { '125': 0.4 } }),
    ).room;
    const [hard, soft] = [surfaces.left?.absorption?.['125'] ?? 1, surfaces.right?.absorption?.['125'] ?? 0];
    expect(hard).toBeGreaterThan(0.03);
    expect(soft).toBeGreaterThan(2 * hard);
    expect(soft).toBeLessThan(1);
  });

  it('an octave without a time follows the nearest that has one in proportion', () => {
    const own = roomReadout(room({})).rt60S;
    const stated = roomReadout(room({ reverberationS: { '500': own['500'] / 2 } })).rt60S;
    for (const octave of ['125', '1000', '4000']) expect(stated[octave]).toBeCloseTo(own[octave] / 2, 9);
  });

  it('reaches the bass through the lowest octave: even walls get the admittance of the mean absorption', () => {
    const byTime = wallsOf(room({ reverberationS: { '125': 0.7 }, surfaces: everywhere({ finish: 'brick' }) }));
    const byOctave = wallsOf(room({ surfaces: everywhere({ absorption: { '125': meanFor(0.7) } }) }));
    byTime.forEach(([real], wall) => {
      expect(real).toBeCloseTo(byOctave[wall][0], 9);
    });
    const at63 = wallsOf(
      room({ reverberationS: { '63': 1.4, '125': 0.7 }, surfaces: everywhere({ finish: 'brick' }) }),
    );
    const of63 = wallsOf(room({ surfaces: everywhere({ absorption: { '63': meanFor(1.4) } }) }));
    expect(at63[0][0]).toBeCloseTo(of63[0][0], 9);
    expect(at63[0][0]).toBeLessThan(0.7 * byTime[0][0]);
  });

  it('leaves admittances and openings as they are, and says where they forbid the time', () => {
    const surfaces = { ...everywhere({ finish: 'brick' }), back: { admittance: [0.5, 0.1] } };
    const opening = { id: 'o', kind: 'opening', surface: 'left', fromM: 1, widthM: 2, bottomM: 0, heightM: 2.2 };
    const may = room({ surfaces, openings: [opening], reverberationS: { '125': 0.3 } });
    expect(asStated(may).room.surfaces.back).toEqual({ admittance: [0.5, 0.1] });
    expect(roomReadout(may).rt60S['125']).toBeCloseTo(0.3, 9);
    expect(bassNotes(may).join()).not.toContain('reverberation time');
    const mayNot = room({ surfaces, openings: [opening], reverberationS: { '125': 3 } });
    expect(bassNotes(mayNot).join()).toContain('reverberation time stated at 125 Hz');
    expect(roomReadout(mayNot).rt60S['125']).toBeLessThan(1);
  });

  it('changes what is worked out, and nothing where no time is stated', () => {
    const [without, with05, with06] = [{}, { reverberationS: { '125': 0.5 } }, { reverberationS: { '125': 0.6 } }].map(
      room,
    );
    expect(asStated(without)).toBe(without);
    expect(new Set([without, with05, with06].map(bassFieldKey)).size).toBe(3);
    expect(new Set([without, with05, with06].map(geometryKey)).size).toBe(3);
  });

  it('follows the air, and is worked out once for a room however often things in it move', () => {
    const project = room({ reverberationS: { '125': 0.5 } });
    const moved = { ...project, rows: project.rows.map((row) => ({ ...row, eyeZM: row.eyeZM + 0.1 })) };
    expect(asStated(moved).room).toBe(asStated(project).room);
    const warm = { ...project, air: { temperatureC: 35 } };
    expect(asStated(warm).room).not.toEqual(asStated(project).room);
    expect(roomReadout(warm).rt60S['125']).toBeCloseTo(0.5, 9);
  });

  it('refuses a time no room has, naming the field and what it may be', () => {
    expect(() => room({ reverberationS: { '125': 0.01 } })).toThrow(/reverberationS/);
    expect(() => room({ reverberationS: {} })).toThrow(/reverberationS/);
  });
});
