import type { Vec3 } from '../../math/vec3.ts';
import type { Line } from './tree.ts';

/** What a key does in the outline: go to a line, fold or unfold one, or choose it. */
export type OutlineMove =
  | { readonly kind: 'go'; readonly key: string }
  | { readonly kind: 'fold'; readonly key: string; readonly unfolded: boolean }
  | { readonly kind: 'pick' };

/** The tree keys every desktop has: up, down, first, last, right into a branch, left out of it, Enter chooses. */
export const outlineMove = (
  lines: readonly Line[],
  open: ReadonlySet<string>,
  at: string,
  pressed: string,
): OutlineMove | null => {
  const i = lines.findIndex(({ branch }) => branch.key === at);
  if (i < 0) return null;
  const { branch, parent } = lines[i];
  const folds = branch.children.length > 0;
  const unfolded = folds && open.has(branch.key);
  const go = (key: string): OutlineMove => ({ kind: 'go', key });
  switch (pressed) {
    case 'ArrowDown':
      return go(lines[Math.min(i + 1, lines.length - 1)].branch.key);
    case 'ArrowUp':
      return go(lines[Math.max(i - 1, 0)].branch.key);
    case 'Home':
      return go(lines[0].branch.key);
    case 'End':
      return go(lines[lines.length - 1].branch.key);
    case 'ArrowRight':
      if (!folds) return null;
      return unfolded ? go(branch.children[0].key) : { kind: 'fold', key: branch.key, unfolded: true };
    case 'ArrowLeft':
      if (unfolded) return { kind: 'fold', key: branch.key, unfolded: false };
      return parent === null ? null : go(parent);
    case 'Enter':
    case ' ':
      return { kind: 'pick' };
    default:
      return null;
  }
};

const DIRECTIONS: Readonly<Record<string, Vec3>> = {
  ArrowLeft: [-1, 0, 0],
  ArrowRight: [1, 0, 0],
  ArrowUp: [0, 0, -1],
  ArrowDown: [0, 0, 1],
  PageUp: [0, 1, 0],
  PageDown: [0, -1, 0],
};

/** The move a key means, metres along the document's axes: up is towards the picture. Null for any other key. */
export const nudgeOf = (pressed: string, stepM: number, large: boolean): Vec3 | null => {
  if (!Object.hasOwn(DIRECTIONS, pressed)) return null;
  const by = stepM * (large ? 10 : 1);
  const [x, y, z] = DIRECTIONS[pressed];
  return [x * by + 0, y * by + 0, z * by + 0];
};

/** Commands on the chosen things by key. */
export type OutlineCommand = 'rename' | 'remove' | 'duplicate' | 'lock' | 'move' | 'add';

const BY_KEY: Readonly<Record<string, OutlineCommand>> = {
  f2: 'rename',
  delete: 'remove',
  backspace: 'remove',
  insert: 'add',
  '+': 'add',
  l: 'lock',
  m: 'move',
};

export const commandOf = (pressed: string, ctrl: boolean): OutlineCommand | null => {
  const key = pressed.toLowerCase();
  if (ctrl) return key === 'd' ? 'duplicate' : null;
  return Object.hasOwn(BY_KEY, key) ? BY_KEY[key] : null;
};

/** The keys of the outline for the sheet of keys. */
export const OUTLINE_KEYS = {
  title: 'In the outline',
  lines: [
    { keys: ['Enter'], does: 'Choose; with Ctrl also this, with Shift all up to here' },
    { keys: ['Alt', 'arrows'], does: 'Move what is chosen; with Shift ten times as far' },
    { keys: ['Alt', 'Page Up'], does: 'Raise it; Page Down lowers it' },
    { keys: ['M'], does: 'Move it by arrows alone, until Esc' },
    { keys: ['F2'], does: 'Give it another name' },
    { keys: ['L'], does: 'Lock it, or let it go' },
    { keys: ['Ins'], does: 'Add something' },
    { keys: ['Esc'], does: 'From a field of the form: back here' },
  ],
} as const;
