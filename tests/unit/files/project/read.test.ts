import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readProject } from '../../../../src/files/project/read.ts';
import { noticeLine } from '../../../../src/words/notices.ts';
import { accepted, bytesOf, changed, linesOf, refusedLines, sampleText } from './samples.ts';

describe('reading a good project', () => {
  it('accepts the sample without a word', () => {
    const result = readProject(bytesOf(sampleText));
    expect(result.ok && result.notices).toEqual([]);
  });

  it('accepts the example that the file format is described by, and changes nothing in it', () => {
    const text = readFileSync(new URL('../../../fixtures/projects/v1/granary.json', import.meta.url), 'utf8');
    const result = readProject(bytesOf(text));
    expect(linesOf(result)).toEqual([]);
    expect(result).toMatchObject({ ok: true, notices: [], project: JSON.parse(text) });
  });

  it.each([
    ['an aim at a point', { 'loudspeakers.0.aim': [0, 1, 3] }],
    ['a dipole without an aim', { 'loudspeakers.3.pattern': 'dipole', 'loudspeakers.3.aim': undefined }],
    ['locks everywhere', { 'rows.0.locked': true, 'rows.0.seats.0.locked': true, 'subwoofers.0.locked': false }],
    ['a body of its own', { 'rows.0.seats.0.people': { eyeAbovePanM: 0.8 } }],
    ['a seat no person would build', { 'rows.0.seats.0.xM': -0.1, 'rows.0.seats.1.xM': -0.1 }],
    ['a patch without a finish', { 'room.patches': [{ id: 'p', surface: 'floor', fromM: 0, widthM: 1, heightM: 1 }] }],
  ])('accepts %s', (_, changes) => {
    expect(refusedLines(changed(changes))).toEqual([]);
  });

  it('fills in what the file leaves out with the defaults of the contract', () => {
    const least = {
      format: 'parterre/project',
      version: 1,
      room: { plan: { shape: 'rectangle', widthM: 4, lengthM: 5 }, ceiling: { shape: 'flat', heightM: 2.4 } },
      rows: [{ id: 'r', eyeZM: 3, seats: [{ id: 's', xM: 0 }] }],
    };
    const project = accepted(JSON.stringify(least));
    expect(project.people).toEqual({
      eyeAbovePanM: 0.69,
      earAbovePanM: 0.68,
      earBehindEyeM: 0.1,
      crownAboveEyeM: 0.115,
    });
    expect(project.bass).toEqual({ crossoverHz: 80, lfeGainDb: 10, lfeLimitHz: 120 });
    expect(project.listening.reReferenceDb).toBe(-10);
    expect(project.targets.set).toBe('living');
    expect(project.air.temperatureC).toBe(20);
    expect(project.loudspeakers).toEqual([]);
  });

  it('keeps reserved names without a word and other unknown keys with one notice', () => {
    const text = changed({ walk: { stops: [1, 2] }, colour: 'red', 'rows.0.seats.1.cushion': 2 });
    const result = readProject(bytesOf(text));
    if (!result.ok) throw new Error('refused');
    expect(result.project).toMatchObject({ walk: { stops: [1, 2] }, colour: 'red' });
    expect(result.project.rows[0].seats[1]).toMatchObject({ cushion: 2 });
    expect(result.notices.map(noticeLine)).toEqual([
      'Kept and written back, but not used by this version: rows[0].seats[1].cushion, colour',
    ]);
  });

  it('lists ten unknown keys and counts the rest', () => {
    const extra = Object.fromEntries(Array.from({ length: 400 }, (_, index) => [`later${index}`, index]));
    const result = readProject(bytesOf(changed(extra)));
    expect(result.ok && result.notices).toMatchObject([{ kind: 'unknown-keys', more: 390 }]);
    expect(result.ok && noticeLine(result.notices[0])).toMatch(/later9 and 390 more$/);
  });

  it('says that walls have no effect on a rectangle', () => {
    const result = readProject(bytesOf(changed({ 'room.surfaces.walls': { '2': { finish: 'brick' } } })));
    expect(result.ok && result.notices.map(({ kind }) => kind)).toEqual(['walls-without-polygon']);
  });
});

describe('a refusal names path, value and what is allowed', () => {
  const cases: [string, Parameters<typeof changed>[0], string[]][] = [
    ['a number out of range', { 'room.plan.widthM': 0.4 }, ['room.plan.widthM: holds 0.4; allowed: 1.5 to 30']],
    [
      'a number too large for its field',
      { 'air.temperatureC': 1e308 },
      ['air.temperatureC: holds 1e+308; allowed: -20 to 50'],
    ],
    ['a wrong type', { 'picture.widthM': 'wide' }, ['picture.widthM: holds "wide"; allowed: 0.3 to 12']],
    ['null', { 'picture.widthM': null }, ['picture.widthM: holds null; allowed: 0.3 to 12']],
    ['a missing value', { 'room.plan.lengthM': undefined }, ['room.plan.lengthM: holds nothing; allowed: 1.5 to 30']],
    [
      'a fraction of a pixel',
      { 'picture.pixels.0': 1.5 },
      ['picture.pixels[0]: holds 1.5; allowed: whole numbers 16 to 32768'],
    ],
    ['an unknown choice', { 'picture.kind': 'wall' }, ['picture.kind: holds "wall"; allowed: "panel", "screen"']],
    [
      'a flag that is none',
      { 'subwoofers.0.inverted': 'no' },
      ['subwoofers[0].inverted: holds "no"; allowed: true, false'],
    ],
    [
      'a point of two numbers',
      { 'loudspeakers.1.atM': [0, 1] },
      ['loudspeakers[1].atM: holds [0, 1]; allowed: a list of 3 numbers'],
    ],
    [
      'an aim that is none',
      { 'loudspeakers.2.aim': 'you' },
      ['loudspeakers[2].aim: holds "you"; allowed: "reference" or a list of 3 numbers'],
    ],
    [
      'an aim of text',
      { 'loudspeakers.2.aim': [0, 1, 'x'] },
      ['loudspeakers[2].aim[2]: holds "x"; allowed: -100 to 100'],
    ],
    [
      'a plan of no shape',
      { 'room.plan': { shape: 'round' } },
      ['room.plan.shape: holds "round"; allowed: "rectangle", "polygon"'],
    ],
    [
      'text too long',
      { name: 'n'.repeat(201) },
      [`name: holds "${'n'.repeat(58)}…; allowed: 0 to 200 characters of text`],
    ],
    [
      'no bands',
      { 'subwoofers.1.maxOutput.bandsDb': {} },
      ['subwoofers[1].maxOutput.bandsDb: holds an object; allowed: at least one band'],
    ],
    [
      'a band that is none',
      { 'subwoofers.1.maxOutput.bandsDb': { low: 90 } },
      ['subwoofers[1].maxOutput.bandsDb: holds the key "low"; allowed: a band centre in hertz'],
    ],
    ['a list that is none', { rows: { front: {} } }, ['rows: holds an object; allowed: 0 to 12 entries in a list']],
    ['another format', { format: 'garden' }, ['format: holds "garden"; allowed: "parterre/project"']],
    ['no format', { format: undefined }, ['format: holds nothing; allowed: "parterre/project"']],
    ['a newer version', { version: 3 }, ['version: holds 3; allowed: 1 (this file is from a newer Parterre)']],
    ['a version that never was', { version: 0 }, ['version: holds 0; allowed: 1']],
    ['a version in text', { version: '1' }, ['version: holds "1"; allowed: 1']],
  ];
  it.each(cases)('%s', (_, changes, lines) => {
    expect(refusedLines(changed(changes))).toEqual(lines);
  });

  it('says which label a channel must have', () => {
    const [line] = refusedLines(changed({ 'loudspeakers.0.channel': 'Left' }));
    expect(line).toMatch(/^loudspeakers\[0\]\.channel: holds "Left"; allowed: an ITU-R BS\.2051 label/);
  });

  it('escapes control and direction characters and stays on one line', () => {
    const [line] = refusedLines(changed({ 'picture.kind': 'a\u0007\u202eb\n\u2028c' }));
    expect(line).toBe('picture.kind: holds "a\\u0007\\u202eb\\n\\u2028c"; allowed: "panel", "screen"');
  });

  it('tells fifty faults and then how many more', () => {
    const loudspeakers = Array.from({ length: 60 }, (_, index) => ({
      id: `l${index}`,
      channel: 'M+000',
      atM: [0, 1, 900],
    }));
    const lines = refusedLines(changed({ loudspeakers }));
    expect(lines).toHaveLength(51);
    expect(lines[50]).toBe('file: 10 more like these');
  });
});

describe('limits hold to the last value and not beyond', () => {
  const limits: [string, number, number][] = [
    ['room.ceiling.heightM', 2.7, 10],
    ['picture.widthM', 0.3, 12],
    ['rows.0.seat.panHeightM', 0.1, 1.2],
    ['loudspeakers.0.sensitivityDb', 60, 120],
    ['subwoofers.0.gainDb', -60, 20],
  ];
  it.each(limits)('%s', (path, low, high) => {
    expect(refusedLines(changed({ [path]: low }))).toEqual([]);
    expect(refusedLines(changed({ [path]: high }))).toEqual([]);
    expect(refusedLines(changed({ [path]: high + 0.001 }))).toHaveLength(1);
  });
});
