import { BufferAttribute, BufferGeometry, ShapeUtils, Vector2 } from 'three';
import { sliceOutline } from '../../analysis/slice/outline.ts';
import type { Cut } from '../../analysis/slice/wish.ts';
import { signedArea } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';
import { shrunk } from '../../math/shrink.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';

/** A map ends this far from the walls, so that its rim is seen against them. */
export const RIM_M = 0.02;
/** A map lying on the carpet stands this much above it. */
const LYING_M = 0.008;

/** Where a slice is drawn: where it was computed, or just above the carpet. */
export const drawnAtM = ({ normal, atM }: Cut): number => (normal === 'y' ? Math.max(LYING_M, atM) : atM);

/** A point of a slice in the room; `offM` off the plane. */
export const slicePoint = (cut: Cut, [u, v]: Point2, offM = 0): Vec3 => {
  const at = drawnAtM(cut) + offM;
  if (cut.normal === 'y') return [u, at, v];
  return cut.normal === 'z' ? [u, v, at] : [at, v, u];
};

/** The slice's coordinates of a point of the room. */
export const pointOnSlice = ({ normal }: Cut, [x, y, z]: Vec3): Point2 =>
  normal === 'y' ? [x, z] : normal === 'z' ? [x, y] : [z, y];

/** The map's edge in the slice's axes. */
export const mapOutline = (project: Project, cut: Cut): Point2[][] =>
  sliceOutline(project, cut).map((corners) => shrunk(corners, RIM_M));

/** Triangles over outlines, with the slice's own coordinates as `uv`. */
export const sliceGeometry = (cut: Cut, outlines: readonly (readonly Point2[])[]): BufferGeometry => {
  const positions: number[] = [];
  const uvs: number[] = [];
  const indices: number[] = [];
  // Seen from above and from the right, u and v turn the other way round: a face looks up, back or to the right.
  const mirrored = cut.normal !== 'z';
  for (const corners of outlines) {
    const first = positions.length / 3;
    for (const corner of corners) {
      positions.push(...slicePoint(cut, corner));
      uvs.push(...corner);
    }
    const contour = corners.map(([u, v]) => new Vector2(u, v));
    for (const [a, b, c] of ShapeUtils.triangulateShape(contour, [])) {
      const turnsBack = signedArea([corners[a], corners[b], corners[c]]) < 0;
      const [second, third] = turnsBack === mirrored ? [b, c] : [c, b];
      indices.push(first + a, first + second, first + third);
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3));
  geometry.setAttribute('uv', new BufferAttribute(Float32Array.from(uvs), 2));
  geometry.setIndex(indices);
  return geometry;
};
