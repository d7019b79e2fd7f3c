import type { FreeArea } from '../../engines/movement/framing.ts';

/** Clear of the handles of the columns beside the scene, and of its lower edge. */
const SIDE_PX = 26;
const LOW_PX = 12;

const GAP_PX = 12;

/**
 * Puts the bar under what is chosen, at the lower edge of the free area: in reach of a thumb and clear of the room, and
 * beside or over what already stands there.
 */
export const placeBar = (
  bar: HTMLElement,
  handles: readonly { readonly x: number }[],
  area: FreeArea,
  standing: Element | null,
): void => {
  const { offsetWidth: width, offsetHeight: height } = bar;
  const side = Math.min(SIDE_PX, Math.max(0, (area.width - width) / 2));
  const xs = handles.map(({ x }) => x);
  const middle = xs.length > 0 ? (Math.min(...xs) + Math.max(...xs)) / 2 : area.left + area.width / 2;
  const most = area.left + area.width - side - width;
  let left = Math.min(Math.max(middle - width / 2, area.left + side), most);
  let top = area.top + area.height - LOW_PX - height;
  const other = standing?.getBoundingClientRect();
  const inTheWay = other && other.width > 0 && left < other.right + GAP_PX && left + width > other.left - GAP_PX;
  if (inTheWay && other.bottom > top) {
    if (other.right + GAP_PX <= most) left = other.right + GAP_PX;
    else top = other.top - GAP_PX - height;
  }
  bar.style.transform = `translate(${Math.round(left)}px,${Math.round(top)}px)`;
};
