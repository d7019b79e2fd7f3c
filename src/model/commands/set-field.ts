import { fieldAt } from '../fields/registry.ts';
import { type Key, pathKeys, pathText, valueAt } from '../paths.ts';
import type { Project } from '../project.ts';
import { type Edit, refuseWords, setValue } from './edit.ts';

/**
 * Sets a field of the registry at its keys; undefined puts an optional or defaulted one back to what it is when the file
 * says nothing. What says where a locked thing stands is refused.
 */
export const setFieldAt = (project: Project, keys: readonly Key[], value: unknown): Edit => {
  const field = fieldAt(keys);
  if (!field) return refuseWords(pathText(keys), value, 'a field that can be edited');
  if (field.place) {
    const holders = keys.map((_, index) => keys.slice(0, index));
    const locked = holders.find((holder) => valueAt(project, [...holder, 'locked']) === true);
    if (locked) return refuseWords(`${pathText(locked)}.locked`, true, 'unlocked first: it stays where it is');
  }
  return setValue(project, keys, value);
};

/** The same by a path such as `loudspeakers[3].atM[0]`. */
export const setField = (project: Project, path: string, value: unknown): Edit => {
  const keys = pathKeys(path);
  return keys ? setFieldAt(project, keys, value) : refuseWords(path, value, 'a field that can be edited');
};
