import { symmetricKernel } from '../kernels/symmetric-kernel.ts';

export const packedLength = (n: number): number => n * (n + 1);

export const factoriseSymmetric = (n: number, a: Float64Array): boolean => symmetricKernel().factorise(n, a);

export const solveSymmetric = (n: number, factor: Float64Array, x: Float64Array, count: number): void =>
  symmetricKernel().solve(n, factor, x, count);
