import type { Project, Subwoofer } from '../../model/project.ts';

/** Keys of the document that no search for places looks at. */
const ASIDE: ReadonlySet<string> = new Set(['subwoofers', 'alternatives', 'equaliser', 'name', 'notes', 'display']);

/** The same text for the same contents: a command that has a subwoofer validated may put its keys in another order. */
const written = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );

const same = (a: unknown, b: unknown): boolean => a === b || written(a) === written(b);

export const sameSubwoofers = (a: readonly Subwoofer[], b: readonly Subwoofer[]): boolean => same(a, b);

/**
 * Whether what a search found in `searched` may still be used in `now`: the room around the subwoofers is the same, and
 * they stand as they did when it was searched or as one of its proposals has them. Then nothing but a choice between
 * these is made, and nothing that was changed by hand is overwritten.
 */
export const stillOffered = (searched: Project, now: Project, proposed: readonly (readonly Subwoofer[])[]): boolean => {
  const keys = new Set([...Object.keys(searched), ...Object.keys(now)]);
  const around = [...keys].filter((key) => !ASIDE.has(key)) as (keyof Project)[];
  return (
    around.every((key) => same(searched[key], now[key])) &&
    [searched.subwoofers, ...proposed].some((subwoofers) => sameSubwoofers(subwoofers, now.subwoofers))
  );
};
