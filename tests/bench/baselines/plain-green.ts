import type { PlainRoom } from './plain-axis.ts';

/**
 * g of the closed axis, literally: e^(-gamma d) (1 + R0 e^(-2 gamma x<)) (1 + R1 e^(-2 gamma (a - x>))) / (2 gamma (1 - R0 R1
 * e^(-2 gamma a))), R = (gamma - B) / (gamma + B). Into out[0], out[1].
 */
export const plainGreen = (
  room: PlainRoom,
  closed: 0 | 1 | 2,
  k2Re: number,
  k2Im: number,
  x: number,
  x0: number,
  out: Float64Array,
): void => {
  const a = room.sizeM[closed];
  const size = Math.sqrt(k2Re * k2Re + k2Im * k2Im);
  const gRe = Math.sqrt(Math.max(0, (size - k2Re) / 2));
  const gIm = (k2Im <= 0 ? 1 : -1) * Math.sqrt(Math.max(0, (size + k2Re) / 2));
  const low = Math.min(x, x0);
  const high = Math.max(x, x0);
  const b0Re = room.walls[4 * closed];
  const b0Im = room.walls[4 * closed + 1];
  const b1Re = room.walls[4 * closed + 2];
  const b1Im = room.walls[4 * closed + 3];
  const d0 = (gRe + b0Re) ** 2 + (gIm + b0Im) ** 2;
  const r0Re = ((gRe - b0Re) * (gRe + b0Re) + (gIm - b0Im) * (gIm + b0Im)) / d0;
  const r0Im = ((gIm - b0Im) * (gRe + b0Re) - (gRe - b0Re) * (gIm + b0Im)) / d0;
  const d1 = (gRe + b1Re) ** 2 + (gIm + b1Im) ** 2;
  const r1Re = ((gRe - b1Re) * (gRe + b1Re) + (gIm - b1Im) * (gIm + b1Im)) / d1;
  const r1Im = ((gIm - b1Im) * (gRe + b1Re) - (gRe - b1Re) * (gIm + b1Im)) / d1;
  let e = Math.exp(-2 * gRe * low);
  let c = e * Math.cos(2 * gIm * low);
  let s = -e * Math.sin(2 * gIm * low);
  const uRe = 1 + r0Re * c - r0Im * s;
  const uIm = r0Re * s + r0Im * c;
  e = Math.exp(-2 * gRe * (a - high));
  c = e * Math.cos(2 * gIm * (a - high));
  s = -e * Math.sin(2 * gIm * (a - high));
  const vRe = 1 + r1Re * c - r1Im * s;
  const vIm = r1Re * s + r1Im * c;
  e = Math.exp(-2 * gRe * a);
  c = e * Math.cos(2 * gIm * a);
  s = -e * Math.sin(2 * gIm * a);
  const rRe = r0Re * r1Re - r0Im * r1Im;
  const rIm = r0Re * r1Im + r0Im * r1Re;
  const loopRe = 1 - (rRe * c - rIm * s);
  const loopIm = -(rRe * s + rIm * c);
  const nRe = 2 * (gRe * loopRe - gIm * loopIm);
  const nIm = 2 * (gRe * loopIm + gIm * loopRe);
  e = Math.exp(-gRe * (high - low));
  c = e * Math.cos(gIm * (high - low));
  s = -e * Math.sin(gIm * (high - low));
  const uvRe = uRe * vRe - uIm * vIm;
  const uvIm = uRe * vIm + uIm * vRe;
  const tRe = uvRe * c - uvIm * s;
  const tIm = uvRe * s + uvIm * c;
  const d = nRe * nRe + nIm * nIm;
  out[0] = (tRe * nRe + tIm * nIm) / d;
  out[1] = (tIm * nRe - tRe * nIm) / d;
};
