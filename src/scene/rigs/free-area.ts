import type { FreeArea } from '../../engines/movement/framing.ts';

/** What the panels cover of the window, as CSS custom properties on the root element, in pixels. */
const PROPERTIES = {
  left: '--stage-inset-left',
  right: '--stage-inset-right',
  top: '--stage-inset-top',
  bottom: '--stage-inset-bottom',
} as const;

export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const NONE: Insets = { left: 0, right: 0, top: 0, bottom: 0 };
/** Columns and band as composed for a desk: outline, seat card, ribbon, title line. */
const DESK: Insets = { left: 300, right: 320, top: 56, bottom: 150 };
const DESK_FROM_PX = 1000;

/** The composition's insets where the panels say nothing: a sheet under the scene on an upright phone. */
export const usualInsets = (width: number, height: number, cleared: boolean): Insets => {
  if (cleared) return NONE;
  if (width >= DESK_FROM_PX) return DESK;
  return height > width ? { ...NONE, top: 48, bottom: Math.round(height / 2) } : { ...NONE, top: 48 };
};

/** What is left of the canvas; never less than a quarter of it either way. */
export const freeAreaOf = (width: number, height: number, insets: Insets): FreeArea => {
  const room = (size: number, near: number, far: number) => Math.min(1, (0.75 * size) / Math.max(1, near + far));
  const across = room(width, insets.left, insets.right);
  const upright = room(height, insets.top, insets.bottom);
  const left = insets.left * across;
  const top = insets.top * upright;
  return {
    left,
    top,
    width: width - left - insets.right * across,
    height: height - top - insets.bottom * upright,
    canvasWidth: width,
    canvasHeight: height,
  };
};

/** Reads what the panels cover just now. */
export const readInsets = (width: number, height: number, cleared: boolean): Insets => {
  const usual = usualInsets(width, height, cleared);
  const style = getComputedStyle(document.documentElement);
  const read = (side: keyof Insets) => {
    const px = Number.parseFloat(style.getPropertyValue(PROPERTIES[side]));
    return Number.isFinite(px) ? px : usual[side];
  };
  return { left: read('left'), right: read('right'), top: read('top'), bottom: read('bottom') };
};
