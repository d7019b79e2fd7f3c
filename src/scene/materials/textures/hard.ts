import { seededRandom } from '../../../math/random.ts';
import { cloudNoise, grey, type Pattern, tileNoise } from './noise.ts';

/** Rolled paint on plaster: a fine stipple over slow unevenness of the trowel. */
export const plasterPattern = (seed: number): Pattern => {
  const trowel = cloudNoise(seed, 4, 4, 4);
  const sweep = cloudNoise(seed + 7, 9, 3, 3);
  const stipple = tileNoise(seed + 1, 200);
  return (u, v, out) => {
    grey(out, 1 + 0.13 * (trowel(u, v) - 0.5) + 0.06 * (sweep(u, v) - 0.5) + 0.045 * (stipple(u, v) - 0.5));
  };
};

/** Stretcher bond: `courses` in the tile, two bricks a course, mortar joints paler and sunk. */
export const brickPattern = (seed: number, courses: number): Pattern => {
  const random = seededRandom(seed);
  const perCourse = 4;
  const tones = Float32Array.from({ length: courses * perCourse }, () => 0.72 + 0.5 * random());
  const grit = tileNoise(seed + 1, 150);
  return (u, v, out) => {
    const course = Math.floor(v * courses);
    const shifted = (u * perCourse + (course % 2) * 0.5) % perCourse;
    const brick = Math.floor(shifted);
    const toSide = Math.min(shifted - brick, 1 - (shifted - brick)) / perCourse;
    const toBed = Math.min(v * courses - course, 1 - (v * courses - course)) / courses;
    const mortar = Math.min(toSide, toBed) < 0.006;
    const tone = mortar ? 1.15 : tones[course * perCourse + brick];
    const speckle = 0.88 + 0.24 * grit(u, v);
    out.red = tone * speckle;
    out.green = tone * speckle * (mortar ? 1.15 : 1);
    out.blue = tone * speckle * (mortar ? 1.3 : 1);
  };
};

/** Metal brushed along u. */
export const brushedPattern = (seed: number): Pattern => {
  const scratches = tileNoise(seed, 4, 256);
  const long = tileNoise(seed + 1, 2, 90);
  return (u, v, out) => {
    const tone = 0.84 + 0.2 * scratches(u, v) + 0.12 * long(u, v);
    grey(out, tone);
    out.gloss = tone;
  };
};

/** Pressed sheet: staggered round holes, `holes` across the tile. */
export const perforatedPattern =
  (holes: number): Pattern =>
  (u, v, out) => {
    const b = v * holes * 1.1547;
    const row = Math.floor(b);
    const a = u * holes + (row % 2) * 0.5;
    const d = Math.hypot(a - Math.floor(a) - 0.5, (b - row - 0.5) * 0.866);
    grey(out, d < 0.32 ? 0.25 : 1.1);
  };
