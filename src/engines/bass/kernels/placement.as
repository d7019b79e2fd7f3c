// Scores of subwoofer arrangements, AssemblyScript with 128-bit lanes over frequency. Built by src/build/kernels.ts into
// placement-wasm.ts; the twin in placement-plain.ts says what it computes and is its oracle.
//
// A field is laid out [group of four frequencies][seat][re x 4, im x 4], 32 bytes a seat. All functions take byte offsets.

const ONE: v128 = i32x4.splat(0x3f800000);
const MANTISSA: v128 = i32x4.splat(0x007fffff);
// log2(m) - (m - 1) on [1, 2) without its constant, in units of 2^-23, highest power first: minimax polynomial of degree
// five found by linear programming, largest error 4e-5 dB of level. A constant shifts every seat alike and leaves the
// spread as it is.
const C5: v128 = f32x4.splat(0.04487361 * 8388608);
const C4: v128 = f32x4.splat(-0.4165637 * 8388608);
const C3: v128 = f32x4.splat(1.63114879 * 8388608);
const C2: v128 = f32x4.splat(-3.55079293 * 8388608);
const C1: v128 = f32x4.splat(4.09171079 * 8388608);

/** log2 of four positive numbers, but for a constant, in units of 2^-23: the bits of a float are nearly its logarithm. */
@inline
function bent(power: v128): v128 {
  const m = v128.or(v128.and(power, MANTISSA), ONE);
  let g = f32x4.add(f32x4.mul(m, C5), C4);
  g = f32x4.add(f32x4.mul(m, g), C3);
  g = f32x4.add(f32x4.mul(m, g), C2);
  g = f32x4.add(f32x4.mul(m, g), C1);
  return f32x4.add(f32x4.convert_i32x4_s(power), f32x4.mul(m, g));
}

@inline
function power(re: v128, im: v128): v128 {
  return f32x4.add(f32x4.mul(re, re), f32x4.mul(im, im));
}

@inline
function deviation(sum: v128, squares: v128, overSeats: v128, overOthers: v128): v128 {
  const variance = f32x4.mul(f32x4.sub(squares, f32x4.mul(f32x4.mul(sum, sum), overSeats)), overOthers);
  return f32x4.sqrt(f32x4.max(variance, f32x4.splat(0)));
}

@inline
function across(v: v128): f32 {
  return f32x4.extract_lane(v, 0) + f32x4.extract_lane(v, 1) + (f32x4.extract_lane(v, 2) + f32x4.extract_lane(v, 3));
}

/** to = a + b, `bytes` long (a multiple of 16). */
export function add(to: usize, a: usize, b: usize, bytes: usize): void {
  for (let i: usize = 0; i < bytes; i += 16) v128.store(to + i, f32x4.add(v128.load(a + i), v128.load(b + i)));
}

/**
 * For `count` fields of `stride` bytes from `fields` on: the spread over the seats of partial + field, summed over frequency
 * and multiplied by `scale`, into the floats from `out` on. Two fields at a time share the loads of the partial sum.
 */
export function scores(
  partial: usize,
  fields: usize,
  stride: usize,
  count: i32,
  groups: i32,
  seats: i32,
  scale: f32,
  out: usize,
): void {
  const overSeats = f32x4.splat(1.0 / <f32>seats);
  const overOthers = f32x4.splat(1.0 / <f32>(seats - 1));
  const bytes = <usize>seats << 5;
  let c = 0;
  for (; c + 1 < count; c += 2) {
    let a = fields + <usize>c * stride;
    let p = partial;
    let totalA = f32x4.splat(0);
    let totalB = f32x4.splat(0);
    for (let g = 0; g < groups; g++) {
      const end = p + bytes;
      let re = v128.load(p);
      let im = v128.load(p, 16);
      let b = a + stride;
      const firstA = bent(power(f32x4.add(re, v128.load(a)), f32x4.add(im, v128.load(a, 16))));
      const firstB = bent(power(f32x4.add(re, v128.load(b)), f32x4.add(im, v128.load(b, 16))));
      let sumA = f32x4.splat(0);
      let sumB = f32x4.splat(0);
      let squaresA = f32x4.splat(0);
      let squaresB = f32x4.splat(0);
      for (p += 32, a += 32; p < end; p += 32, a += 32) {
        re = v128.load(p);
        im = v128.load(p, 16);
        b = a + stride;
        const offA = f32x4.sub(bent(power(f32x4.add(re, v128.load(a)), f32x4.add(im, v128.load(a, 16)))), firstA);
        const offB = f32x4.sub(bent(power(f32x4.add(re, v128.load(b)), f32x4.add(im, v128.load(b, 16)))), firstB);
        sumA = f32x4.add(sumA, offA);
        sumB = f32x4.add(sumB, offB);
        squaresA = f32x4.add(squaresA, f32x4.mul(offA, offA));
        squaresB = f32x4.add(squaresB, f32x4.mul(offB, offB));
      }
      totalA = f32x4.add(totalA, deviation(sumA, squaresA, overSeats, overOthers));
      totalB = f32x4.add(totalB, deviation(sumB, squaresB, overSeats, overOthers));
    }
    f32.store(out + (<usize>c << 2), across(totalA) * scale);
    f32.store(out + (<usize>c << 2), across(totalB) * scale, 4);
  }
  if (c >= count) return;
  let a = fields + <usize>c * stride;
  let p = partial;
  let total = f32x4.splat(0);
  for (let g = 0; g < groups; g++) {
    const end = p + bytes;
    const first = bent(power(f32x4.add(v128.load(p), v128.load(a)), f32x4.add(v128.load(p, 16), v128.load(a, 16))));
    let sum = f32x4.splat(0);
    let squares = f32x4.splat(0);
    for (p += 32, a += 32; p < end; p += 32, a += 32) {
      const off = f32x4.sub(
        bent(power(f32x4.add(v128.load(p), v128.load(a)), f32x4.add(v128.load(p, 16), v128.load(a, 16)))),
        first,
      );
      sum = f32x4.add(sum, off);
      squares = f32x4.add(squares, f32x4.mul(off, off));
    }
    total = f32x4.add(total, deviation(sum, squares, overSeats, overOthers));
  }
  f32.store(out + (<usize>c << 2), across(total) * scale);
}
