import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readProject } from '../../src/files/project/read.ts';
import { writeProject } from '../../src/files/project/write.ts';
import { seededRandom } from '../../src/math/random.ts';
import { checkProject } from '../../src/model/checks/project.ts';
import { duplicateItem } from '../../src/model/commands/duplicate.ts';
import type { Edit } from '../../src/model/commands/edit.ts';
import {
  addItem,
  removeItem,
  renameItem,
  setLocked,
  setReferenceSeat,
  setSurface,
} from '../../src/model/commands/items.ts';
import { moveLoudspeaker, moveRow, moveSeat, moveSubwoofer } from '../../src/model/commands/move.ts';
import { setField } from '../../src/model/commands/set-field.ts';
import { FIELDS } from '../../src/model/fields/registry.ts';
import { apply, cancel, commit, type History, load, MOST_STEPS, mark, redo, undo } from '../../src/model/history.ts';
import { itemsOf } from '../../src/model/items.ts';
import type { ItemKind, Project } from '../../src/model/project.ts';
import { projectSchema } from '../../src/model/schema/project.ts';
import { SURFACES } from '../../src/model/schema/room.ts';
import { faultLine } from '../../src/words/faults.ts';
import { sampleProject } from '../unit/model/sample.ts';

type Random = () => number;

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const pick = <Item>(random: Random, items: readonly Item[]): Item => items[Math.floor(random() * items.length)];

const KINDS = ['row', 'seat', 'loudspeaker', 'subwoofer', 'opening', 'patch', 'object'] as const;

/** Some item of a random kind, or one that is not there. */
const anyItem = (random: Random, project: Project): { kind: ItemKind; id: string } => {
  const kind = pick(random, KINDS);
  const items = itemsOf(project, kind);
  return { kind, id: items.length === 0 || random() < 0.05 ? 'nobody' : pick(random, items).id };
};

const anyPath = (random: Random, pattern: string): string =>
  pattern.replaceAll('[]', () => `[${Math.floor(random() * 5)}]`);

/** A random command, good or bad: about a third are refused. */
const anyEdit = (random: Random, project: Project): Edit => {
  const place = [between(random, -2.4, 2.4), between(random, -0.2, 2.9), between(random, -0.5, 6.5)] as const;
  const item = anyItem(random, project);
  switch (Math.floor(random() * 12)) {
    case 0:
      return moveSubwoofer(project, pick(random, project.subwoofers)?.id ?? 'S1', place);
    case 1:
      return moveLoudspeaker(project, pick(random, project.loudspeakers)?.id ?? 'L', place);
    case 2:
      return moveSeat(project, item.id, { xM: place[0], ...(random() < 0.5 ? { eyeZM: place[2] } : {}) });
    case 3:
      return moveRow(project, pick(random, project.rows).id, { eyeZM: place[2], byXM: between(random, -0.1, 0.1) });
    case 4: {
      const field = pick(random, FIELDS);
      const low = field.min ?? 0;
      const high = Math.min(field.max ?? 1, low + 10);
      const value = field.choices
        ? pick(random, field.choices)
        : field.quantity === 'flag'
          ? random() < 0.5
          : between(random, low, high);
      return setField(project, anyPath(random, field.pattern), random() < 0.1 ? undefined : value);
    }
    case 5:
      return addItem(project, 'subwoofer', { id: `S${Math.floor(random() * 12)}`, atM: [...place] });
    case 6:
      return addItem(project, 'object', {
        id: `box-${Math.floor(random() * 30)}`,
        kind: 'box',
        minM: [...place],
        maxM: place.map((value) => value + 0.4),
      });
    case 7:
      return random() < 0.5
        ? duplicateItem(project, item)
        : renameItem(project, item, `name-${Math.floor(random() * 20)}`);
    case 8:
      return random() < 0.4 ? removeItem(project, item) : setLocked(project, item, random() < 0.3);
    case 9:
      return setReferenceSeat(project, random() < 0.2 ? undefined : item.id);
    case 10:
      return setSurface(
        project,
        pick(random, SURFACES),
        random() < 0.2 ? undefined : { finish: pick(random, ['brick', 'gold', 'carpet-thin']) },
      );
    default:
      return setLocked(project, item, false);
  }
};

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

const SEEDS = [11, 20261124, 977, 31337, 5];
const COMMANDS = 500;

describe.each(SEEDS)('500 random commands, seed %i', (seed) => {
  it('every document on the way is good, and undo and redo give back equal ones', () => {
    const random = seededRandom(seed);
    const start = sampleProject();
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
    const settled = load(sampleProject());
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
