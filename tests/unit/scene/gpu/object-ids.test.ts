import { describe, expect, it } from 'vitest';
import { countIds, idColour, thingAt } from '../../../../src/scene/gpu/object-ids.ts';

describe('object ids', () => {
  it('come back from eight-bit colours as they went in', () => {
    const names = Array.from({ length: 700 }, (_, i) => `seat:${i}`);
    const ids = [1, 2, 255, 256, 300, 700, 300];
    const pixels = Uint8Array.from(
      [0, ...ids].flatMap((id) => [...idColour(id).map((share) => Math.round(share * 255)), 255]),
    );
    expect(countIds({ pixels, names })).toEqual({
      'seat:0': 1,
      'seat:1': 1,
      'seat:254': 1,
      'seat:255': 1,
      'seat:299': 2,
      'seat:699': 1,
    });
  });

  it('are found at a point counted from the upper left, rows stored from the bottom', () => {
    // Two by two: number 1 bottom left, 2 bottom right, 3 top left, nothing top right.
    const pixels = Uint8Array.from([1, 2, 3, 0].flatMap((id) => [id, 0, 0, 255]));
    const image = { width: 2, height: 2, pixels, names: ['a', 'b', 'c'] };
    expect(thingAt(image, 0.2, 0.9)).toBe('a');
    expect(thingAt(image, 0.9, 0.9)).toBe('b');
    expect(thingAt(image, 0, 0)).toBe('c');
    expect(thingAt(image, 1, 0)).toBeNull();
  });
});
