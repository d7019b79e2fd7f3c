import { requestFrame } from '../../state/frames.ts';

const HIGHEST = 2;
const MOVING_SHARE = 0.6;
const REST_MS = 160;

export interface Resolution {
  /** Draws coarser until nothing has moved for a moment. */
  lower(): void;
  dispose(): void;
}

/** Pixels a CSS pixel: full at rest, fewer under a moving hand, never fewer than one. */
export const pixelRatios = (deviceRatio: number): { readonly rest: number; readonly moving: number } => {
  const rest = Math.min(deviceRatio, HIGHEST);
  return { rest, moving: Math.min(rest, Math.max(1, rest * MOVING_SHARE)) };
};

export const createResolution = (setDpr: (dpr: number) => void, deviceRatio: number): Resolution => {
  const { rest, moving } = pixelRatios(deviceRatio);
  let timer: ReturnType<typeof setTimeout> | null = null;
  const restore = () => {
    timer = null;
    setDpr(rest);
    requestFrame('resize');
  };
  return {
    lower() {
      if (moving === rest) return;
      if (timer === null) setDpr(moving);
      else clearTimeout(timer);
      timer = setTimeout(restore, REST_MS);
    },
    dispose() {
      if (timer !== null) clearTimeout(timer);
    },
  };
};
