import type { Project } from './project.ts';

/** Whether two documents are the same in everything but one part: parts an edit leaves alone keep their identity. */
export const sameBesides = (a: Project, b: Project, part: keyof Project): boolean => {
  if (a === b) return true;
  for (const key in a) if (key !== part && a[key as keyof Project] !== b[key as keyof Project]) return false;
  for (const key in b) if (key !== part && !(key in a)) return false;
  return true;
};
