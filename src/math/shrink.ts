import { signedArea } from './polygon.ts';
import type { Point2 } from './polyline.ts';

/** A sharp corner is cut back no farther than this many times the distance. */
const LONGEST_MITRE = 4;

/** A simple polygon, either sense, with every edge moved inwards by a distance small against its sides. Mitred corners. */
export const shrunk = (corners: readonly Point2[], by: number): Point2[] => {
  const sense = Math.sign(signedArea(corners));
  const inward = (from: Point2, to: Point2): Point2 => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    return [(-sense * (to[1] - from[1])) / length, (sense * (to[0] - from[0])) / length];
  };
  return corners.map((corner, i): Point2 => {
    const before = inward(corners[(i + corners.length - 1) % corners.length], corner);
    const after = inward(corner, corners[(i + 1) % corners.length]);
    const reach = 1 + before[0] * after[0] + before[1] * after[1];
    const scale = by / Math.max(reach, 2 / LONGEST_MITRE ** 2);
    return [corner[0] + scale * (before[0] + after[0]), corner[1] + scale * (before[1] + after[1])];
  });
};
