/**
 * Light from a flat polygon of even radiance on a small surface: Lambert's polygon formula (Photometria, 1760; the form
 * Arvo gives in "Applications of irradiance tensors", 1995). With unit vectors u_i from the surface to the corners,
 *   F = 1/(2 pi) |sum_i theta_i (n . g_i)|, g_i the unit normal of the edge's plane, theta_i the angle the edge spans.
 * F is the share of a Lambertian surface's incoming light; a surface of reflectance rho then shows radiance rho L F.
 * Only what lies above the surface's horizon counts, so a polygon that crosses it is clipped first.
 */
const MAX_CORNERS = 10;
const work = new Float64Array(MAX_CORNERS * 3);

/** theta / sin(theta) from its cosine; 1 for a vanishing edge. */
export const angleOverSine = (cosine: number): number => {
  if (cosine > 0.999999) return 1;
  if (cosine < -0.999999) return Math.PI / 1e-3;
  return Math.acos(cosine) / Math.sqrt(1 - cosine * cosine);
};

/**
 * Share of the light that reaches a surface of normal (nx, ny, nz) from the polygon whose corners, relative to the
 * surface, stand in `corners` (x, y, z a corner, `count` of them). Either turning sense; nothing behind the horizon.
 */
export const polygonShare = (corners: Float64Array, count: number, nx: number, ny: number, nz: number): number => {
  let kept = 0;
  for (let i = 0; i < count; i++) {
    const a = i * 3;
    const b = ((i + 1) % count) * 3;
    const ha = corners[a] * nx + corners[a + 1] * ny + corners[a + 2] * nz;
    const hb = corners[b] * nx + corners[b + 1] * ny + corners[b + 2] * nz;
    if (ha >= 0) kept = keep(kept, corners[a], corners[a + 1], corners[a + 2]);
    if (ha >= 0 !== hb >= 0) {
      const t = ha / (ha - hb);
      kept = keep(
        kept,
        corners[a] + (corners[b] - corners[a]) * t,
        corners[a + 1] + (corners[b + 1] - corners[a + 1]) * t,
        corners[a + 2] + (corners[b + 2] - corners[a + 2]) * t,
      );
    }
  }
  if (kept < 3) return 0;
  let sum = 0;
  for (let i = 0; i < kept; i++) {
    const a = i * 3;
    const b = ((i + 1) % kept) * 3;
    sum += edgeShare(work[a], work[a + 1], work[a + 2], work[b], work[b + 1], work[b + 2], nx, ny, nz);
  }
  return Math.abs(sum) / (2 * Math.PI);
};

/** Adds a corner, as a unit vector, to the clipped polygon. */
const keep = (kept: number, x: number, y: number, z: number): number => {
  const long = Math.sqrt(x * x + y * y + z * z);
  if (long < 1e-9) return kept;
  work[kept * 3] = x / long;
  work[kept * 3 + 1] = y / long;
  work[kept * 3 + 2] = z / long;
  return kept + 1;
};

/** One edge's part of the sum, theta (n . g), between two unit vectors. */
export const edgeShare = (
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  nx: number,
  ny: number,
  nz: number,
): number => {
  const along = (ay * bz - az * by) * nx + (az * bx - ax * bz) * ny + (ax * by - ay * bx) * nz;
  return along === 0 ? 0 : angleOverSine(ax * bx + ay * by + az * bz) * along;
};
