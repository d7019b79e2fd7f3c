import { type Key, pathText } from '../../model/paths.ts';
import type { Refusal } from '../../model/refusal.ts';

/** More than are ever told apart by a reader; the search stops there. */
const ENOUGH = 1000;

/**
 * What JSON can say and a project must not: keys that would reach an object's prototype, numbers that overflow to
 * infinity. The text has been found to nest at most 32 deep, so the walk may recurse.
 */
export const forbiddenValues = (root: unknown): Refusal[] => {
  const refusals: Refusal[] = [];
  const keys: Key[] = [];
  const refuse = (holds: unknown, allowed: string, lead?: string) =>
    refusals.push({ field: pathText(keys) || 'file', holds, lead, allowed: { kind: 'words', words: allowed } });
  const visit = (value: unknown): void => {
    if (refusals.length >= ENOUGH) return;
    if (typeof value === 'number') {
      if (!Number.isFinite(value)) refuse(value, 'a finite number');
    } else if (Array.isArray(value)) {
      for (let i = 0; i < value.length; i++) visitChild(i, value[i]);
    } else if (typeof value === 'object' && value !== null) {
      const entries = value as Record<string, unknown>;
      for (const key of Object.keys(entries)) {
        if (key === '__proto__') refuse(key, 'any other key', 'the key');
        else visitChild(key, entries[key]);
      }
    }
  };
  const visitChild = (key: Key, value: unknown): void => {
    if (typeof value === 'string' || typeof value === 'boolean' || value === null) return;
    keys.push(key);
    visit(value);
    keys.pop();
  };
  visit(root);
  return refusals;
};
