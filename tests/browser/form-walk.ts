import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { Field } from '../../src/model/fields/field.ts';
import type { ItemKind, ItemRef, Project } from '../../src/model/project.ts';
import { projectSchema } from '../../src/model/schema/project.ts';
import { ancestorsOf, type Branch, keyOf, outlineOf } from '../../src/panels/outline/tree.ts';
import { controlsOf, formOf } from '../../src/panels/parameters/form.ts';
import { formatQuantity, isNumberQuantity } from '../../src/words/quantities.ts';
import { expect } from './support.ts';

/** A field of one item as the form shows it: where it stands, and how a person would change it. */
export interface Spot {
  readonly path: string;
  /** Pattern and way of control: what a representative share has to cover. */
  readonly kind: string;
  readonly control: 'number' | 'choice' | 'flag' | 'text';
  /** Another choice, or something else to write. */
  readonly other: string;
  /** What to write where that makes no room. */
  readonly else: string;
  /** Whether a step changes it: a number stands there, or one that is usual. */
  readonly steps: boolean;
  /** A cell of a table has neither label nor step buttons. */
  readonly cell: boolean;
}

export interface Stop {
  readonly key: string;
  readonly item: ItemRef | null;
  /** Lines above it that have to be unfolded. */
  readonly above: readonly string[];
  readonly spots: readonly Spot[];
}

export const readDemo = (file: string): Project => projectSchema.parse(JSON.parse(readFileSync(file, 'utf8')));

const OTHER_TEXT: Readonly<Record<string, string>> = {
  'loudspeakers[].channel': 'M+045',
  'room.objects[].kind': 'shelf',
};

const writtenFor = (field: Field, value: unknown, project: Project, sign: 1 | -1): string => {
  if (!isNumberQuantity(field.quantity)) return OTHER_TEXT[field.pattern] ?? `${String(value ?? '')}x`;
  if (typeof value === 'number') {
    const by = 4 * sign * (field.step ?? 1);
    const next = Math.min(field.max ?? value + by, Math.max(field.min ?? value + by, value + by));
    return formatQuantity(next, field.quantity, project.display.units);
  }
  const low = Math.max(field.min ?? 0, -1);
  return formatQuantity(low > 0 ? low : Math.min(1, field.max ?? 1), field.quantity, project.display.units);
};

const spotOf = (project: Project, control: ReturnType<typeof controlsOf>[number], cell: boolean): Spot => {
  const { field, path } = control;
  const value = control.read(project);
  const choice = field.choices?.find((one) => one !== String(value ?? ''));
  const shared = { path, kind: `${field.pattern}${path.includes(':') ? ` ${field.label}` : ''}`, cell };
  if (field.choices) return { ...shared, control: 'choice', other: choice ?? '', else: '', steps: false };
  if (field.quantity === 'flag') return { ...shared, control: 'flag', other: '', else: '', steps: false };
  const number = isNumberQuantity(field.quantity);
  const steps = number && (typeof value === 'number' || control.usual(project) !== undefined);
  const [other, otherwise] = ([1, -1] as const).map((sign) => writtenFor(field, value, project, sign));
  return { ...shared, control: number ? 'number' : 'text', other, else: otherwise, steps };
};

const flat = (branches: readonly Branch[]): readonly Branch[] =>
  branches.flatMap((branch) => [branch, ...flat(branch.children)]);

/** Every item of a project's outline with every field of its form. */
export const stopsOf = (project: Project): readonly Stop[] => {
  const branches = outlineOf(project);
  return flat(branches).flatMap(({ key, item }) => {
    if (item === undefined) return [];
    const sections = formOf(project, item);
    const cells = new Set(
      sections.flatMap(({ tables }) => tables.flatMap(({ lines }) => lines.flatMap((line) => line.controls))),
    );
    const spots = controlsOf(sections).map((control) => spotOf(project, control, cells.has(control)));
    return [{ key: keyOf(item), item, above: ancestorsOf(branches, key), spots }];
  });
};

/** Fewer stops that still hold every kind of field and every kind of item once; `covered` remembers across projects. */
export const representative = (stops: readonly Stop[], covered: Set<string>): readonly Stop[] =>
  stops.flatMap((stop) => {
    const kind: ItemKind | 'room' = stop.item?.kind ?? 'room';
    const fresh = stop.spots.filter((spot) => {
      const name = `${kind} ${spot.kind}`;
      return !covered.has(name) && covered.add(name);
    });
    if (fresh.length === 0 && covered.has(kind)) return [];
    covered.add(kind);
    return [{ ...stop, spots: fresh.length > 0 ? fresh : stop.spots.slice(0, 1) }];
  });

/**
 * Gives every document that there ever was a number of its own: equal documents, and only they, share one. Read after each
 * act; nothing is put in by it.
 */
export const numberDocuments = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const numbers = new Map<string, number>();
    Object.assign(window, {
      documentNumber: () => {
        const text = JSON.stringify(window.parterre?.view.document.getState().project);
        const known = numbers.get(text) ?? numbers.size;
        numbers.set(text, known);
        return known;
      },
    });
  });

export const documentNumber = (page: Page): Promise<number> =>
  page.evaluate(() => (window as unknown as { documentNumber(): number }).documentNumber());

/** A way of working: how a line is chosen, a field changed, and a step taken back and done again. */
export interface Way {
  readonly name: string;
  choose(page: Page, stop: Stop): Promise<void>;
  /** Ways to change a field, tried in turn: one of two steps may lead out of the room. */
  changes(page: Page, spot: Spot): readonly (() => Promise<void>)[];
  undo(page: Page): Promise<void>;
  redo(page: Page): Promise<void>;
}

/** What a person sees happen to one field: changed, back, changed again, back. Says what went otherwise. */
const throughField = async (page: Page, way: Way, stop: Stop, spot: Spot): Promise<readonly string[]> => {
  const name = `${way.name}: ${stop.key} ${spot.path}`;
  const before = await documentNumber(page);
  let changed = before;
  for (const change of way.changes(page, spot)) {
    await change();
    changed = await documentNumber(page);
    if (changed !== before) break;
  }
  if (changed === before) {
    // Some changes make no room: they have to be refused in words beside the field.
    const alerts = await page.locator('.parameters [role="alert"]').allTextContents();
    return alerts.some((says) => /\w+ .*\w/.test(says)) ? ['refused'] : [`${name}: not changed, and not said why`];
  }
  const after: number[] = [];
  for (const act of [way.undo, way.redo, way.undo]) {
    await act(page);
    after.push(await documentNumber(page));
  }
  const expected = [before, changed, before];
  return after.join() === expected.join() ? [] : [`${name}: ${before} ${changed} then ${after.join(' ')}`];
};

/** Of the fields of a room at most this share may be such that no step either way makes a room. */
const MOST_REFUSED = 0.12;

/** Walks stops and fields one way; every trouble is told at the end, so that one does not hide another. */
export const walk = async (page: Page, way: Way, stops: readonly Stop[]): Promise<number> => {
  const told: string[] = [];
  let count = 0;
  for (const stop of stops) {
    await way.choose(page, stop);
    for (const spot of stop.spots) {
      told.push(...(await throughField(page, way, stop, spot)));
      count += 1;
    }
  }
  expect(told.filter((trouble) => trouble !== 'refused')).toEqual([]);
  expect(told.length).toBeLessThanOrEqual(Math.ceil(count * MOST_REFUSED));
  return count;
};
