import { frameRequests } from '../state/frames.ts';
import type { View } from '../state/view.tsx';
import type { Lanes } from './feed/bass.ts';

/** What tests and diagnostics may look at. It changes nothing by itself. */
export interface Probe {
  readonly view: View;
  readonly frameRequests: typeof frameRequests;
  /** Resolves once no job runs or waits and nothing moves. */
  settled(): Promise<void>;
}

declare global {
  interface Window {
    parterre?: Probe;
  }
}

const nextFrame = () => new Promise((resolve) => requestAnimationFrame(resolve));

export const installProbe = (view: View, lanes: Lanes): void => {
  const current = () => {
    const { revision, gestureOpen } = view.document.getState();
    const { bass, floor, geometry } = view.results.getState();
    const upToDate = [bass, floor, geometry].every((result) => result?.revision === revision);
    return gestureOpen || upToDate;
  };
  const quiet = () => !lanes.interactive.busy && !lanes.background.busy && current();
  window.parterre = {
    view,
    frameRequests,
    async settled() {
      for (let calm = 0; calm < 3; calm = quiet() ? calm + 1 : 0) await nextFrame();
    },
  };
};
