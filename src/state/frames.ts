/** Why a frame is wanted. Frames come on demand only; the reason is kept for diagnostics and tests. */
export type FrameReason =
  | 'document'
  | 'floor-ready'
  | 'wave'
  | 'camera'
  | 'transition'
  | 'session'
  | 'resize'
  | 'textures'
  | 'context-restored';

let draw: (() => void) | null = null;
const counts = new Map<FrameReason, number>();

/** The canvas says how a frame is asked for; null when it goes away. */
export const connectFrames = (invalidate: (() => void) | null): void => {
  draw = invalidate;
};

export const requestFrame = (reason: FrameReason): void => {
  counts.set(reason, (counts.get(reason) ?? 0) + 1);
  draw?.();
};

export const frameRequests = (): Readonly<Record<string, number>> => Object.fromEntries(counts);
