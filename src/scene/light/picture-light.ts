import type { PictureFace } from '../../shapes/picture.ts';
import { edgeShare, polygonShare } from './lambert.ts';
import { type Occluders, seesPoint } from './occluders.ts';

/** The picture as a light: a rectangle in the plane z = planeZM facing the room, cut into columns x rows of even colour. */
export interface PictureLight {
  readonly minXM: number;
  readonly minYM: number;
  readonly widthM: number;
  readonly heightM: number;
  readonly planeZM: number;
  readonly columns: number;
  readonly rows: number;
  /** Linear radiance, white = 1; red, green, blue a patch, rows from the bottom up, columns from the left. */
  readonly radiance: Float32Array;
}

export const PICTURE_COLUMNS = 4;
export const PICTURE_ROWS = 2;

/** How much further from grey the light is than the picture's mean colours: the eye finds coloured light paler than it is. */
const CHROMA = 2.2;

const vivid = (radiance: Float32Array): Float32Array =>
  radiance.map((value, index) => {
    const at = index - (index % 3);
    const grey = 0.2126 * radiance[at] + 0.7152 * radiance[at + 1] + 0.0722 * radiance[at + 2];
    return Math.max(0, grey + (value - grey) * CHROMA);
  });

export const pictureLight = (face: PictureFace, radiance: Float32Array): PictureLight => ({
  minXM: face.centreM[0] - face.widthM / 2,
  minYM: face.bottomM,
  widthM: face.widthM,
  heightM: face.heightM,
  planeZM: face.zM,
  columns: PICTURE_COLUMNS,
  rows: PICTURE_ROWS,
  radiance: vivid(radiance),
});

const MAX_ACROSS = PICTURE_COLUMNS + 1;
const MAX_UP = PICTURE_ROWS + 1;
const units = new Float64Array(MAX_ACROSS * MAX_UP * 3);
const heights = new Float64Array(MAX_ACROSS * MAX_UP);
const acrossEdges = new Float64Array(PICTURE_COLUMNS * MAX_UP);
const upEdges = new Float64Array(MAX_ACROSS * PICTURE_ROWS);
const quad = new Float64Array(12);

/**
 * Adds to out[at..at+2] the light (share times radiance, per channel) that a surface at (x, y, z) with unit normal
 * (nx, ny, nz) receives from the picture. Neighbouring patches share their edges' angles; a patch that crosses the
 * surface's horizon is clipped on its own. `hidden` boxes take away the patches whose middle they cover.
 */
export const addPictureLight = (
  light: PictureLight,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  hidden: Occluders | null,
  out: Float32Array,
  at: number,
): void => {
  if (z <= light.planeZM + 1e-4) return;
  const { columns, rows } = light;
  const stepX = light.widthM / columns;
  const stepY = light.heightM / rows;
  const dz = light.planeZM - z;
  let above = 0;
  for (let j = 0; j <= rows; j++) {
    for (let i = 0; i <= columns; i++) {
      const k = j * (columns + 1) + i;
      const dx = light.minXM + i * stepX - x;
      const dy = light.minYM + j * stepY - y;
      const inverse = 1 / Math.sqrt(dx * dx + dy * dy + dz * dz);
      units[k * 3] = dx * inverse;
      units[k * 3 + 1] = dy * inverse;
      units[k * 3 + 2] = dz * inverse;
      heights[k] = units[k * 3] * nx + units[k * 3 + 1] * ny + units[k * 3 + 2] * nz;
      if (heights[k] > 0) above++;
    }
  }
  if (above === 0) return;
  fillEdges(columns, rows, nx, ny, nz);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const share = patchShare(columns, i, j, nx, ny, nz);
      if (share < 1e-5) continue;
      if (
        hidden &&
        !seesPoint(hidden, x, y, z, light.minXM + (i + 0.5) * stepX, light.minYM + (j + 0.5) * stepY, light.planeZM)
      )
        continue;
      const c = (j * columns + i) * 3;
      out[at] += share * light.radiance[c];
      out[at + 1] += share * light.radiance[c + 1];
      out[at + 2] += share * light.radiance[c + 2];
    }
  }
};

const edgeBetween = (a: number, b: number, nx: number, ny: number, nz: number): number =>
  edgeShare(
    units[a * 3],
    units[a * 3 + 1],
    units[a * 3 + 2],
    units[b * 3],
    units[b * 3 + 1],
    units[b * 3 + 2],
    nx,
    ny,
    nz,
  );

const fillEdges = (columns: number, rows: number, nx: number, ny: number, nz: number): void => {
  const across = columns + 1;
  for (let j = 0; j <= rows; j++)
    for (let i = 0; i < columns; i++)
      acrossEdges[j * columns + i] = edgeBetween(j * across + i, j * across + i + 1, nx, ny, nz);
  for (let j = 0; j < rows; j++)
    for (let i = 0; i <= columns; i++)
      upEdges[j * across + i] = edgeBetween(j * across + i, (j + 1) * across + i, nx, ny, nz);
};

const patchShare = (columns: number, i: number, j: number, nx: number, ny: number, nz: number): number => {
  const across = columns + 1;
  const a = j * across + i;
  const b = a + 1;
  const c = a + across;
  const d = c + 1;
  const above = Number(heights[a] > 0) + Number(heights[b] > 0) + Number(heights[c] > 0) + Number(heights[d] > 0);
  if (above === 0) return 0;
  if (above < 4) {
    for (let axis = 0; axis < 3; axis++) {
      quad[axis] = units[a * 3 + axis];
      quad[3 + axis] = units[b * 3 + axis];
      quad[6 + axis] = units[d * 3 + axis];
      quad[9 + axis] = units[c * 3 + axis];
    }
    return polygonShare(quad, 4, nx, ny, nz);
  }
  const sum =
    acrossEdges[j * columns + i] +
    upEdges[j * across + i + 1] -
    acrossEdges[(j + 1) * columns + i] -
    upEdges[j * across + i];
  return Math.abs(sum) / (2 * Math.PI);
};
