import { type LevelAxis, shareOfLevel } from '../ribbon/layout.ts';
import { shareOfHz } from '../ribbon/levels.ts';

/** Where a plot of something over frequency stands in its box, CSS pixels. */
export interface PlotFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const plotFrame = (width: number, height: number): PlotFrame => ({
  left: 40,
  right: Math.max(41, width - 14),
  top: 10,
  bottom: Math.max(11, height - 24),
});

export const xOf = ({ left, right }: PlotFrame, hz: number): number => left + shareOfHz(hz) * (right - left);

export const yOf = ({ top, bottom }: PlotFrame, axis: LevelAxis, levelDb: number): number =>
  bottom - shareOfLevel(levelDb, axis) * (bottom - top);

/** A line through levels over frequencies, as an SVG path. */
export const levelPath = (
  frame: PlotFrame,
  axis: LevelAxis,
  frequenciesHz: ArrayLike<number>,
  levelsDb: ArrayLike<number>,
): string => {
  let path = '';
  for (let i = 0; i < frequenciesHz.length; i++)
    path += `${i === 0 ? 'M' : 'L'}${xOf(frame, frequenciesHz[i]).toFixed(1)} ${yOf(frame, axis, levelsDb[i]).toFixed(1)}`;
  return path;
};

/** The area between two lines. */
export const bandPath = (
  frame: PlotFrame,
  axis: LevelAxis,
  frequenciesHz: ArrayLike<number>,
  lowDb: ArrayLike<number>,
  highDb: ArrayLike<number>,
): string => {
  let path = levelPath(frame, axis, frequenciesHz, highDb);
  for (let i = frequenciesHz.length - 1; i >= 0; i--)
    path += `L${xOf(frame, frequenciesHz[i]).toFixed(1)} ${yOf(frame, axis, lowDb[i]).toFixed(1)}`;
  return `${path}Z`;
};

/** For a table that scrolls and holds nothing to press: Tab stops at it, and the arrows scroll it in every browser. */
export const SCROLLED_BY_KEYS = { tabIndex: 0 } as const;
