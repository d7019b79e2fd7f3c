import type { ArrangementFigures } from '../../engines/bass/arrangement-figures.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { freeId } from '../../model/items.ts';
import type { Project, Subwoofer } from '../../model/project.ts';
import { subwooferLike } from './standing.ts';

/** An arrangement's figures with the walls as described, and with less and more damping than that. */
export interface FiguresBand {
  readonly nominal: ArrangementFigures;
  readonly low: ArrangementFigures;
  readonly high: ArrangementFigures;
}

/**
 * A change that is offered, never made by itself. It belongs to the document at `revision`; once that has moved on, it is
 * stored beside it as an alternative instead.
 */
export interface Proposal {
  readonly id: string;
  readonly kind: 'arrangement' | 'improve' | 'crossover' | 'equaliser';
  readonly revision: number;
  /** All subwoofers as they would be; left out where they stay. */
  readonly subwoofers?: readonly Subwoofer[];
  /** The peak filters as they would be; left out where they stay. */
  readonly filters?: readonly { readonly frequencyHz: number; readonly gainDb: number; readonly q: number }[];
}

/** One thing a proposal changes, for words to be made of. */
export type Change =
  | { readonly what: 'moved'; readonly id: string; readonly fromM: Vec3; readonly toM: Vec3 }
  | { readonly what: 'added'; readonly id: string; readonly toM: Vec3 }
  | { readonly what: 'removed'; readonly id: string; readonly fromM: Vec3 }
  | {
      readonly what: 'driven';
      readonly id: string;
      readonly gainDb: number;
      readonly delayMs: number;
      readonly inverted: boolean;
    };

const samePlace = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, axis) => Math.abs(value - b[axis]) < 0.005);

/** What would be different, subwoofer by subwoofer. */
export const changesOf = (before: readonly Subwoofer[], after: readonly Subwoofer[]): Change[] => [
  ...after.flatMap((next): Change[] => {
    const old = before.find(({ id }) => id === next.id);
    const toM = next.atM as Vec3;
    const { id, gainDb, delayMs, inverted } = next;
    const plain = gainDb === 0 && delayMs === 0 && !inverted;
    const drivenAnew = old ? old.gainDb !== gainDb || old.delayMs !== delayMs || old.inverted !== inverted : !plain;
    const driven: Change[] = drivenAnew ? [{ what: 'driven', id, gainDb, delayMs, inverted }] : [];
    if (!old) return [{ what: 'added', id, toM }, ...driven];
    return samePlace(old.atM, toM) ? driven : [{ what: 'moved', id, fromM: old.atM as Vec3, toM }, ...driven];
  }),
  ...before
    .filter(({ id }) => !after.some((next) => next.id === id))
    .map(({ id, atM }): Change => ({ what: 'removed', id, fromM: atM as Vec3 })),
];

/** A place with the drive a subwoofer there is to get. */
export interface WantedPlace {
  readonly atM: Vec3;
  readonly gainDb: number;
  readonly delayMs: number;
  readonly inverted: boolean;
}

const gapM = (a: readonly number[], b: readonly number[]): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/**
 * The project's subwoofers brought to the places wanted: locked ones stay, of the others the nearest goes to each place,
 * what is missing is added like the first, what is over is taken away.
 */
export const placedSubwoofers = (project: Project, places: readonly WantedPlace[]): Subwoofer[] => {
  const held = project.subwoofers.filter(({ locked }) => locked === true);
  const free = project.subwoofers.filter(({ locked }) => locked !== true);
  const pairs = free
    .flatMap((one) => places.map((place) => ({ one, place, far: gapM(one.atM, place.atM) })))
    .sort((a, b) => a.far - b.far);
  const given = new Map<WantedPlace, Subwoofer>();
  const used = new Set<string>();
  for (const { one, place } of pairs) {
    if (given.has(place) || used.has(one.id)) continue;
    given.set(place, one);
    used.add(one.id);
  }
  const like = subwooferLike(project);
  let grown: Project = project;
  const moved = places.map((place): Subwoofer => {
    const { gainDb, delayMs, inverted } = place;
    const drive = { atM: [...place.atM] as Subwoofer['atM'], gainDb, delayMs, inverted };
    const one = given.get(place);
    if (one) return { ...one, ...drive };
    const id = freeId(grown, 'subwoofer', 'S1');
    const added = { ...like, id, ...drive } as Subwoofer;
    grown = { ...grown, subwoofers: [...grown.subwoofers, added] };
    return added;
  });
  const kept = project.subwoofers.flatMap(
    (one) => held.find(({ id }) => id === one.id) ?? moved.find(({ id }) => id === one.id) ?? [],
  );
  return [...kept, ...moved.filter(({ id }) => !kept.some((one) => one.id === id))];
};
