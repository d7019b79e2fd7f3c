/**
 * A grid of cells over a flat target, one bit a cell, with a triangle filler. A cell counts as covered when its centre
 * lies in (or on the edge of) a triangle. Coordinates are in cells: x from 0 to `columns`, y from 0 to `rows`.
 */
export interface CoverageGrid {
  readonly columns: number;
  readonly rows: number;
  readonly wordsPerRow: number;
  readonly words: Uint32Array;
}

export const createGrid = (columns: number, rows: number): CoverageGrid => {
  const wordsPerRow = Math.ceil(columns / 32);
  return { columns, rows, wordsPerRow, words: new Uint32Array(wordsPerRow * rows) };
};

export const clearGrid = (grid: CoverageGrid): void => {
  grid.words.fill(0);
};

/** The number of set bits in a 32-bit word (pairwise sums). */
const bitCount = (word: number): number => {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const quads = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((quads + (quads >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
};

/** The number of covered cells. */
export const coveredCells = (grid: CoverageGrid): number => {
  const { words } = grid;
  let count = 0;
  for (let i = 0; i < words.length; i += 1) if (words[i] !== 0) count += bitCount(words[i]);
  return count;
};

/** Sets the cells `from` to `to` (both included, inside the grid) of one row. */
const fillSpan = (words: Uint32Array, rowStart: number, from: number, to: number): void => {
  const first = rowStart + (from >>> 5);
  const last = rowStart + (to >>> 5);
  const head = 0xffffffff << (from & 31);
  const tail = 0xffffffff >>> (31 - (to & 31));
  if (first === last) {
    words[first] |= head & tail;
    return;
  }
  words[first] |= head;
  for (let i = first + 1; i < last; i += 1) words[i] = 0xffffffff;
  words[last] |= tail;
};

/** Covers a triangle whose corners come in rising order of y. */
const fillSorted = (
  grid: CoverageGrid,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
): void => {
  const { columns, words, wordsPerRow } = grid;
  const firstRow = Math.max(0, Math.ceil(ay - 0.5));
  const lastRow = Math.min(grid.rows - 1, Math.floor(cy - 0.5));
  if (firstRow > lastRow) return;
  const longSlope = cy > ay ? (cx - ax) / (cy - ay) : 0;
  const lowSlope = by > ay ? (bx - ax) / (by - ay) : 0;
  const highSlope = cy > by ? (cx - bx) / (cy - by) : 0;
  for (let row = firstRow; row <= lastRow; row += 1) {
    const y = row + 0.5;
    const one = ax + (y - ay) * longSlope;
    const other = y < by ? ax + (y - ay) * lowSlope : bx + (y - by) * highSlope;
    const from = Math.max(0, Math.ceil(Math.min(one, other) - 0.5));
    const to = Math.min(columns - 1, Math.floor(Math.max(one, other) - 0.5));
    if (from <= to) fillSpan(words, row * wordsPerRow, from, to);
  }
};

/**
 * Covers the cells whose centres lie in the triangle a, b, c. Every edge is walked from its lower end, so that two
 * triangles sharing an edge leave no crack along it.
 */
export const fillTriangle = (
  grid: CoverageGrid,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
): void => {
  if (ay <= by) {
    if (by <= cy) fillSorted(grid, ax, ay, bx, by, cx, cy);
    else if (ay <= cy) fillSorted(grid, ax, ay, cx, cy, bx, by);
    else fillSorted(grid, cx, cy, ax, ay, bx, by);
  } else if (ay <= cy) fillSorted(grid, bx, by, ax, ay, cx, cy);
  else if (by <= cy) fillSorted(grid, bx, by, cx, cy, ax, ay);
  else fillSorted(grid, cx, cy, bx, by, ax, ay);
};
