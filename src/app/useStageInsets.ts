import { useLayoutEffect } from 'react';

export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Says on the page's root what the panels leave of the stage, so that the camera can centre the room in the rest. */
export const useStageInsets = ({ left, right, top, bottom }: Insets): void => {
  useLayoutEffect(() => {
    const { style } = document.documentElement;
    for (const [side, width] of Object.entries({ left, right, top, bottom })) {
      style.setProperty(`--inset-${side}`, `${width}px`);
    }
  }, [left, right, top, bottom]);
};
