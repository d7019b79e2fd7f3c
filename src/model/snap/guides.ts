import type { Point2 } from '../../math/polyline.ts';
import type { SnapReason } from './reason.ts';

/** A line or circle on the plan worth stopping on where neither axis has something better to offer. */
export type Guide = { readonly reachM: number; readonly reason: SnapReason } & (
  | { readonly shape: 'ray'; readonly throughM: Point2; readonly direction: Point2 }
  | { readonly shape: 'circle'; readonly centreM: Point2; readonly radiusM: number }
);

/** The point of a guide nearest to one of the plan. */
export const onGuide = (guide: Guide, [x, z]: Point2): Point2 => {
  if (guide.shape === 'ray') {
    const { throughM, direction } = guide;
    const along = (x - throughM[0]) * direction[0] + (z - throughM[1]) * direction[1];
    return [throughM[0] + along * direction[0], throughM[1] + along * direction[1]];
  }
  const { centreM, radiusM } = guide;
  const dx = x - centreM[0];
  const dz = z - centreM[1];
  const away = Math.hypot(dx, dz);
  if (away === 0) return [x, z];
  return [centreM[0] + (dx / away) * radiusM, centreM[1] + (dz / away) * radiusM];
};

/** The nearest guide that reaches a point, with the point it draws it to. */
export const guideFor = (
  point: Point2,
  guides: readonly Guide[],
): { readonly atM: Point2; readonly reason: SnapReason } | null => {
  let best: { readonly atM: Point2; readonly reason: SnapReason } | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const guide of guides) {
    const atM = onGuide(guide, point);
    const away = Math.hypot(atM[0] - point[0], atM[1] - point[1]);
    if (away > guide.reachM || away >= nearest) continue;
    nearest = away;
    best = { atM, reason: guide.reason };
  }
  return best;
};
