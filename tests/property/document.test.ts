import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readProject } from '../../src/files/project/read.ts';
import { writeProject } from '../../src/files/project/write.ts';
import { seededRandom } from '../../src/math/random.ts';
import { checkProject } from '../../src/model/checks/project.ts';
import { FIELDS } from '../../src/model/fields/registry.ts';
import { apply, cancel, commit, type History, load, MOST_STEPS, mark, redo, undo } from '../../src/model/history.ts';
import { emptyRoom } from '../../src/model/presets/empty-room.ts';
import type { Project } from '../../src/model/project.ts';
import { projectSchema } from '../../src/model/schema/project.ts';
import { faultLine } from '../../src/words/faults.ts';
import { sampleProject } from '../unit/model/sample.ts';
import { anyEdit } from './any-edit.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

const SEEDS = [11, 20261124, 977, 31337, 5, 8, 404, 1999];

/** Rooms to begin from: the sample, an empty room, an attic drawn by its corners, and every demo. */
const attic = (): Project => {
  const empty = emptyRoom({ widthM: 5, lengthM: 6.4, heightM: 2.6 });
  return projectSchema.parse({
    ...empty,
    room: {
      ...empty.room,
      plan: {
        shape: 'polygon',
        cornersM: [
          [-2.5, 0],
          [2.5, 0],
          [2.5, 6.4],
          [0.6, 6.4],
          [0.6, 5.2],
          [-2.5, 5.2],
        ],
      },
      ceiling: {
        shape: 'profile',
        across: 'x',
        pointsM: [
          [-2.5, 1.4],
          [-1, 2.8],
          [1, 2.8],
          [2.5, 1.4],
        ],
      },
    },
  });
};
const DEMOS = 'public/demos';
const STARTS: readonly (readonly [name: string, project: Project])[] = [
  ['the sample', sampleProject()],
  ['an empty room', emptyRoom({ widthM: 4.2, lengthM: 5.6, heightM: 2.4 })],
  ['an attic', attic()],
  ...readdirSync(DEMOS).map((file): [string, Project] => [
    file,
    projectSchema.parse(JSON.parse(readFileSync(`${DEMOS}/${file}`, 'utf8'))),
  ]),
];
const RUNS = SEEDS.map((seed, index) => [seed, ...STARTS[index % STARTS.length]] as const);
const COMMANDS = 500;

describe.each(RUNS)('500 random commands, seed %i, on %s', (seed, _name, start) => {
  it('every document on the way is good, and undo and redo give back equal ones', () => {
    const random = seededRandom(seed);
    /** Every document there ever was with its text when it was new: nothing may change it afterwards. */
    const asMade = new Map<Project, string>([[start, writeProject(start)]]);
    const unchanged = ({ present }: History): void => expect(writeProject(present)).toBe(asMade.get(present));
    let history: History = load(start);
    for (let i = 0; i < COMMANDS; i++) {
      if (random() < 0.05) history = undo(history);
      if (random() < 0.05) history = redo(history);
      const edit = anyEdit(random, history.present);
      if (!edit.ok) continue;
      history = apply(history, edit.project, `Step ${i}`);
      if (!asMade.has(edit.project)) asMade.set(edit.project, writeProject(edit.project));
      if (i % 10 === 0) {
        expect(checkProject(edit.project)).toEqual([]);
        expect(projectSchema.parse(edit.project)).toEqual(edit.project);
      }
    }
    expect(asMade.size).toBeGreaterThan(COMMANDS / 5);
    const last = history.present;
    const steps = history.past.length;
    expect(steps).toBeGreaterThan(50);
    for (let i = 0; i < steps; i++) {
      history = undo(history);
      unchanged(history);
    }
    if (asMade.size <= MOST_STEPS) expect(history.present).toBe(start);
    for (let i = 0; i < steps; i++) {
      history = redo(history);
      unchanged(history);
    }
    expect(history.present).toBe(last);
    const read = readProject(bytesOf(writeProject(last)));
    expect(read.ok ? [] : read.faults.map(faultLine)).toEqual([]);
    expect(read.ok && read.project).toEqual(last);
    expect(writeProject(start)).toBe(asMade.get(start));
  });

  it('a cancelled gesture leaves no trace', () => {
    const random = seededRandom(seed);
    const settled = load(start);
    let history = mark(settled, 'Gesture');
    for (let i = 0; i < 50; i++) {
      const edit = anyEdit(random, history.present);
      if (edit.ok) history = apply(history, edit.project, 'Gesture');
    }
    expect(history.present).not.toBe(settled.present);
    expect(cancel(history)).toMatchObject({ present: settled.present, past: [], future: [] });
    expect(undo(commit(history)).present).toBe(settled.present);
  });
});

describe('files', () => {
  it('whatever the bytes are, reading answers and never throws', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        const result = readProject(bytes);
        expect(result.ok).toBe(false);
        if (!result.ok) expect(result.faults.map(faultLine).every((line) => /^[^\n]+$/.test(line))).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('whatever stands where a value should, reading answers and never throws', () => {
    const base = sampleProject();
    const paths = FIELDS.map(({ pattern }) =>
      pattern
        .replaceAll('[]', '.0')
        .replaceAll('{}', '.125')
        .replaceAll(/\[(\d)\]/g, '.$1')
        .split('.'),
    );
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.nat(6), fc.jsonValue({ maxDepth: 3 }), (path, depth, value) => {
        const root: unknown = structuredClone(base);
        const keys = path.slice(0, Math.max(1, path.length - depth));
        const last = keys.pop()!;
        let holder = root as Record<string, unknown>;
        for (const key of keys) {
          const next = holder[key];
          if (typeof next !== 'object' || next === null) return;
          holder = next as Record<string, unknown>;
        }
        holder[last] = value;
        const result = readProject(bytesOf(JSON.stringify(root)));
        const lines = result.ok ? [] : result.faults.map(faultLine);
        if (!result.ok) expect(lines.length).toBeGreaterThan(0);
        for (const line of lines) expect(line).toMatch(/^[^\n]{5,400}$/);
        if (result.ok)
          expect(readProject(bytesOf(writeProject(result.project)))).toMatchObject({
            ok: true,
            project: result.project,
          });
      }),
      { numRuns: 2000 },
    );
  });
});
