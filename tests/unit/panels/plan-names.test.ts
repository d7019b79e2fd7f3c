import { describe, expect, it } from 'vitest';
import { placeNames } from '../../../src/panels/seats/plan-names.ts';

const PLAN = { width: 200, height: 120 };
const box = (id: string, left: number, top: number, width: number, height: number) => ({
  id,
  left,
  top,
  width,
  height,
});
const thing = (id: string, name: string, left: number, top: number, width = 14, height = 12) => ({
  ...box(id, left, top, width, height),
  name,
});

describe('names in the seat plan', () => {
  it('stand in what is large enough, else beside it', () => {
    const [large, small] = placeNames([thing('a', 'Table', 10, 10, 60, 30), thing('b', 'Table', 100, 80)], [], PLAN);
    expect(large.left).toBeGreaterThanOrEqual(10);
    expect(large.left + large.width).toBeLessThanOrEqual(70);
    expect(small.left).toBeGreaterThanOrEqual(114);
    expect(small.top + small.height / 2).toBeCloseTo(86, 9);
  });

  it('give way to chairs: to the left, then under, then over', () => {
    const chairRight = box('chair', 114, 50, 80, 40);
    const [left] = placeNames([thing('a', 'Table', 100, 60)], [chairRight], PLAN);
    expect(left.left + left.width).toBeLessThanOrEqual(100);
    const chairLeft = box('other', 20, 50, 80, 40);
    const [under] = placeNames([thing('a', 'Table', 100, 60)], [chairRight, chairLeft], PLAN);
    expect(under).toBeUndefined();
    const narrow = [box('r', 114, 62, 80, 8), box('l', 20, 62, 80, 8)];
    const [below] = placeNames([thing('a', 'Table', 100, 60)], narrow, PLAN);
    expect(below.top).toBeGreaterThanOrEqual(72);
    const [over] = placeNames([thing('a', 'Table', 100, 60)], [...narrow, box('u', 60, 73, 100, 20)], PLAN);
    expect(over.top + over.height).toBeLessThanOrEqual(60);
  });

  it('never leave the plan nor lie over one another', () => {
    const things = [
      thing('corner', 'Sideboard', 186, 0),
      thing('near', 'Lamp', 186, 13),
      thing('long', 'A very long name for a small thing', 0, 100),
    ];
    const placed = placeNames(things, [], PLAN);
    expect(placed.map(({ id }) => id)).toEqual(['corner', 'near']);
    for (const one of placed) {
      expect(one.left).toBeGreaterThanOrEqual(0);
      expect(one.top + one.height).toBeLessThanOrEqual(PLAN.height);
      expect(one.left + one.width).toBeLessThanOrEqual(PLAN.width);
    }
    const [a, b] = placed;
    expect(a.top + a.height <= b.top || b.top + b.height <= a.top || a.left + a.width <= b.left).toBe(true);
  });
});
