import { registerSW } from 'virtual:pwa-register';
import type { View } from '../state/view.tsx';
import { notify } from './files.ts';

/**
 * Keeps every part of the program in this browser, so that it opens without a network. A newer version is offered, never
 * forced: it waits until the person takes it or every tab is closed. Where service workers are not allowed nothing is said.
 */
export const workOffline = (view: View): void => {
  if (!('serviceWorker' in navigator)) return;
  const useNewer = registerSW({
    onNeedRefresh: () =>
      notify(view, {
        tone: 'plain',
        title: 'A newer version is ready',
        lines: ['Your room is kept. The page is opened afresh with the newer version when you say so.'],
        action: { word: 'Use it now', run: () => void useNewer(true) },
      }),
  });
};
