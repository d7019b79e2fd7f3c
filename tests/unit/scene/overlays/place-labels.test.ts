import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../src/math/random.ts';
import { type Box, type LabelWish, placeLabels } from '../../../../src/scene/overlays/place-labels.ts';

const FREE: Box = { left: 306, top: 62, width: 648, height: 582 };

const wish = (x: number, y: number, priority = 1, depthM = 3, width = 96): LabelWish => ({
  x,
  y,
  width,
  height: 20,
  priority,
  depthM,
  lastPlace: -1,
  left: 0,
  top: 0,
  shown: false,
});

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height && b.top < a.top + a.height;

const boxOf = ({ left, top, width, height }: LabelWish): Box => ({ left, top, width, height });

describe('places of labels', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'seed %d: never meet, never leave the free area, never cover what is kept clear',
    (seed) => {
      const random = seededRandom(seed);
      const clear: Box = { left: 500, top: 150, width: 220, height: 130 };
      const wishes = Array.from({ length: 40 }, () =>
        wish(306 + random() * 648, 62 + random() * 582, Math.floor(random() * 4), random() * 8, 40 + random() * 90),
      );
      for (let frame = 0; frame < 3; frame++) {
        placeLabels(wishes, FREE, [clear]);
        const shown = wishes.filter((label) => label.shown).map(boxOf);
        expect(shown.length).toBeGreaterThan(12);
        for (const [i, a] of shown.entries()) {
          expect(a.left).toBeGreaterThanOrEqual(FREE.left);
          expect(a.top).toBeGreaterThanOrEqual(FREE.top);
          expect(a.left + a.width).toBeLessThanOrEqual(FREE.left + FREE.width);
          expect(a.top + a.height).toBeLessThanOrEqual(FREE.top + FREE.height);
          expect(overlap(a, clear)).toBe(false);
          for (const b of shown.slice(i + 1)) expect(overlap(a, b)).toBe(false);
        }
      }
    },
  );

  it('lets the more important choose first, then the nearer', () => {
    const far = wish(600, 300, 1, 6);
    const near = wish(600, 300, 1, 2);
    const chosen = wish(600, 300, 9, 9);
    const wishes = [far, near, chosen];
    placeLabels(wishes, FREE, []);
    expect(wishes).toEqual([chosen, near, far]);
    expect(chosen.lastPlace).toBe(0);
    expect(near.lastPlace).toBeLessThan(far.lastPlace);
  });

  it('stays in its place while it can', () => {
    const label = wish(600, 300);
    label.lastPlace = 5;
    placeLabels([label], FREE, []);
    expect(label.lastPlace).toBe(5);
  });

  it('covers at most a tenth of the free area, the least important staying away', () => {
    const phone: Box = { left: 6, top: 58, width: 378, height: 325 };
    const wishes = Array.from({ length: 20 }, (_, i) => wish(30 + i * 17, 70 + ((i * 53) % 300), 20 - i, 3, 100));
    placeLabels(wishes, phone, []);
    const shown = wishes.filter((label) => label.shown);
    // 100 x 20 px each: a tenth of 378 x 325 px holds six.
    expect(shown.map(({ priority }) => priority)).toEqual([20, 19, 18, 17, 16, 15]);
  });

  it('hides what finds no place at all', () => {
    const label = wish(600, 300);
    placeLabels([label], FREE, [FREE]);
    expect(label.shown).toBe(false);
  });
});
