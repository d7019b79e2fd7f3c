// Complex symmetric systems and products with real matrices, AssemblyScript with one complex number (re, im as doubles) a
// 128-bit lane pair. Built by src/build/kernels.ts into symmetric-wasm.ts; the twin in symmetric-plain.ts says what it
// computes and is its oracle: the same packed layout, the same factors.
//
// All functions take byte offsets. 16 bytes a complex number. A product by a complex number is summed as a times re and a
// times im apart; the second sum is turned by j once at the end.

/** Rows of one block: what is eliminated before the rest of the matrix is read and written once. */
const BLOCK: i32 = 16;

@inline
function rowAt(a: usize, n: i32, k: i32): usize {
  return a + ((<usize>(k * n - ((k * (k - 1)) >> 1))) << 4);
}

/** re part + j times im part. */
@inline
function turned(re: v128, im: v128): v128 {
  const swapped = v128.shuffle<f64>(im, im, 1, 0);
  return f64x2.add(re, v128.xor(swapped, i64x2(i64.MIN_VALUE, 0)));
}

@inline
function subtractFrom(to: usize, re: v128, im: v128): void {
  v128.store(to, f64x2.sub(v128.load(to), turned(re, im)));
}

/**
 * c0[j], c1[j] -= sum over k of a[k][0], a[k][1] times b[k][j] for `columns` j: `a` holds pairs, `b` rows `step` bytes apart.
 */
function pairOfRows(c0: usize, c1: usize, a: usize, b: usize, step: usize, depth: i32, columns: i32): void {
  let j = 0;
  const end = a + (<usize>depth << 5);
  for (; j + 1 < columns; j += 2) {
    let p = a;
    let q = b;
    let r00 = f64x2.splat(0);
    let i00 = f64x2.splat(0);
    let r01 = f64x2.splat(0);
    let i01 = f64x2.splat(0);
    let r10 = f64x2.splat(0);
    let i10 = f64x2.splat(0);
    let r11 = f64x2.splat(0);
    let i11 = f64x2.splat(0);
    while (p < end) {
      const b0 = v128.load(q);
      const b1 = v128.load(q, 16);
      const xRe = v128.load_splat<f64>(p);
      r00 = f64x2.add(r00, f64x2.mul(xRe, b0));
      r01 = f64x2.add(r01, f64x2.mul(xRe, b1));
      const xIm = v128.load_splat<f64>(p, 8);
      i00 = f64x2.add(i00, f64x2.mul(xIm, b0));
      i01 = f64x2.add(i01, f64x2.mul(xIm, b1));
      const yRe = v128.load_splat<f64>(p, 16);
      r10 = f64x2.add(r10, f64x2.mul(yRe, b0));
      r11 = f64x2.add(r11, f64x2.mul(yRe, b1));
      const yIm = v128.load_splat<f64>(p, 24);
      i10 = f64x2.add(i10, f64x2.mul(yIm, b0));
      i11 = f64x2.add(i11, f64x2.mul(yIm, b1));
      p += 32;
      q += step;
    }
    subtractFrom(c0, r00, i00);
    subtractFrom(c0 + 16, r01, i01);
    subtractFrom(c1, r10, i10);
    subtractFrom(c1 + 16, r11, i11);
    c0 += 32;
    c1 += 32;
    b += 32;
  }
  if (j >= columns) return;
  let r0 = f64x2.splat(0);
  let i0 = f64x2.splat(0);
  let r1 = f64x2.splat(0);
  let i1 = f64x2.splat(0);
  while (a < end) {
    const b0 = v128.load(b);
    r0 = f64x2.add(r0, f64x2.mul(v128.load_splat<f64>(a), b0));
    i0 = f64x2.add(i0, f64x2.mul(v128.load_splat<f64>(a, 8), b0));
    r1 = f64x2.add(r1, f64x2.mul(v128.load_splat<f64>(a, 16), b0));
    i1 = f64x2.add(i1, f64x2.mul(v128.load_splat<f64>(a, 24), b0));
    a += 32;
    b += step;
  }
  subtractFrom(c0, r0, i0);
  subtractFrom(c1, r1, i1);
}

/** c[j] -= sum over k of a[k] b[k][j] for `columns` j; the step from one row of `b` to the next shrinks by `shrink` each time. */
function oneRow(c: usize, a: usize, b: usize, step: usize, shrink: usize, depth: i32, columns: i32): void {
  const end = a + (<usize>depth << 4);
  let j = 0;
  for (; j + 3 < columns; j += 4) {
    let p = a;
    let q = b;
    let s = step;
    let r0 = f64x2.splat(0);
    let i0 = f64x2.splat(0);
    let r1 = f64x2.splat(0);
    let i1 = f64x2.splat(0);
    let r2 = f64x2.splat(0);
    let i2 = f64x2.splat(0);
    let r3 = f64x2.splat(0);
    let i3 = f64x2.splat(0);
    while (p < end) {
      const re = v128.load_splat<f64>(p);
      const im = v128.load_splat<f64>(p, 8);
      const b0 = v128.load(q);
      r0 = f64x2.add(r0, f64x2.mul(re, b0));
      i0 = f64x2.add(i0, f64x2.mul(im, b0));
      const b1 = v128.load(q, 16);
      r1 = f64x2.add(r1, f64x2.mul(re, b1));
      i1 = f64x2.add(i1, f64x2.mul(im, b1));
      const b2 = v128.load(q, 32);
      r2 = f64x2.add(r2, f64x2.mul(re, b2));
      i2 = f64x2.add(i2, f64x2.mul(im, b2));
      const b3 = v128.load(q, 48);
      r3 = f64x2.add(r3, f64x2.mul(re, b3));
      i3 = f64x2.add(i3, f64x2.mul(im, b3));
      p += 16;
      q += s;
      s -= shrink;
    }
    subtractFrom(c, r0, i0);
    subtractFrom(c + 16, r1, i1);
    subtractFrom(c + 32, r2, i2);
    subtractFrom(c + 48, r3, i3);
    c += 64;
    b += 64;
  }
  for (; j < columns; j++) {
    let p = a;
    let q = b;
    let s = step;
    let re = f64x2.splat(0);
    let im = f64x2.splat(0);
    while (p < end) {
      const b0 = v128.load(q);
      re = f64x2.add(re, f64x2.mul(v128.load_splat<f64>(p), b0));
      im = f64x2.add(im, f64x2.mul(v128.load_splat<f64>(p, 8), b0));
      p += 16;
      q += s;
      s -= shrink;
    }
    subtractFrom(c, re, im);
    c += 16;
    b += 16;
  }
}

@inline
function times(to: usize, x: usize, y: usize): void {
  const xRe = f64.load(x);
  const xIm = f64.load(x, 8);
  const yRe = f64.load(y);
  const yIm = f64.load(y, 8);
  f64.store(to, xRe * yRe - xIm * yIm);
  f64.store(to, xRe * yIm + xIm * yRe, 8);
}

/**
 * L D L^T of the packed matrix at `a` in place. `scratch` has room for (2 BLOCK + 2) n + 8 BLOCK numbers. 0 where a pivot
 * vanishes or a multiplier exceeds `mostGrowth`.
 */
export function factorise(n: i32, a: usize, scratch: usize, mostGrowth: f64): i32 {
  // rows of the block before they are scaled, pairs of multipliers, multipliers of one row, a square on the diagonal
  const whole = scratch;
  const pairs = whole + (<usize>(BLOCK * n) << 4);
  const own = pairs + (<usize>(BLOCK * (n + 1)) << 4);
  const square = own + (<usize>BLOCK << 4);
  for (let first = 0; first < n; first += BLOCK) {
    const last = min(n, first + BLOCK);
    const depth = last - first;
    // the block's own rows, each less its share of those above
    for (let i = first; i < last; i++) {
      const row = rowAt(a, n, i);
      for (let k = first; k < i; k++) {
        const top = rowAt(a, n, k);
        times(own + (<usize>(k - first) << 4), top + (<usize>(i - k) << 4), top);
      }
      if (i > first) {
        const top = rowAt(a, n, first) + (<usize>(i - first) << 4);
        oneRow(row, own, top, <usize>(n - first - 1) << 4, 16, i - first, n - i);
      }
      const re = f64.load(row);
      const im = f64.load(row, 8);
      const size = re * re + im * im;
      if (!(size > 1e-200 && size < 1e200)) return 0;
      f64.store(row, re / size);
      f64.store(row, -im / size, 8);
    }
    // multipliers in place; beyond the block as pairs, and the unscaled rows beside one another
    const rest = n - last;
    for (let k = first; k < last; k++) {
      const top = rowAt(a, n, k);
      const aside = whole + (<usize>((k - first) * rest) << 4);
      if (rest > 0) memory.copy(aside, top + (<usize>(last - k) << 4), <usize>rest << 4);
      let most: f64 = 0;
      for (let j = k + 1; j < n; j++) {
        const at = top + (<usize>(j - k) << 4);
        times(at, at, top);
        most = max(most, abs(f64.load(at)) + abs(f64.load(at, 8)));
      }
      if (most > mostGrowth) return 0;
      for (let j = last; j < n; j++) {
        const pair = (j - last) >> 1;
        const to = pairs + (<usize>(2 * (pair * depth + (k - first)) + ((j - last) & 1)) << 4);
        v128.store(to, v128.load(top + (<usize>(j - k) << 4)));
      }
    }
    // the rest of the matrix, two rows at a time
    const step = <usize>rest << 4;
    let i = last;
    for (; i + 1 < n; i += 2) {
      const from = pairs + (<usize>((i - last) * depth) << 4);
      const upper = rowAt(a, n, i);
      const lower = rowAt(a, n, i + 1);
      const b = whole + (<usize>(i - last) << 4);
      for (let e: usize = 0; e < 64; e += 16) v128.store(square + e, f64x2.splat(0));
      pairOfRows(square, square + 32, from, b, step, depth, 2);
      v128.store(upper, f64x2.add(v128.load(upper), v128.load(square)));
      v128.store(upper, f64x2.add(v128.load(upper, 16), v128.load(square, 16)), 16);
      v128.store(lower, f64x2.add(v128.load(lower), v128.load(square, 48)));
      pairOfRows(upper + 32, lower + 16, from, b + 32, step, depth, n - i - 2);
    }
    if (i < n) {
      // the last row alone: its pairs have no second
      const from = pairs + (<usize>((i - last) * depth) << 4);
      for (let k = 0; k < depth; k++) v128.store(own + (<usize>k << 4), v128.load(from + (<usize>k << 5)));
      oneRow(rowAt(a, n, i), own, whole + (<usize>(i - last) << 4), step, 0, depth, 1);
    }
  }
  return 1;
}

/** x[i] -= sum over the block's rows k of L(i, k) x[k] for rows from `from` up to `to`, two at a time. */
@inline
function lower(n: i32, a: usize, x: usize, width: usize, count: i32, first: i32, last: i32, scratch: usize): void {
  const depth = last - first;
  const b = x + <usize>first * width;
  let i = last;
  for (; i + 1 < n; i += 2) {
    let from = rowAt(a, n, first) + (<usize>(i - first) << 4);
    let step = <usize>(n - first - 1) << 4;
    for (let k = 0; k < depth; k++) {
      const to = scratch + (<usize>k << 5);
      v128.store(to, v128.load(from));
      v128.store(to, v128.load(from, 16), 16);
      from += step;
      step -= 16;
    }
    pairOfRows(x + <usize>i * width, x + <usize>(i + 1) * width, scratch, b, width, depth, count);
  }
  if (i >= n) return;
  for (let k = 0; k < depth; k++)
    v128.store(scratch + (<usize>k << 4), v128.load(rowAt(a, n, first + k) + (<usize>(i - first - k) << 4)));
  oneRow(x + <usize>i * width, scratch, b, width, 0, depth, count);
}

/** x[k] -= sum over the block's rows i of L(i, k) x[i] for the rows above it, two at a time. */
@inline
function upper(n: i32, a: usize, x: usize, width: usize, count: i32, first: i32, last: i32, scratch: usize): void {
  const depth = last - first;
  const b = x + <usize>first * width;
  let k = 0;
  for (; k + 1 < first; k += 2) {
    const p = rowAt(a, n, k) + (<usize>(first - k) << 4);
    const q = rowAt(a, n, k + 1) + (<usize>(first - k - 1) << 4);
    for (let i = 0; i < depth; i++) {
      const to = scratch + (<usize>i << 5);
      v128.store(to, v128.load(p + (<usize>i << 4)));
      v128.store(to, v128.load(q + (<usize>i << 4)), 16);
    }
    pairOfRows(x + <usize>k * width, x + <usize>(k + 1) * width, scratch, b, width, depth, count);
  }
  if (k < first) oneRow(x + <usize>k * width, rowAt(a, n, k) + (<usize>(first - k) << 4), b, width, 0, depth, count);
}

/** Solves for `count` right sides at `x`, entry (i, r) at 16 (i count + r), in place. `scratch`: 2 BLOCK numbers. */
export function solve(n: i32, a: usize, x: usize, count: i32, scratch: usize): void {
  const width = <usize>count << 4;
  for (let first = 0; first < n; first += BLOCK) {
    const last = min(n, first + BLOCK);
    for (let i = first + 1; i < last; i++) {
      for (let k = first; k < i; k++)
        v128.store(scratch + (<usize>(k - first) << 4), v128.load(rowAt(a, n, k) + (<usize>(i - k) << 4)));
      oneRow(x + <usize>i * width, scratch, x + <usize>first * width, width, 0, i - first, count);
    }
    lower(n, a, x, width, count, first, last, scratch);
  }
  for (let k = 0; k < n; k++) {
    const pivot = rowAt(a, n, k);
    const row = x + <usize>k * width;
    for (let r: usize = 0; r < width; r += 16) times(row + r, row + r, pivot);
  }
  for (let first = ((n - 1) / BLOCK) * BLOCK; first >= 0; first -= BLOCK) {
    const last = min(n, first + BLOCK);
    for (let k = last - 2; k >= first; k--)
      oneRow(
        x + <usize>k * width,
        rowAt(a, n, k) + 16,
        x + <usize>(k + 1) * width,
        width,
        0,
        last - k - 1,
        count,
      );
    upper(n, a, x, width, count, first, last, scratch);
  }
}

/**
 * out[m][l] = sum over i of p[i][m] x[i][l]: `p` real, `rows` by `left`; `x` complex, `rows` by `right`; `out` complex, `left` by `right`.
 */
export function products(rows: i32, p: usize, left: i32, x: usize, right: i32, out: usize): void {
  const pStep = <usize>left << 3;
  const xStep = <usize>right << 4;
  const end = p + <usize>rows * pStep;
  for (let m = 0; m < left; m += 2) {
    const two = m + 1 < left;
    const second: usize = two ? 8 : 0;
    let l = 0;
    for (; l + 3 < right; l += 4) {
      let a = p + (<usize>m << 3);
      let b = x + (<usize>l << 4);
      let s00 = f64x2.splat(0);
      let s01 = f64x2.splat(0);
      let s02 = f64x2.splat(0);
      let s03 = f64x2.splat(0);
      let s10 = f64x2.splat(0);
      let s11 = f64x2.splat(0);
      let s12 = f64x2.splat(0);
      let s13 = f64x2.splat(0);
      while (a < end) {
        const u = v128.load_splat<f64>(a);
        const v = v128.load_splat<f64>(a + second);
        const b0 = v128.load(b);
        s00 = f64x2.add(s00, f64x2.mul(u, b0));
        s10 = f64x2.add(s10, f64x2.mul(v, b0));
        const b1 = v128.load(b, 16);
        s01 = f64x2.add(s01, f64x2.mul(u, b1));
        s11 = f64x2.add(s11, f64x2.mul(v, b1));
        const b2 = v128.load(b, 32);
        s02 = f64x2.add(s02, f64x2.mul(u, b2));
        s12 = f64x2.add(s12, f64x2.mul(v, b2));
        const b3 = v128.load(b, 48);
        s03 = f64x2.add(s03, f64x2.mul(u, b3));
        s13 = f64x2.add(s13, f64x2.mul(v, b3));
        a += pStep;
        b += xStep;
      }
      const to = out + (<usize>(m * right + l) << 4);
      v128.store(to, s00);
      v128.store(to, s01, 16);
      v128.store(to, s02, 32);
      v128.store(to, s03, 48);
      if (!two) continue;
      v128.store(to + xStep, s10);
      v128.store(to + xStep, s11, 16);
      v128.store(to + xStep, s12, 32);
      v128.store(to + xStep, s13, 48);
    }
    for (; l < right; l++) {
      let a = p + (<usize>m << 3);
      let b = x + (<usize>l << 4);
      let s0 = f64x2.splat(0);
      let s1 = f64x2.splat(0);
      while (a < end) {
        const b0 = v128.load(b);
        s0 = f64x2.add(s0, f64x2.mul(v128.load_splat<f64>(a), b0));
        s1 = f64x2.add(s1, f64x2.mul(v128.load_splat<f64>(a + second), b0));
        a += pStep;
        b += xStep;
      }
      const to = out + (<usize>(m * right + l) << 4);
      v128.store(to, s0);
      if (two) v128.store(to + xStep, s1);
    }
  }
}
