// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { placeBar } from '../../../../src/scene/interaction/bar-place.ts';

const AREA = { left: 0, top: 52, width: 456, height: 338, canvasWidth: 844, canvasHeight: 390 };

const barOf = (width: number, height: number): HTMLElement => {
  const bar = document.createElement('div');
  Object.defineProperty(bar, 'offsetWidth', { value: width });
  Object.defineProperty(bar, 'offsetHeight', { value: height });
  return bar;
};
const standingAt = (left: number, top: number, width: number, height: number): Element => {
  const other = document.createElement('div');
  other.getBoundingClientRect = () => new DOMRect(left, top, width, height);
  return other;
};
const placed = (bar: HTMLElement): number[] => (bar.style.transform.match(/-?\d+/g) ?? []).map(Number);

describe('place of the bar', () => {
  it('is the lower edge of what the panels leave, under what is chosen', () => {
    const bar = barOf(300, 46);
    placeBar(bar, [{ x: 200 }, { x: 240 }], AREA, null);
    // middle of the handles less half the bar; 12 px over the edge at 52 + 338
    expect(placed(bar)).toEqual([70, 332]);
  });

  it('goes beside or over a legend that stands there', () => {
    const beside = barOf(100, 46);
    placeBar(beside, [{ x: 60 }], AREA, standingAt(20, 320, 200, 60));
    expect(placed(beside)).toEqual([232, 332]);
    const over = barOf(300, 46);
    placeBar(over, [{ x: 60 }], AREA, standingAt(20, 320, 200, 60));
    expect(placed(over)[1]).toBe(320 - 12 - 46);
  });

  it('minds no legend in a sheet beside the scene', () => {
    const bar = barOf(378, 46);
    placeBar(bar, [{ x: 160 }], AREA, standingAt(473, 300, 300, 60));
    expect(placed(bar)[1]).toBe(332);
  });
});
