import { leastAttenuation, type PlainRoom, plainRoom, shape } from './plain-axis.ts';
import { plainGreen } from './plain-green.ts';

const y = new Float64Array(2);
const y0 = new Float64Array(2);
const z = new Float64Array(2);
const z0 = new Float64Array(2);
const g = new Float64Array(2);

const ACROSS = [
  [1, 2],
  [0, 2],
  [0, 1],
] as const;

/** The axis whose sum has the fewest terms at 80 Hz: (k^2 + (ln(1 / eps) / separation)^2) times the cross-section. */
const closedAxis = (
  { sizeM, soundSpeed }: PlainRoom,
  source: ArrayLike<number>,
  seat: ArrayLike<number>,
  epsilon: number,
): 0 | 1 | 2 => {
  const cost = (axis: 0 | 1 | 2): number =>
    (((2 * Math.PI * 80) / soundSpeed) ** 2 + (Math.log(1 / epsilon) / (seat[axis] - source[axis])) ** 2) / sizeM[axis];
  let best: 0 | 1 | 2 = 0;
  for (const axis of [1, 2] as const) if (cost(axis) < cost(best)) best = axis;
  return best;
};

/** H = 4 pi sum Y Y0 / Lam Z Z0 / Lam g for one pair, term by term as written; the closed axis is given by closedAxis. */
export const pairResponse = (
  room: PlainRoom,
  source: ArrayLike<number>,
  seat: ArrayLike<number>,
  epsilon: number,
  cutHz: number,
): [number, number] => {
  const closed = closedAxis(room, source, seat, epsilon);
  const [b, c] = ACROSS[closed];
  const limit = Math.min(
    room.k ** 2 + (leastAttenuation(room, b, c) + Math.log(1 / epsilon) / Math.abs(seat[closed] - source[closed])) ** 2,
    ((2 * Math.PI * cutHz) / room.soundSpeed) ** 2,
  );
  const axisB = room.axes[b];
  const axisC = room.axes[c];
  let re = 0;
  let im = 0;
  for (let m = 0; m < axisB.count; m++) {
    const kappaB = ((m * Math.PI) / axisB.lengthM) ** 2;
    if (kappaB > limit) break;
    shape(axisB, m, seat[b], y);
    shape(axisB, m, source[b], y0);
    let pRe = y[0] * y0[0] - y[1] * y0[1];
    let pIm = y[0] * y0[1] + y[1] * y0[0];
    const yRe = pRe * axisB.weightRe[m] - pIm * axisB.weightIm[m];
    const yIm = pRe * axisB.weightIm[m] + pIm * axisB.weightRe[m];
    for (let n = 0; n < axisC.count; n++) {
      if (kappaB + ((n * Math.PI) / axisC.lengthM) ** 2 > limit) break;
      shape(axisC, n, seat[c], z);
      shape(axisC, n, source[c], z0);
      pRe = z[0] * z0[0] - z[1] * z0[1];
      pIm = z[0] * z0[1] + z[1] * z0[0];
      const zRe = pRe * axisC.weightRe[n] - pIm * axisC.weightIm[n];
      const zIm = pRe * axisC.weightIm[n] + pIm * axisC.weightRe[n];
      const k2Re = room.k ** 2 - axisB.wRe[m] / axisB.lengthM ** 2 - axisC.wRe[n] / axisC.lengthM ** 2;
      const k2Im = -axisB.wIm[m] / axisB.lengthM ** 2 - axisC.wIm[n] / axisC.lengthM ** 2;
      plainGreen(room, closed, k2Re, k2Im, seat[closed], source[closed], g);
      pRe = yRe * zRe - yIm * zIm;
      pIm = yRe * zIm + yIm * zRe;
      re += pRe * g[0] - pIm * g[1];
      im += pRe * g[1] + pIm * g[0];
    }
  }
  return [4 * Math.PI * re, 4 * Math.PI * im];
};

export interface PlainSpec {
  sizeM: readonly [number, number, number];
  soundSpeed: number;
  admittance: readonly (readonly [number, number])[];
}

/** All pairs at all frequencies, index (source * seats + seat) * frequencies + frequency. */
export const perPairResponses = (
  spec: PlainSpec,
  sources: Float64Array,
  seats: Float64Array,
  frequenciesHz: Float64Array,
  epsilon: number,
  cutHz: number,
): { re: Float64Array; im: Float64Array } => {
  const ns = sources.length / 3;
  const nr = seats.length / 3;
  const nf = frequenciesHz.length;
  const re = new Float64Array(ns * nr * nf);
  const im = new Float64Array(ns * nr * nf);
  let room: PlainRoom | null = null;
  for (let f = 0; f < nf; f++) {
    room = plainRoom(spec.sizeM, spec.soundSpeed, spec.admittance, frequenciesHz[f], cutHz, room);
    for (let s = 0; s < ns; s++) {
      for (let r = 0; r < nr; r++) {
        const h = pairResponse(
          room,
          sources.subarray(3 * s, 3 * s + 3),
          seats.subarray(3 * r, 3 * r + 3),
          epsilon,
          cutHz,
        );
        re[(s * nr + r) * nf + f] = h[0];
        im[(s * nr + r) * nf + f] = h[1];
      }
    }
  }
  return { re, im };
};
