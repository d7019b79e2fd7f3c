import { useEffect, useRef } from 'react';
import { useSession, useView } from '../state/view.tsx';
import { type FocusPlace, focusAgain, focusPlace, focusRegion } from './regions.ts';

/** Panels measure and unfold themselves before they show all they hold: the focus waits so many frames for its place. */
const MOST_FRAMES = 8;

/** The focus goes back to where it was when the stage was cleared, once the panels are there again. */
export const useFocusKept = (): void => {
  const { session } = useView();
  const cleared = useSession((state) => state.stageCleared);
  const left = useRef<FocusPlace | null>(null);
  useEffect(
    () =>
      session.subscribe((now, last) => {
        if (now.stageCleared && !last.stageCleared) left.current = focusPlace();
      }),
    [session],
  );
  useEffect(() => {
    const place = left.current;
    if (cleared || !place) return;
    left.current = null;
    let frames = 0;
    let frame = 0;
    const settle = () => {
      frames += 1;
      if (focusAgain(place)) return;
      if (frames < MOST_FRAMES) frame = requestAnimationFrame(settle);
      else focusRegion(place.region);
    };
    settle();
    return () => cancelAnimationFrame(frame);
  }, [cleared]);
};
