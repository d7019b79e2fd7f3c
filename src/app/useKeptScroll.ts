import { type RefObject, useCallback, useLayoutEffect, useRef } from 'react';

/** One box that scrolls several contents in turn: each opens where it was left, at first at its top. */
export const useKeptScroll = (shown: string, box: RefObject<HTMLElement | null>) => {
  const left = useRef(new Map<string, number>());
  useLayoutEffect(() => {
    box.current?.scrollTo(0, left.current.get(shown) ?? 0);
  }, [shown, box]);
  const onScroll = () => void left.current.set(shown, box.current?.scrollTop ?? 0);
  const toTop = useCallback(() => {
    left.current.clear();
    box.current?.scrollTo(0, 0);
  }, [box]);
  return {
    onScroll,
    /** All of them open at their top again, the one that is shown at once. */
    toTop,
  };
};
