import { type StageProbe, stageProbe } from '../scene/probe.ts';
import { frameRequests } from '../state/frames.ts';
import type { View } from '../state/view.tsx';
import type { Lanes } from './feed/bass.ts';

/** What tests and diagnostics may look at. It changes nothing by itself. */
export interface Probe {
  readonly view: View;
  readonly frameRequests: typeof frameRequests;
  /** The stage that is mounted; null without WebGL. */
  stage(): StageProbe | null;
  /** Frames drawn since the page was opened. */
  frames(): number;
  /** Resolves once no job runs or waits, every result is the document's and nothing moves on the stage. */
  settled(): Promise<void>;
}

declare global {
  interface Window {
    parterre?: Probe;
  }
}

/** Frames in a row that must be calm: an answer may only then ask for the next thing. */
const CALM_FRAMES = 3;

const nextFrame = () => new Promise((resolve) => requestAnimationFrame(resolve));

export const installProbe = (view: View, lanes: Lanes): void => {
  const current = () => {
    const { revision, gestureOpen } = view.document.getState();
    const { bass, slice, geometry } = view.results.getState();
    return gestureOpen || [bass, slice, geometry].every((result) => result?.revision === revision);
  };
  const quiet = () =>
    !lanes.interactive.busy &&
    !lanes.background.busy &&
    !lanes.background.studies.busy &&
    current() &&
    (stageProbe()?.resting() ?? true);
  window.parterre = {
    view,
    frameRequests,
    stage: stageProbe,
    frames: () => stageProbe()?.frames() ?? 0,
    async settled() {
      for (let calm = 0; calm < CALM_FRAMES; calm = quiet() ? calm + 1 : 0) await nextFrame();
    },
  };
};
