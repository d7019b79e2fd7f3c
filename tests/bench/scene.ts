import type { SlicePlane } from '../../src/engines/bass/room-field.ts';

/** What the bench computes: four subwoofers, twelve seats, eighty frequencies, a floor slice of 128 x 128 points. */
export const EPSILON = 5e-5;
export const CUT_HZ = 900;
export const FREQUENCIES_HZ = Float64Array.from({ length: 80 }, (_, i) => 20 * 2 ** (i / 24));

export interface Scene {
  title: string;
  spec: {
    sizeM: readonly [number, number, number];
    soundSpeed: number;
    admittance: readonly (readonly [number, number])[];
  };
  sources: Float64Array;
  rows: Float64Array;
  scattered: Float64Array;
}

const scene = (title: string, sizeM: readonly [number, number, number], betas: readonly number[]): Scene => {
  const [w, , l] = sizeM;
  const rows = [0.5, 0.75].flatMap((z, row) =>
    Array.from({ length: 6 }, (_, i) => [w * (0.15 + 0.14 * i), 1.15 + 0.25 * row, l * z]),
  );
  return {
    title,
    spec: { sizeM, soundSpeed: 343.2, admittance: betas.map((beta) => [beta, 0] as const) },
    sources: Float64Array.from(
      [
        [0.3, 0.2, 0.3],
        [w - 0.3, 0.2, 0.3],
        [0.3, 0.2, l - 0.3],
        [w - 0.3, 0.2, l - 0.3],
      ].flat(),
    ),
    rows: Float64Array.from(rows.flat()),
    scattered: Float64Array.from(rows.flat(), (x, i) => x + 0.12 * Math.sin(7.1 * i)),
  };
};

export const SCENES = [
  scene('4.30 x 2.70 x 6.10 m, walls 0.02 to 0.10', [4.3, 2.7, 6.1], [0.05, 0.08, 0.03, 0.05, 0.02, 0.1]),
  scene('a cube of 4 m, one material (degenerate)', [4, 4, 4], [0.05, 0.05, 0.05, 0.05, 0.05, 0.05]),
];

/** A horizontal slice over the whole floor. */
export const floorPlane = ({ spec }: Scene, atM: number, points: number): SlicePlane => ({
  normal: 1,
  atM,
  uAxis: 0,
  vAxis: 2,
  uM: Float64Array.from({ length: points }, (_, i) => (spec.sizeM[0] * (i + 0.5)) / points),
  vM: Float64Array.from({ length: points }, (_, i) => (spec.sizeM[2] * (i + 0.5)) / points),
});

/** Largest |a - b| over the rms of |b|. */
export const worstOverRms = (
  a: { re: ArrayLike<number>; im: ArrayLike<number> },
  b: { re: ArrayLike<number>; im: ArrayLike<number> },
): number => {
  let worst = 0;
  let squares = 0;
  for (let i = 0; i < b.re.length; i++) {
    worst = Math.max(worst, Math.hypot(a.re[i] - b.re[i], a.im[i] - b.im[i]));
    squares += b.re[i] ** 2 + b.im[i] ** 2;
  }
  return worst / Math.sqrt(squares / b.re.length);
};

/** Root of the mean |a - b|^2 over the rms of |b|. */
export const meanOverRms = (
  a: { re: ArrayLike<number>; im: ArrayLike<number> },
  b: { re: ArrayLike<number>; im: ArrayLike<number> },
): number => {
  let error = 0;
  let squares = 0;
  for (let i = 0; i < b.re.length; i++) {
    error += (a.re[i] - b.re[i]) ** 2 + (a.im[i] - b.im[i]) ** 2;
    squares += b.re[i] ** 2 + b.im[i] ** 2;
  }
  return Math.sqrt(error / squares);
};
