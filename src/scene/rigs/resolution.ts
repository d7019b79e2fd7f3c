import { requestFrame } from '../../state/frames.ts';

const HIGHEST = 2;
const MOVING_SHARE = 0.6;
const REST_MS = 160;
/** Frames that take longer than this under a moving camera are drawn coarser still. */
const SLOW_S = 0.05;
const LEAST = 0.5;
/** One hitch alone makes nothing slow. */
const LONGEST_S = 0.1;
/** Weight of the newest frame in the running mean. */
const NEWEST = 0.4;

export interface Resolution {
  /** Draws coarser until nothing has moved for a moment. `frameS`: how long the last frame took, 0 where not known. */
  lower(frameS: number): void;
  /** Whether it is coarser now. */
  readonly coarse: boolean;
  dispose(): void;
}

/** Pixels a CSS pixel: full at rest, fewer while something moves, fewer than one only where frames are slow. */
export const pixelRatios = (deviceRatio: number): Readonly<Record<'rest' | 'moving' | 'slow', number>> => {
  const rest = Math.min(deviceRatio, HIGHEST);
  const moving = Math.min(rest, Math.max(1, rest * MOVING_SHARE));
  return { rest, moving, slow: Math.max(LEAST, moving * MOVING_SHARE) };
};

export const createResolution = (setDpr: (dpr: number) => void, deviceRatio: number): Resolution => {
  const { rest, moving, slow } = pixelRatios(deviceRatio);
  let timer: ReturnType<typeof setTimeout> | null = null;
  let now = rest;
  let meanS = 0;
  const show = (ratio: number) => {
    if (ratio === now) return;
    now = ratio;
    setDpr(ratio);
  };
  const restore = () => {
    timer = null;
    meanS = 0;
    show(rest);
    requestFrame('resize');
  };
  return {
    lower(frameS) {
      meanS += (Math.min(frameS, LONGEST_S) - meanS) * NEWEST;
      // Once slow, slow until it rests: sizes that come and go would flicker.
      const wanted = meanS > SLOW_S ? slow : moving;
      if (wanted < now) show(wanted);
      if (now === rest) return;
      if (timer !== null) clearTimeout(timer);
      timer = setTimeout(restore, REST_MS);
    },
    get coarse() {
      return now < rest;
    },
    dispose() {
      if (timer !== null) clearTimeout(timer);
    },
  };
};
