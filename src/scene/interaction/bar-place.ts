import type { FreeArea } from '../../engines/movement/framing.ts';

const EDGE_PX = 8;
/** Clear of the lowest handle and its word. */
const BELOW_PX = 42;

/** Puts the bar under the handles of what is chosen, within the free area; at its lower edge where there are none in view. */
export const placeBar = (
  bar: HTMLElement,
  handles: readonly { readonly x: number; readonly y: number }[],
  area: FreeArea,
): void => {
  const { offsetWidth: width, offsetHeight: height } = bar;
  const right = area.left + area.width - EDGE_PX;
  const bottom = area.top + area.height - EDGE_PX;
  const xs = handles.map(({ x }) => x);
  const middle = xs.length > 0 ? (Math.min(...xs) + Math.max(...xs)) / 2 : area.left + area.width / 2;
  const lowest = handles.length > 0 ? Math.max(...handles.map(({ y }) => y)) : Number.POSITIVE_INFINITY;
  const left = Math.min(Math.max(middle - width / 2, area.left + EDGE_PX), right - width);
  const top = Math.min(lowest + BELOW_PX, bottom - height);
  bar.style.transform = `translate(${Math.round(left)}px,${Math.round(top)}px)`;
};
