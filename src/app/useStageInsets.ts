import { useLayoutEffect } from 'react';
import { requestFrame } from '../state/frames.ts';
import { useView } from '../state/view.tsx';

export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Says on the page's root what the panels leave of the stage, so that the camera can centre the room in the rest. */
export const useStageInsets = ({ left, right, top, bottom }: Insets): void => {
  const { session } = useView();
  useLayoutEffect(() => {
    const { style } = document.documentElement;
    for (const [side, width] of Object.entries({ left, right, top, bottom })) {
      style.setProperty(`--stage-inset-${side}`, `${width}px`);
    }
    // The camera looks at its surroundings again whenever the session speaks.
    session.setState((state) => ({ ...state }));
    requestFrame('resize');
  }, [session, left, right, top, bottom]);
};
