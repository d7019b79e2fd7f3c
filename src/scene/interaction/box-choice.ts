import { type Camera, Vector3 } from 'three';
import { extentOf, middleOf } from '../../model/extents.ts';
import { itemsOf } from '../../model/items.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import type { Box } from '../overlays/place-labels.ts';
import type { CanvasPoint } from './camera-hand.ts';

export const boxBetween = (a: CanvasPoint, b: CanvasPoint): Box => ({
  left: Math.min(a.x, b.x),
  top: Math.min(a.y, b.y),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.y - b.y),
});

const KINDS = ['seat', 'loudspeaker', 'subwoofer', 'object'] as const;
const point = new Vector3();

/** What stands with its middle in a rectangle of the canvas, CSS pixels. */
export const inBox = (project: Project, box: Box, camera: Camera, width: number, height: number): ItemRef[] =>
  KINDS.flatMap((kind) => itemsOf(project, kind).map(({ id }): ItemRef => ({ kind, id }))).filter((ref) => {
    const extent = extentOf(project, ref);
    if (!extent) return false;
    const [x, y, z] = middleOf(extent);
    point.set(x, y, z).project(camera);
    if (point.z > 1) return false;
    const left = ((point.x + 1) / 2) * width;
    const top = ((1 - point.y) / 2) * height;
    return left >= box.left && left <= box.left + box.width && top >= box.top && top <= box.top + box.height;
  });
