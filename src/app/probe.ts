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
  /**
   * Resolves once what is shown is the document's and at rest: seats, slice and findings in their finest answer, no study under
   * way, nothing moving on the stage. What the background adds (modes, damping band, curves, decay) may still be on its way.
   */
  settled(): Promise<void>;
  /** Resolves once it is settled and the background has nothing left to do. */
  idle(): Promise<void>;
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
    const { bass, slice, geometry, findings } = view.results.getState();
    return gestureOpen || [bass, slice, geometry, findings].every((result) => result?.revision === revision);
  };
  const quiet = () =>
    !lanes.interactive.busy && !lanes.background.studies.busy && current() && (stageProbe()?.resting() ?? true);
  const calmly = async (calmNow: () => boolean) => {
    for (let calm = 0; calm < CALM_FRAMES; calm = calmNow() ? calm + 1 : 0) await nextFrame();
  };
  window.parterre = {
    view,
    frameRequests,
    stage: stageProbe,
    frames: () => stageProbe()?.frames() ?? 0,
    settled: () => calmly(quiet),
    idle: () => calmly(() => quiet() && !lanes.background.busy),
  };
};
