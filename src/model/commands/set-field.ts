import { fieldFor } from '../fields/registry.ts';
import { pathKeys, pathText, valueAt } from '../paths.ts';
import type { Project } from '../project.ts';
import { type Edit, refuseWords, setValue } from './edit.ts';

/**
 * Sets a field of the registry by its path; undefined puts an optional or defaulted one back to what it is when the file
 * says nothing. What says where a locked thing stands is refused.
 */
export const setField = (project: Project, path: string, value: unknown): Edit => {
  const field = fieldFor(path);
  const keys = pathKeys(path);
  if (!field || !keys) return refuseWords(path, value, 'a field that can be edited');
  if (field.place) {
    const holders = keys.map((_, index) => keys.slice(0, index));
    const locked = holders.find((holder) => valueAt(project, [...holder, 'locked']) === true);
    if (locked) return refuseWords(`${pathText(locked)}.locked`, true, 'unlocked first: it stays where it is');
  }
  return setValue(project, keys, value);
};
