import type { FlatTarget } from '../../engines/sight/flat-target.ts';
import { type GridSize, visibleFraction } from '../../engines/sight/occlusion.ts';
import { mayHide, type Occluder, sightPyramid } from '../../engines/sight/sight-pyramid.ts';
import type { Vec3 } from '../../math/vec3.ts';

interface Seen {
  readonly eye: Vec3;
  readonly target: FlatTarget;
  readonly hiding: readonly Occluder[];
  readonly fraction: number;
}

/** Entries kept; at two or three numbers and a short list each this is well under a megabyte. */
const KEPT = 8192;
const kept = new Map<string, Seen>();

const samePoint = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

const sameTarget = (a: FlatTarget, b: FlatTarget): boolean =>
  a.widthM === b.widthM &&
  a.heightM === b.heightM &&
  samePoint(a.centreM, b.centreM) &&
  samePoint(a.right, b.right) &&
  samePoint(a.up, b.up);

/** The same bodies in the same places: their triangles are then the very same arrays (see shapes/occluders). */
const sameList = (a: readonly Occluder[], b: readonly Occluder[]): boolean =>
  a.length === b.length && a.every((one, index) => one.positions === b[index].positions);

/**
 * The visible fraction of a target, kept from the last call under the same `name` while eye, target and the very occluders
 * that could hide any of it are the same: moving one thing recomputes only the lines of sight it stands near. The answer
 * never depends on what is kept.
 */
export const seenFraction = (
  name: string,
  eye: Vec3,
  target: FlatTarget,
  occluders: readonly Occluder[],
  size: GridSize,
): number => {
  const pyramid = sightPyramid(eye, target);
  if (!pyramid) return 0;
  const hiding = occluders.filter(({ boundsMin, boundsMax }) => mayHide(pyramid, boundsMin, boundsMax));
  if (hiding.length === 0) return 1;
  const key = `${name} ${size.columns}`;
  const last = kept.get(key);
  if (last && samePoint(last.eye, eye) && sameTarget(last.target, target) && sameList(last.hiding, hiding))
    return last.fraction;
  const fraction = visibleFraction(eye, target, hiding, size);
  if (kept.size >= KEPT) kept.clear();
  kept.set(key, { eye, target, hiding, fraction });
  return fraction;
};
