import { finishOf } from '../model/finishes.ts';

/** Choices of the file that do not read well as they stand. */
const WORDS: Readonly<Record<string, string>> = {
  openPlan: 'an open plan',
  outside: 'outside',
  rms: 'mean (rms)',
  half: 'half space',
  full: 'full space',
  x: 'across',
  z: 'front to back',
  'in-wall': 'in the wall',
  'in-ceiling': 'in the ceiling',
};

/** A choice as a person reads it: a finish by its name, anything else as words. */
export const choiceText = (choice: string): string =>
  finishOf(choice)?.name ?? WORDS[choice] ?? choice.replaceAll('-', ' ');
