import { type RefObject, useLayoutEffect, useState } from 'react';

/** The width and height an element has just now, in CSS pixels; null before it is laid out. */
export const useSize = (ref: RefObject<HTMLElement | null>): { width: number; height: number } | null => {
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
};
