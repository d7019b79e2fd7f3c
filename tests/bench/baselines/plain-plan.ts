/**
 * Plain rigid modes of an L-shaped plan, as a baseline and oracle: quadratic triangles on an even grid, banded Cholesky of
 * K + s M, Lanczos with every vector made orthogonal to all before it twice, a fixed number of steps, eigenvalues by
 * bisection. Nothing of it comes from src; no grading, no functions, no eigenvectors.
 */
/** Per 1/180 of the area; nodes as below. */
const MASS = [
  [6, -1, -1, 0, -4, 0],
  [-1, 6, -1, 0, 0, -4],
  [-1, -1, 6, -4, 0, 0],
  [0, 0, -4, 32, 16, 16],
  [-4, 0, 0, 16, 32, 16],
  [0, -4, 0, 16, 16, 32],
];
/** Right triangle, corners at the right angle, one step along each axis; then the middles of sides 0-1, 1-2, 2-0. Times 1/6. */
const STIFFNESS = [
  [6, 1, 1, -4, 0, -4],
  [1, 3, 0, -4, 0, 0],
  [1, 0, 3, 0, 0, -4],
  [-4, -4, 0, 16, -8, 0],
  [0, 0, 0, -8, 16, -8],
  [-4, 0, -4, 0, -8, 16],
];

/** Eigenvalues up to `top` (1/m2) of width x height without its corner of notchWidth x notchHeight at u = 0, v = height. */
export const plainPlanValues = (
  [width, height, notchWidth, notchHeight]: readonly [number, number, number, number],
  sideM: number,
  top: number,
  steps: number,
): number[] => {
  const [columns, rows] = [Math.round(width / sideM), Math.round(height / sideM)];
  const [cutColumns, cutRows] = [Math.round(notchWidth / sideM), Math.round(notchHeight / sideM)];
  const numbers = new Map<number, number>();
  const across = 2 * rows + 1;
  const isIn = (i: number, j: number): boolean => i >= 2 * cutColumns || j <= across - 1 - 2 * cutRows;
  for (let i = 0; i <= 2 * columns; i++)
    for (let j = 0; j < across; j++) if (isIn(i, j)) numbers.set(i * across + j, numbers.size);
  const size = numbers.size;
  const band = 2 * across + 3;
  const stiffness = new Float64Array(size * band);
  const mass = new Float64Array(size * band);
  const corner = (i: number, j: number, turn: number): void => {
    const nodes = [
      [0, 0],
      [2, 0],
      [0, 2],
      [1, 0],
      [1, 1],
      [0, 1],
    ].map(([a, b]) => numbers.get((i + turn * a) * across + j + turn * b) ?? -1);
    for (let a = 0; a < 6; a++) {
      for (let b = 0; b < 6; b++) {
        if (nodes[b] > nodes[a]) continue;
        const at = nodes[a] * band + nodes[a] - nodes[b];
        stiffness[at] += STIFFNESS[a][b] / 6;
        mass[at] += (MASS[a][b] * sideM * sideM) / 360;
      }
    }
  };
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      if (i < cutColumns && j >= rows - cutRows) continue;
      corner(2 * i, 2 * j, 1);
      corner(2 * i + 2, 2 * j + 2, -1);
    }
  }
  return lanczosValues(stiffness, mass, size, band, top, steps);
};

const times = (matrix: Float64Array, band: number, x: Float64Array): Float64Array => {
  const out = new Float64Array(x.length);
  for (let i = 0; i < x.length; i++) {
    out[i] += matrix[i * band] * x[i];
    for (let k = 1; k < band && k <= i; k++) {
      out[i] += matrix[i * band + k] * x[i - k];
      out[i - k] += matrix[i * band + k] * x[i];
    }
  }
  return out;
};

const lanczosValues = (
  stiffness: Float64Array,
  mass: Float64Array,
  size: number,
  band: number,
  top: number,
  steps: number,
): number[] => {
  const shift = 0.3 * top;
  const factor = stiffness.map((value, at) => value + shift * mass[at]);
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - band + 1); j <= i; j++) {
      let sum = factor[i * band + i - j];
      for (let k = Math.max(0, i - band + 1); k < j; k++) sum -= factor[i * band + i - k] * factor[j * band + j - k];
      factor[i * band + i - j] = i === j ? Math.sqrt(sum) : sum / factor[j * band];
    }
  }
  const solve = (x: Float64Array): void => {
    for (let i = 0; i < size; i++) {
      for (let k = 1; k < band && k <= i; k++) x[i] -= factor[i * band + k] * x[i - k];
      x[i] /= factor[i * band];
    }
    for (let i = size - 1; i >= 0; i--) {
      x[i] /= factor[i * band];
      for (let k = 1; k < band && k <= i; k++) x[i - k] -= factor[i * band + k] * x[i];
    }
  };
  const product = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, k) => sum + value * b[k], 0);
  const kept: Float64Array[] = [];
  const heavy: Float64Array[] = [];
  const [diagonal, off]: number[][] = [[], []];
  let x = Float64Array.from({ length: size }, (_, i) => Math.sin(1 + 7.3 * i * i));
  for (let step = 0; step <= steps; step++) {
    for (let pass = 0; pass < 2; pass++) {
      for (let i = 0; i < kept.length; i++) {
        const along = product(heavy[i], x);
        for (let k = 0; k < size; k++) x[k] -= along * kept[i][k];
      }
    }
    const length = Math.sqrt(product(x, times(mass, band, x)));
    if (step > 0) off.push(length);
    if (step === steps) break;
    kept.push(x.map((value) => value / length));
    heavy.push(times(mass, band, kept[step]));
    x = heavy[step].slice();
    solve(x);
    diagonal.push(product(x, heavy[step]));
  }
  return largestValues(diagonal, off, 1 / (top + shift)).map((theta) => 1 / theta - shift);
};

/** Eigenvalues over `least` of a symmetric tridiagonal matrix, descending, by bisection on the number of negative pivots. */
const largestValues = (diagonal: readonly number[], off: readonly number[], least: number): number[] => {
  const above = (at: number): number => {
    let count = 0;
    let pivot = 1;
    for (let i = 0; i < diagonal.length; i++) {
      pivot = diagonal[i] - at - (i > 0 ? off[i - 1] ** 2 / (pivot || 1e-300) : 0);
      if (pivot > 0) count++;
    }
    return count;
  };
  const most = Math.max(...diagonal) + 2 * Math.max(...off);
  return Array.from({ length: above(least) }, (_, i) => {
    let [low, high] = [least, most];
    for (let halving = 0; halving < 60; halving++) {
      const middle = (low + high) / 2;
      if (above(middle) > i) low = middle;
      else high = middle;
    }
    return low;
  });
};
