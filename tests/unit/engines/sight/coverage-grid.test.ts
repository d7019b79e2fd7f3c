import { describe, expect, it } from 'vitest';
import { clearGrid, coveredCells, createGrid, fillTriangle } from '../../../../src/engines/sight/coverage-grid.ts';
import { seededRandom } from '../../../../src/math/random.ts';

/** Whether a point lies in a triangle, by the signs of three areas: nothing shared with the filler. */
const inside = (x: number, y: number, t: readonly number[]): boolean => {
  const area = (ax: number, ay: number, bx: number, by: number): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  const s = [area(t[0], t[1], t[2], t[3]), area(t[2], t[3], t[4], t[5]), area(t[4], t[5], t[0], t[1])];
  return s.every((v) => v >= 0) || s.every((v) => v <= 0);
};

describe('coverage grid', () => {
  it('counts what a point-in-triangle test of every cell centre counts', () => {
    const random = seededRandom(20261124);
    for (let round = 0; round < 300; round += 1) {
      const grid = createGrid(75, 41);
      const t = Array.from({ length: 6 }, (_, i) => (random() * 1.6 - 0.3) * (i % 2 ? 41 : 75));
      fillTriangle(grid, t[0], t[1], t[2], t[3], t[4], t[5]);
      let expected = 0;
      for (let j = 0; j < 41; j += 1) for (let i = 0; i < 75; i += 1) if (inside(i + 0.5, j + 0.5, t)) expected += 1;
      expect(coveredCells(grid), `round ${round}: ${t.join(' ')}`).toBe(expected);
    }
  });

  it('leaves no crack along an edge that two triangles share', () => {
    const random = seededRandom(7);
    for (let round = 0; round < 200; round += 1) {
      const grid = createGrid(64, 64);
      const [px, py] = [random() * 64, random() * 64];
      const corners = [0, 0, 64, 0, 64, 64, 0, 64];
      for (let i = 0; i < 8; i += 2) {
        const j = (i + 2) % 8;
        fillTriangle(grid, corners[i], corners[i + 1], corners[j], corners[j + 1], px, py);
      }
      expect(coveredCells(grid)).toBe(64 * 64);
    }
  });

  it('gives the same cells whatever the order of the corners', () => {
    const p = [3.2, 40.1, 70.7, 2.2, 33.3, 21.9];
    const orders = [
      [0, 1, 2],
      [0, 2, 1],
      [1, 0, 2],
      [1, 2, 0],
      [2, 0, 1],
      [2, 1, 0],
    ];
    const counts = orders.map(([a, b, c]) => {
      const grid = createGrid(75, 41);
      fillTriangle(grid, p[2 * a], p[2 * a + 1], p[2 * b], p[2 * b + 1], p[2 * c], p[2 * c + 1]);
      return [...grid.words].join();
    });
    expect(new Set(counts).size).toBe(1);
    expect(counts[0]).not.toMatch(/^[0,]*$/);
  });

  it('fills whole words and partial ones, and clears', () => {
    const grid = createGrid(100, 1);
    fillTriangle(grid, 0, -1, 100, -1, 0, 300);
    expect(coveredCells(grid)).toBe(100);
    clearGrid(grid);
    expect(coveredCells(grid)).toBe(0);
  });

  it('covers nothing with a triangle of no height', () => {
    const grid = createGrid(10, 10);
    fillTriangle(grid, 0, 3.2, 10, 3.2, 5, 3.2);
    expect(coveredCells(grid)).toBe(0);
  });
});
