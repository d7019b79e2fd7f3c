import { describe, expect, it } from 'vitest';
import { polygonShare } from '../../../../src/scene/light/lambert.ts';
import type { Occluders } from '../../../../src/scene/light/occluders.ts';
import {
  addPictureLight,
  PICTURE_COLUMNS,
  PICTURE_ROWS,
  pictureLight,
} from '../../../../src/scene/light/picture-light.ts';
import type { PictureFace } from '../../../../src/shapes/picture.ts';

const picture: PictureFace = {
  centreM: [0.3, 1.45, 0.4],
  right: [1, 0, 0],
  up: [0, 1, 0],
  normal: [0, 0, 1],
  widthM: 2.4,
  heightM: 1.5,
  bottomM: 0.7,
  zM: 0.4,
};
const even = new Float32Array(PICTURE_COLUMNS * PICTURE_ROWS * 3).fill(1);

const lightAt = (
  at: readonly number[],
  normal: readonly number[],
  radiance = even,
  hidden: Occluders | null = null,
) => {
  const out = new Float32Array(3);
  addPictureLight(
    pictureLight(picture, radiance),
    at[0],
    at[1],
    at[2],
    normal[0],
    normal[1],
    normal[2],
    hidden,
    out,
    0,
  );
  return out;
};

const whole = (at: readonly number[], normal: readonly number[]): number => {
  const [x0, x1, y0, y1, z] = [-0.9, 1.5, 0.7, 2.2, 0.4];
  const corners = [x0, y0, z, x1, y0, z, x1, y1, z, x0, y1, z].map((v, i) => v - at[i % 3]);
  return polygonShare(Float64Array.from(corners), 4, normal[0], normal[1], normal[2]);
};

describe("the picture's light", () => {
  it.each([
    ['face on', [0.3, 1.4, 3], [0, 0, -1]],
    ['a side wall', [-2, 1.2, 1.5], [1, 0, 0]],
    ['the floor near the screen', [0.5, 0, 0.6], [0, 1, 0]],
    ['a floor half above the lower edge', [0.2, 1.4, 2], [0, 1, 0]],
    ['a tilted face', [1.2, 1.0, 2.5], [0.6, 0.48, -0.64]],
  ])('adds up to the whole rectangle on %s', (_name, at, normal) => {
    const [red, green, blue] = lightAt(at, normal);
    // Single precision sums of eight patches.
    expect(Math.abs(red - whole(at, normal))).toBeLessThan(2e-6);
    expect(green).toBe(red);
    expect(blue).toBe(red);
    expect(red).toBeGreaterThan(1e-4);
  });

  it('comes from the side that is lit', () => {
    const leftOnly = new Float32Array(even.length);
    for (let j = 0; j < PICTURE_ROWS; j++) leftOnly[j * PICTURE_COLUMNS * 3] = 1;
    const onLeft = lightAt([-2, 1.4, 1], [1, 0, 0], leftOnly)[0];
    const onRight = lightAt([2.6, 1.4, 1], [-1, 0, 0], leftOnly)[0];
    expect(onLeft).toBeGreaterThan(3 * onRight);
  });

  it('does not reach behind the screen, and stops at a box in the way', () => {
    expect(lightAt([0.3, 1.4, 0.2], [0, 0, 1])[0]).toBe(0);
    const wall: Occluders = {
      boxes: Float64Array.of(-3, 0, 1, 4, 3, 1.1),
      owners: ['object:wall'],
      walls: new Float64Array(0),
      skip: '',
    };
    expect(lightAt([0.3, 1.4, 3], [0, 0, -1], even, wall)[0]).toBe(0);
    wall.skip = 'object:wall';
    expect(lightAt([0.3, 1.4, 3], [0, 0, -1], even, wall)[0]).toBeGreaterThan(0.1);
  });
});
