import { describe, expect, it } from 'vitest';
import { bassReadout } from '../../../src/analysis/bass.ts';
import { floorGrid } from '../../../src/analysis/bass-floor.ts';
import { findings } from '../../../src/analysis/findings.ts';
import { geometryReadout } from '../../../src/analysis/geometry.ts';
import { METRIC_FREQUENCIES_HZ } from '../../../src/analysis/inputs.ts';
import { modeReadouts } from '../../../src/analysis/modes.ts';
import type { BassReadout } from '../../../src/analysis/types.ts';
import type { UnitResponses } from '../../../src/engines/bass/room-field.ts';
import type { Project } from '../../../src/model/project.ts';
import { demo, plain } from './rooms.ts';

const subwoofer = (id: string, over: object = {}) => ({ id, atM: [0, 0.2, 0.3], ...over });
const twoSeats = [
  {
    id: 'only',
    eyeZM: 3.2,
    seats: [
      { id: 'a', xM: -0.5 },
      { id: 'b', xM: 0.5 },
    ],
  },
];

/** Made-up unit responses: the same real number for a source and receiver at every frequency. */
const units = (values: readonly (readonly number[])[], frequencies: number): UnitResponses => ({
  sources: values.length,
  receivers: values[0]?.length ?? 0,
  frequencies,
  re: Float64Array.from(
    values.flatMap((row) => row.flatMap((value) => Array.from({ length: frequencies }, () => value))),
  ),
  im: new Float64Array(values.length * (values[0]?.length ?? 0) * frequencies),
  moved: new Uint8Array(values.length * (values[0]?.length ?? 0)),
});

const hz = METRIC_FREQUENCIES_HZ;
const read = (
  project: Project,
  nominal: readonly (readonly number[])[],
  low: UnitResponses | null = null,
  high: UnitResponses | null = null,
) => bassReadout(project, { frequenciesHz: hz, nominal: units(nominal, hz.length), low, high });

describe('bass at the seats', () => {
  const project = plain({ rows: twoSeats, subwoofers: [subwoofer('S1'), subwoofer('S2', { atM: [0, 0.2, 5] })] });

  it('adds subwoofers as pressures, with gain and polarity', () => {
    const both = read(project, [
      [1, 0.5],
      [1, 0.5],
    ]);
    expect(both.seats[0].levelDb[7]).toBeCloseTo(20 * Math.log10(2), 9);
    expect(both.seats[1].levelDb[7]).toBeCloseTo(0, 9);
    const [first, second] = project.subwoofers;
    const quieter = { ...project, subwoofers: [first, { ...second, gainDb: -20 * Math.log10(2), inverted: true }] };
    expect(
      read(quieter, [
        [1, 0.5],
        [1, 0.5],
      ]).seats[0].levelDb[0],
    ).toBeCloseTo(-20 * Math.log10(2), 9);
  });

  it('a delay turns the phase: half a period cancels', () => {
    const [first, second] = project.subwoofers;
    const late = { ...project, subwoofers: [first, { ...second, delayMs: 1000 / (2 * 40) }] };
    const { seats } = read(late, [
      [1, 1],
      [1, 1],
    ]);
    expect(hz[24]).toBeCloseTo(40, 9);
    expect(seats[0].levelDb[24]).toBeLessThan(-200);
    expect(seats[0].levelDb[0]).toBeCloseTo(20 * Math.log10(Math.SQRT2), 6);
  });

  it('the spread has divisor n - 1: two seats 6.02 dB apart spread 4.26 dB', () => {
    const bass = read(project, [
      [1, 0.5],
      [0, 0],
    ]);
    const apart = 20 * Math.log10(2);
    expect(bass.spreadDb?.[3]).toBeCloseTo(apart / Math.SQRT2, 9);
    expect(bass.meanSpreadDb).toBeCloseTo(apart / Math.SQRT2, 9);
    expect(bass.meanVarianceDb2).toBeCloseTo(apart ** 2 / 2, 9);
    expect(bass.maxMinDb).toBeCloseTo(apart, 9);
  });

  it('bounds are the least and the greatest of the three solves; null until both are there', () => {
    const values = (level: number) =>
      units(
        [
          [level, level],
          [0, 0],
        ],
        hz.length,
      );
    const bounded = read(
      project,
      [
        [1, 1],
        [0, 0],
      ],
      values(2),
      values(0.5),
    );
    expect(bounded.seats[0].lowDb?.[0]).toBeCloseTo(-20 * Math.log10(2), 9);
    expect(bounded.seats[0].highDb?.[0]).toBeCloseTo(20 * Math.log10(2), 9);
    const outer = read(
      project,
      [
        [1, 1],
        [0, 0],
      ],
      values(2),
      values(3),
    );
    expect(outer.seats[0].lowDb?.[0]).toBeCloseTo(0, 9);
    expect(
      read(
        project,
        [
          [1, 1],
          [0, 0],
        ],
        values(2),
      ).seats[0].lowDb,
    ).toBeNull();
  });

  it('one seat has no spread, no subwoofer no sound', () => {
    const single = bassReadout(plain({ subwoofers: [subwoofer('S1')] }), {
      frequenciesHz: hz,
      nominal: units([[1]], hz.length),
      low: null,
      high: null,
    });
    expect([single.spreadDb, single.meanSpreadDb, single.meanVarianceDb2, single.maxMinDb]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    const silent = bassReadout(plain({ rows: twoSeats }), {
      frequenciesHz: hz,
      nominal: { ...units([], hz.length), receivers: 2 },
      low: null,
      high: null,
    });
    expect(silent.seats[1].levelDb[0]).toBe(-300);
    expect([silent.spreadDb, silent.meanSpreadDb]).toEqual([null, null]);
  });

  it('keeps the figures to the fixed grid whatever frequencies are asked for', () => {
    const asked = Float64Array.from([30, 60, 90]);
    const nominal = units(
      [
        [1, 1],
        [0, 0],
      ],
      3,
    );
    const grid = units(
      [
        [1, 0.5],
        [0, 0],
      ],
      hz.length,
    );
    const bass = bassReadout(project, { frequenciesHz: asked, nominal, low: null, high: null }, grid);
    expect(bass.spreadDb).toHaveLength(3);
    expect(bass.maxMinDb).toBeCloseTo(20 * Math.log10(2), 9);
    expect(() => bassReadout(project, { frequenciesHz: asked, nominal, low: null, high: null })).toThrow('grid');
  });

  it('refuses responses of another set of subwoofers', () => {
    expect(() => read(project, [[1, 1]])).toThrow('other subwoofers');
  });
});

describe('the bass floor', () => {
  const project = demo();

  it('spans the room from wall to wall about 6 cm apart, 64 by 96 points at least', () => {
    const { xM, zM } = floorGrid(project);
    expect([xM[0], xM.at(-1), zM[0], zM.at(-1)]).toEqual([-2.15, 2.15, 0, 6.1]);
    expect(xM[1] - xM[0]).toBeLessThanOrEqual(0.06);
    const small = floorGrid(plain());
    expect(small.xM.length).toBeGreaterThanOrEqual(64);
    expect(small.zM.length).toBeGreaterThanOrEqual(96);
  });
});

it('modes turn their orders to the document’s x, z and y', () => {
  const [mode] = modeReadouts([{ hz: 30, order: [1, 2, 3], dampedHz: 29.9, decayS: 0.5 }]);
  expect(mode).toEqual({ hz: 30, order: [1, 3, 2], decayS: 0.5 });
});

describe('findings about bass', () => {
  const output = { bandsDb: { '50': 110 }, space: 'half', kind: 'peak' };
  const loud = (over: object, gainDb = 0) =>
    plain({
      subwoofers: [
        subwoofer('S1', { maxOutput: { ...output, ...over } }),
        subwoofer('S2', { gainDb, maxOutput: output }),
      ],
    });
  const flat = (levelDb: number): BassReadout => ({
    frequenciesHz: hz,
    seats: [{ id: 'a', levelDb: new Float64Array(hz.length).fill(levelDb), lowDb: null, highDb: null }],
    spreadDb: null,
    meanSpreadDb: null,
    meanVarianceDb2: null,
    maxMinDb: null,
  });
  const gap = (project: Project, levelDb: number) =>
    findings(project, geometryReadout(project), flat(levelDb)).find(({ rule }) => rule === 'bass-level-reached')!;

  it('turns a ground-plane figure into free field (-6.02 dB), an rms one into a peak (+3.01 dB)', () => {
    // Asked for: 115 - 10 = 105 dB peak. 110 - 6.02 + 12 dB of room = 115.98 dB.
    expect(gap(loud({}), 12).value).toBeCloseTo(110 - 6.0206 + 12 - 105, 3);
    expect(gap(loud({ space: 'full' }), 12).value).toBeCloseTo(110 - 6.0206 + 12 - 105, 3);
    expect(gap(loud({ kind: 'rms', bandsDb: { '50': 105 } }), 12).value).toBeCloseTo(
      105 + 3.0103 - 6.0206 + 12 - 105,
      3,
    );
  });

  it('the first subwoofer at its limit holds the set back, its own gain counted', () => {
    expect(gap(loud({}, 4), 12).value).toBeCloseTo(110 - 6.0206 - 4 + 12 - 105, 3);
  });

  it('says where the room that is computed is not the room described', () => {
    const project = plain({
      room: {
        plan: { shape: 'rectangle', widthM: 4, lengthM: 6 },
        ceiling: { shape: 'flat', heightM: 2.5 },
        surfaces: { ceiling: { absorption: { '125': 0.97 } }, floor: { absorption: { '125': 0.9 } } },
        openings: [
          { id: 'arch', kind: 'opening', surface: 'left', fromM: 1, widthM: 1, heightM: 2 },
          { id: 'door', kind: 'door', surface: 'back', fromM: 1, widthM: 1, heightM: 2 },
        ],
      },
    });
    const list = findings(project, geometryReadout(project), null).filter(({ rule }) => rule.startsWith('bass-'));
    expect(list.map(({ rule, item, verdict, weight }) => [rule, item, verdict, weight])).toEqual([
      ['bass-sealed', 'arch', 'met', 0],
      ['bass-absorption', 'ceiling', 'met', 0],
    ]);
  });

  it('waits for the bass', () => {
    const project = loud({});
    const list = findings(project, geometryReadout(project), null);
    expect(list.filter(({ rule }) => rule.startsWith('bass-'))).toEqual([]);
  });
});
