import type { WallPatch } from '../../../src/engines/bass/room-field.ts';

/**
 * The room with patches in the plainest complete way: rigid modes up to a frequency as the basis, the admittance of walls and
 * patches as a full matrix between them, one dense solution a frequency. Shares nothing with the engine but its input types.
 *
 *   (k_i^2 - k^2) c_i + j k sum over j of B_ij c_j = 4 pi phi_i(source),     H = sum of c_i phi_i(seat)
 */
export interface DenseRoom {
  readonly orders: readonly (readonly [number, number, number])[];
  readonly k2: Float64Array;
  /** B, re, im at 2 (i n + j). */
  readonly walls: Float64Array;
  readonly sizeM: readonly number[];
}

const shape = (n: number, x: number, lengthM: number): number =>
  Math.sqrt((n === 0 ? 1 : 2) / lengthM) * Math.cos((n * Math.PI * x) / lengthM);

/** Integral of two shapes between two places. */
const overlap = (m: number, n: number, from: number, to: number, lengthM: number): number => {
  const primitive = (order: number, x: number): number =>
    order === 0 ? x : (Math.sin((order * Math.PI * x) / lengthM) * lengthM) / (order * Math.PI);
  const norm = Math.sqrt((m === 0 ? 1 : 2) * (n === 0 ? 1 : 2)) / lengthM;
  const whole = (x: number): number => (primitive(Math.abs(m - n), x) + primitive(m + n, x)) / 2;
  return norm * (whole(to) - whole(from));
};

export const denseRoom = (
  sizeM: readonly [number, number, number],
  soundSpeed: number,
  admittance: readonly (readonly [number, number])[],
  patches: readonly WallPatch[],
  topHz: number,
): DenseRoom => {
  const top = (2 * Math.PI * topHz) / soundSpeed;
  const orders: [number, number, number][] = [];
  for (let l = 0; (l * Math.PI) / sizeM[0] <= top; l++)
    for (let m = 0; (m * Math.PI) / sizeM[1] <= top; m++)
      for (let n = 0; Math.hypot(l / sizeM[0], m / sizeM[1], n / sizeM[2]) * Math.PI <= top; n++)
        orders.push([l, m, n]);
  const count = orders.length;
  const k2 = Float64Array.from(orders, (order) =>
    order.reduce((sum, n, axis) => sum + ((n * Math.PI) / sizeM[axis]) ** 2, 0),
  );
  const walls = new Float64Array(2 * count * count);
  const add = (
    wall: number,
    from: readonly number[],
    to: readonly number[],
    [re, im]: readonly [number, number],
  ): void => {
    const normal = wall >> 1;
    const [u, v] = [0, 1, 2].filter((axis) => axis !== normal);
    const atM = wall % 2 === 0 ? 0 : sizeM[normal];
    for (let i = 0; i < count; i++)
      for (let j = 0; j < count; j++) {
        const value =
          shape(orders[i][normal], atM, sizeM[normal]) *
          shape(orders[j][normal], atM, sizeM[normal]) *
          overlap(orders[i][u], orders[j][u], from[0], to[0], sizeM[u]) *
          overlap(orders[i][v], orders[j][v], from[1], to[1], sizeM[v]);
        walls[2 * (i * count + j)] += re * value;
        walls[2 * (i * count + j) + 1] += im * value;
      }
  };
  for (let wall = 0; wall < 6; wall++) {
    const [u, v] = [0, 1, 2].filter((axis) => axis !== wall >> 1);
    add(wall, [0, 0], [sizeM[u], sizeM[v]], admittance[wall]);
  }
  for (const { wall, fromM, toM, admittance: own } of patches)
    add(wall, fromM, toM, [own[0] - admittance[wall][0], own[1] - admittance[wall][1]]);
  return { orders, k2, walls, sizeM };
};

/** H of every source at every seat at one frequency, index source * seats + seat; Gaussian elimination, all sources at once. */
export const denseResponses = (
  room: DenseRoom,
  soundSpeed: number,
  hz: number,
  sources: Float64Array,
  seats: Float64Array,
): { re: Float64Array; im: Float64Array } => {
  const count = room.orders.length;
  const k = (2 * Math.PI * hz) / soundSpeed;
  const sourceCount = sources.length / 3;
  const seatCount = seats.length / 3;
  const width = count + sourceCount;
  const re = new Float64Array(count * width);
  const im = new Float64Array(count * width);
  const value = (i: number, points: Float64Array, p: number): number =>
    room.orders[i].reduce((product, n, axis) => product * shape(n, points[3 * p + axis], room.sizeM[axis]), 1);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      re[i * width + j] = -k * room.walls[2 * (i * count + j) + 1] + (i === j ? room.k2[i] - k * k : 0);
      im[i * width + j] = k * room.walls[2 * (i * count + j)];
    }
    for (let s = 0; s < sourceCount; s++) re[i * width + count + s] = 4 * Math.PI * value(i, sources, s);
  }
  for (let p = 0; p < count; p++) {
    const pivot = re[p * width + p] ** 2 + im[p * width + p] ** 2;
    for (let i = p + 1; i < count; i++) {
      const a = re[i * width + p];
      const b = im[i * width + p];
      const fRe = (a * re[p * width + p] + b * im[p * width + p]) / pivot;
      const fIm = (b * re[p * width + p] - a * im[p * width + p]) / pivot;
      for (let j = p; j < width; j++) {
        re[i * width + j] -= fRe * re[p * width + j] - fIm * im[p * width + j];
        im[i * width + j] -= fRe * im[p * width + j] + fIm * re[p * width + j];
      }
    }
  }
  const out = { re: new Float64Array(sourceCount * seatCount), im: new Float64Array(sourceCount * seatCount) };
  for (let s = 0; s < sourceCount; s++) {
    for (let i = count - 1; i >= 0; i--) {
      let a = re[i * width + count + s];
      let b = im[i * width + count + s];
      for (let j = i + 1; j < count; j++) {
        a -= re[i * width + j] * re[j * width + count + s] - im[i * width + j] * im[j * width + count + s];
        b -= re[i * width + j] * im[j * width + count + s] + im[i * width + j] * re[j * width + count + s];
      }
      const pivot = re[i * width + i] ** 2 + im[i * width + i] ** 2;
      re[i * width + count + s] = (a * re[i * width + i] + b * im[i * width + i]) / pivot;
      im[i * width + count + s] = (b * re[i * width + i] - a * im[i * width + i]) / pivot;
    }
    for (let r = 0; r < seatCount; r++)
      for (let i = 0; i < count; i++) {
        const at = value(i, seats, r);
        out.re[s * seatCount + r] += re[i * width + count + s] * at;
        out.im[s * seatCount + r] += im[i * width + count + s] * at;
      }
  }
  return out;
};
