import type { Notice } from '../../state/session.ts';
import type { KeepTrouble } from '../../storage/autosave.ts';

/** What is said when this browser does not keep a room. */
export const TROUBLE: Readonly<Record<KeepTrouble, Omit<Notice, 'id'>>> = {
  full: {
    tone: 'caution',
    title: 'This browser’s storage is full',
    lines: [
      'Changes are not kept by themselves just now. Save the room to a file, or remove rooms you no longer need.',
    ],
  },
  refused: {
    tone: 'caution',
    title: 'This browser does not keep your room',
    lines: ['Storage is not allowed here, as in some private windows. Work goes on; use Save to keep a file.'],
  },
};
