import type { PlanSpace } from './plan-space.ts';

/** Stiffness int grad N_i . grad N_j and mass int N_i N_j on the sparse rows of a space. */
export interface PlanMatrices {
  readonly stiffness: Float64Array;
  readonly mass: Float64Array;
}

export const assemble = ({ mesh, element, nodes, rowStart, column }: PlanSpace): PlanMatrices => {
  const stiffness = new Float64Array(column.length);
  const mass = new Float64Array(column.length);
  const { coords, triangles } = mesh;
  const per = element.nodes;
  const [s11, s12, s22] = element.stiffness;
  for (let t = 0; t < triangles.length / 3; t++) {
    const [a, b, c] = triangles.subarray(3 * t, 3 * t + 3);
    const [bu, bv] = [coords[2 * b] - coords[2 * a], coords[2 * b + 1] - coords[2 * a + 1]];
    const [cu, cv] = [coords[2 * c] - coords[2 * a], coords[2 * c + 1] - coords[2 * a + 1]];
    const twice = bu * cv - bv * cu;
    const area = twice / 2;
    // grad L1 = (cv, -cu) / twice, grad L2 = (-bv, bu) / twice
    const scale = area / (twice * twice);
    const [g11, g12, g22] = [scale * (cv * cv + cu * cu), -scale * (cv * bv + cu * bu), scale * (bv * bv + bu * bu)];
    for (let i = 0; i < per; i++) {
      const row = nodes[t * per + i];
      for (let j = 0; j < per; j++) {
        const at = find(column, rowStart[row], rowStart[row + 1], nodes[t * per + j]);
        const ij = i * per + j;
        stiffness[at] += g11 * s11[ij] + g12 * s12[ij] + g22 * s22[ij];
        mass[at] += area * element.mass[ij];
      }
    }
  }
  return { stiffness, mass };
};

const find = (column: Uint32Array, from: number, to: number, wanted: number): number => {
  let low = from;
  let high = to - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (column[middle] < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** out = A x on sparse rows. */
export const multiply = (
  { rowStart, column, size }: PlanSpace,
  values: Float64Array,
  x: Float64Array,
  out: Float64Array,
): void => {
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) sum += values[k] * x[column[k]];
    out[i] = sum;
  }
};
