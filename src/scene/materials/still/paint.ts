import { seededRandom } from '../../../math/random.ts';
import { paintGround, paintPlanting } from './garden.ts';
import { paintHouse } from './house.ts';
import { paintSky } from './sky.ts';
import { stillView } from './view.ts';
import { paintWalker } from './walker.ts';

/** A still of a film that does not exist: a formal garden at dusk, 16:9, drawn from nothing but this code. */
export const paintStill = (context: CanvasRenderingContext2D, width: number, height: number): void => {
  const view = stillView(context, width, height);
  paintSky(view);
  paintHouse(view);
  paintGround(view);
  paintPlanting(view);
  paintWalker(view);
  grade(context, width, height);
};

const grade = (context: CanvasRenderingContext2D, width: number, height: number): void => {
  const edge = context.createRadialGradient(
    width / 2,
    height * 0.48,
    height * 0.3,
    width / 2,
    height / 2,
    width * 0.62,
  );
  edge.addColorStop(0, 'rgba(6, 14, 24, 0)');
  edge.addColorStop(1, 'rgba(6, 14, 24, 0.5)');
  context.fillStyle = edge;
  context.fillRect(0, 0, width, height);
  context.globalCompositeOperation = 'soft-light';
  const warm = context.createLinearGradient(0, 0, 0, height);
  warm.addColorStop(0, 'rgba(40, 110, 150, 0.35)');
  warm.addColorStop(0.5, 'rgba(255, 170, 90, 0.3)');
  warm.addColorStop(1, 'rgba(20, 90, 110, 0.35)');
  context.fillStyle = warm;
  context.fillRect(0, 0, width, height);
  context.globalCompositeOperation = 'source-over';
  const random = seededRandom(3);
  for (let k = 0; k < 9000; k++) {
    context.fillStyle = random() < 0.5 ? 'rgba(255, 255, 255, 0.035)' : 'rgba(0, 0, 0, 0.045)';
    context.fillRect(random() * width, random() * height, 1.5, 1.5);
  }
};

const linear = (byte: number): number => {
  const value = byte / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
};

/**
 * Mean linear radiance of each patch of a picture's pixels (sRGB, RGBA, top row first): red, green, blue a patch,
 * patches from the bottom row up, left to right.
 */
export const patchMeans = (
  pixels: Uint8ClampedArray,
  width: number,
  height: number,
  columns: number,
  rows: number,
): Float32Array => {
  const sums = new Float64Array(columns * rows * 3);
  const counts = new Float64Array(columns * rows);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const row = rows - 1 - Math.min(rows - 1, Math.floor((y / height) * rows));
      const patch = row * columns + Math.min(columns - 1, Math.floor((x / width) * columns));
      const at = (y * width + x) * 4;
      for (let channel = 0; channel < 3; channel++) sums[patch * 3 + channel] += linear(pixels[at + channel]);
      counts[patch]++;
    }
  return Float32Array.from(sums, (sum, index) => sum / Math.max(1, counts[Math.floor(index / 3)]));
};
