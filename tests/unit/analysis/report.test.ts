import { describe, expect, it } from 'vitest';
import { parseFrequencies } from '../../../src/analysis/evaluate/frequencies.ts';
import { evaluateProject } from '../../../src/analysis/evaluate.ts';
import { rounded, roundedDeep } from '../../../src/analysis/report-rounding.ts';
import { demo, plain } from './rooms.ts';

/** The contract's fields as a shape: a string names a type, "?" adds null. Typed from design/contract.md, "Report". */
const picture = {
  distanceM: 'number',
  distanceHeights: 'number',
  horizontalDeg: 'number',
  verticalDeg: 'number',
  offAxisDeg: 'number',
  topElevationDeg: 'number',
  centreElevationDeg: 'number',
  pixelsPerDegree: 'number',
  visibleFraction: 'number',
  clearanceMm: 'number?',
  worstCase: { visibleFraction: 'number', clearanceMm: 'number?' },
};
const loudspeaker = {
  id: 'string',
  azimuthDeg: 'number',
  elevationDeg: 'number',
  distanceM: 'number',
  arrivalMs: 'number',
  offAxisDeg: 'number',
  levelDb: 'number',
  maxLevelDb: 'number',
  visibleFraction: 'number',
};
const contract = {
  format: 'string',
  version: 'number',
  engine: { version: 'string' },
  inputSha256: 'string',
  room: {
    volumeM3: 'number',
    surfaceM2: 'number',
    rt60S: { '125': 'number', '250': 'number', '500': 'number', '1000': 'number', '2000': 'number', '4000': 'number' },
    schroederHz: 'number',
    modes: [{ hz: 'number', order: ['number'], decayS: 'number' }],
  },
  picture: { widthM: 'number', heightM: 'number', diagonalM: 'number' },
  seats: [
    {
      id: 'string',
      eyeM: ['number'],
      earM: ['number'],
      picture,
      loudspeakers: [loudspeaker],
      bass: { levelDb: ['number'], lowDb: ['number'], highDb: ['number'] },
    },
  ],
  bass: {
    frequenciesHz: ['number'],
    spreadDb: ['number'],
    meanSpreadDb: 'number',
    meanVarianceDb2: 'number',
    maxMinDb: 'number',
  },
  findings: [
    {
      id: 'string',
      rule: 'string',
      set: 'string',
      seat: 'string?',
      item: 'string?',
      value: 'number?',
      unit: 'string',
      range: ['number?'],
      closeRange: ['number?'],
      verdict: 'string',
      weight: 'number',
      text: 'string',
      source: 'string',
    },
  ],
};

/** Where a value departs from a shape. Lists must hold something, so that nothing passes by being empty. */
const departures = (value: unknown, shape: unknown, path: string): string[] => {
  if (typeof shape === 'string') {
    const nullable = shape.endsWith('?');
    const type = shape.replace('?', '');
    if (value === null) return nullable ? [] : [`${path} is null`];
    const finite = type !== 'number' || Number.isFinite(value);
    return typeof value === type && finite ? [] : [`${path} is ${typeof value}`];
  }
  if (Array.isArray(shape)) {
    if (!Array.isArray(value) || value.length === 0) return [`${path} is no list or empty`];
    return value.flatMap((entry, index) => departures(entry, shape[0], `${path}[${index}]`));
  }
  if (typeof value !== 'object' || value === null) return [`${path} is no object`];
  return Object.entries(shape as object).flatMap(([key, inner]) =>
    Object.hasOwn(value, key)
      ? departures((value as Record<string, unknown>)[key], inner, `${path}.${key}`)
      : [`${path}.${key} is missing`],
  );
};

const report = JSON.parse(JSON.stringify(evaluateProject(demo(), null, 'f'.repeat(64))));

describe('the report', () => {
  it('has every field of the contract, of its type', () => {
    expect(departures(report, contract, 'report')).toEqual([]);
  });

  it('says what it is, in the contract’s words', () => {
    expect([report.format, report.version, report.inputSha256]).toEqual(['parterre/report', 1, 'f'.repeat(64)]);
    expect(report.seats.map(({ id }: { id: string }) => id)).toEqual([
      'front-1',
      'front-2',
      'front-3',
      'back-1',
      'back-2',
      'back-3',
      'back-4',
    ]);
    for (const finding of report.findings) {
      expect(['met', 'close', 'missed']).toContain(finding.verdict);
      expect([finding.range.length, finding.closeRange.length]).toEqual([2, 2]);
      expect(Object.keys(finding)).not.toContain('causes');
    }
  });

  it('gives 80 frequencies a seat by default, bounds holding the level', () => {
    const { frequenciesHz, spreadDb } = report.bass;
    expect([frequenciesHz.length, spreadDb.length]).toEqual([80, 80]);
    expect(frequenciesHz[79]).toBeCloseTo(20 * 2 ** (79 / 24), 5);
    for (const { bass } of report.seats) {
      expect([bass.levelDb.length, bass.lowDb.length, bass.highDb.length]).toEqual([80, 80, 80]);
      bass.levelDb.forEach((level: number, i: number) => {
        expect(bass.lowDb[i]).toBeLessThanOrEqual(level);
        expect(bass.highDb[i]).toBeGreaterThanOrEqual(level);
      });
    }
  });

  it('lists the modes upwards, complete to 200 Hz: counted here over c/2 sqrt of squares', () => {
    const { modes } = report.room;
    let count = 0;
    for (let x = 0; x < 12; x += 1)
      for (let y = 0; y < 12; y += 1)
        for (let z = 0; z < 12; z += 1) {
          const hz = (343.2 / 2) * Math.hypot(x / 4.3, y / 2.7, z / 6.1);
          if (hz > 0 && hz <= 200) count += 1;
        }
    expect(modes.filter(({ hz }: { hz: number }) => hz <= 200)).toHaveLength(count);
    expect(modes[0].order).toEqual([0, 1, 0]);
    expect(modes[0].hz).toBeCloseTo(343.2 / 2 / 6.1, 5);
    for (let i = 1; i < modes.length; i += 1) expect(modes[i].hz).toBeGreaterThanOrEqual(modes[i - 1].hz);
  });

  it('keeps the spread figures and the findings whatever frequencies are asked for', () => {
    const asked = JSON.parse(JSON.stringify(evaluateProject(demo(), Float64Array.from([33, 66, 99]), '')));
    expect(asked.bass.frequenciesHz).toEqual([33, 66, 99]);
    expect(asked.seats[0].bass.highDb).toHaveLength(3);
    expect(asked.bass.meanSpreadDb).toBeCloseTo(report.bass.meanSpreadDb, 5);
    expect(asked.bass.maxMinDb).toBeCloseTo(report.bass.maxMinDb, 5);
    expect(asked.findings).toEqual(report.findings);
  });

  it('has null where nothing has a finite value: a room in which nothing absorbs', () => {
    const rigid = { admittance: [0, 0] };
    const surfaces = { front: rigid, back: rigid, left: rigid, right: rigid, floor: rigid, ceiling: rigid };
    const project = plain({
      room: { plan: { shape: 'rectangle', widthM: 4, lengthM: 6 }, ceiling: { shape: 'flat', heightM: 2.5 }, surfaces },
      subwoofers: [{ id: 'S1', atM: [1, 0.3, 0.4] }],
    });
    const hard = JSON.parse(JSON.stringify(evaluateProject(project, null, '')));
    expect(hard.room.rt60S['500']).toBeNull();
    expect(hard.room.schroederHz).toBeNull();
    expect(hard.room.modes[0].decayS).toBeNull();
    expect([hard.bass.spreadDb, hard.bass.meanSpreadDb, hard.bass.maxMinDb]).toEqual([null, null, null]);
    expect(hard.seats[0].bass.levelDb.every((level: unknown) => typeof level === 'number')).toBe(true);
  });
});

describe('rounding', () => {
  it('is to nine decimals, without minus nought, null where there is no number', () => {
    expect(rounded(1.23456789012)).toBe(1.23456789);
    expect(Object.is(rounded(-1e-12), 0)).toBe(true);
    expect(rounded(Number.POSITIVE_INFINITY)).toBeNull();
    expect(roundedDeep({ a: [0.12345678912, 'x', null], b: new Float64Array([1 / 3]) })).toEqual({
      a: [0.123456789, 'x', null],
      b: [0.333333333],
    });
  });

  it('lets a card that shows one decimal, or centimetres, be the report’s figure rounded', () => {
    const differing = (decimals: number): number => {
      let count = 0;
      for (let i = 0; i < 20_000; i += 1) {
        const value = ((i * 0.6180339887) % 1) * 90;
        if (value.toFixed(decimals) !== rounded(value)?.toFixed(decimals)) count += 1;
      }
      return count;
    };
    expect([differing(1), differing(2)]).toEqual([0, 0]);
  });
});

describe('--frequencies', () => {
  const list = (text: string) => {
    const parsed = parseFrequencies(text);
    return parsed.ok ? [...parsed.frequenciesHz] : parsed.why;
  };

  it('counts from start to stop, both included', () => {
    expect(list('20:40:5')).toEqual([20, 25, 30, 35, 40]);
    expect(list('20:20:5')).toEqual([20]);
    expect(list('20:21:0.1')).toHaveLength(11);
    expect(list('20:42:5')).toEqual([20, 25, 30, 35, 40]);
  });

  it('refuses the rest in words', () => {
    expect(list('40:20:5')).toContain('start');
    expect(list('20:40:0')).toContain('step');
    expect(list('0:40:5')).toContain('600 Hz');
    expect(list('20:601:1')).toContain('600 Hz');
    expect(list('20:600:0.1')).toContain('2000');
    for (const text of ['', '20', '20:40', '20:40:5:1', 'a:b:c', '20:40:-5', '1e3:2e3:1', 'NaN:40:1', '20: 40:5'])
      expect([text, typeof list(text)]).toEqual([text, 'string']);
  });
});
