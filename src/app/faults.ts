import type { View } from '../state/view.tsx';
import { diagnosticsText } from './diagnostics.ts';
import { notify } from './files.ts';

/** Browsers report these for observers that took more than a frame; nothing is wrong. */
const HARMLESS = /ResizeObserver loop/;

/**
 * Says once, in words a client may read, that something failed which no part of the page answers for. What it was can be
 * copied for whoever looks after the program.
 */
export const sayFaults = (view: View): void => {
  let told = false;
  const say = (fault: string) => {
    if (told || HARMLESS.test(fault)) return;
    told = true;
    notify(view, {
      tone: 'caution',
      title: 'Something did not work',
      lines: ['Your room is safe. If the page behaves oddly, open it again.'],
      action: {
        word: 'Copy what happened',
        run: () => void navigator.clipboard?.writeText(diagnosticsText(view, fault)).catch(() => {}),
      },
    });
  };
  window.addEventListener('error', ({ message, filename, lineno }) => say(`${message} (${filename}:${lineno})`));
  window.addEventListener('unhandledrejection', ({ reason }) => say(String(reason)));
};
