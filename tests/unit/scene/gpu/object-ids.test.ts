import { describe, expect, it } from 'vitest';
import { countIds, idColour } from '../../../../src/scene/gpu/object-ids.ts';

describe('object ids', () => {
  it('come back from eight-bit colours as they went in', () => {
    const names = Array.from({ length: 700 }, (_, i) => `seat:${i}`);
    const ids = [1, 2, 255, 256, 300, 700, 300];
    const pixels = Uint8Array.from(
      [0, ...ids].flatMap((id) => [...idColour(id).map((share) => Math.round(share * 255)), 255]),
    );
    expect(countIds(pixels, names)).toEqual({
      'seat:0': 1,
      'seat:1': 1,
      'seat:254': 1,
      'seat:255': 1,
      'seat:299': 2,
      'seat:699': 1,
    });
  });
});
