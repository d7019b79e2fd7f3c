import type { Vec3 } from '../../math/vec3.ts';
import { type CoverageGrid, clearGrid, coveredCells, createGrid, fillTriangle } from './coverage-grid.ts';
import type { FlatTarget } from './flat-target.ts';
import { CHUNK_CORNERS, chunkMayHide, chunksOf } from './mesh-chunks.ts';
import { mayHide, type Occluder, type SightPyramid, sightPyramid } from './sight-pyramid.ts';

export type { Occluder } from './sight-pyramid.ts';

/** How finely a target is divided: the answer is a count of cells, so its step is 1 / (columns x rows). */
export interface GridSize {
  readonly columns: number;
  readonly rows: number;
}

export const pictureGrid: GridSize = { columns: 320, rows: 180 };
export const loudspeakerGrid: GridSize = { columns: 32, rows: 32 };

/** One occluder that hides part of a target: the share of the target's area it would hide if it stood alone. */
export interface Blocker {
  readonly id: string;
  readonly share: number;
}

// Where a vertex lies: each bit a side it is beyond. Three vertices beyond one side cannot cover a cell.
const beforeEye = 1;
const beyondPlane = 2;
const outLeft = 4;
const outRight = 8;
const outBelow = 16;
const outAbove = 32;
const depthBits = beforeEye | beyondPlane;

/**
 * Scratch kept between calls: eye-space coordinates, cell coordinates and side bits of one occluder's vertices. A vertex
 * holds what belongs to this sight of it only where its `sight` is the present one's number.
 */
const scratch = {
  sight: new Uint32Array(1024),
  across: new Float64Array(1024),
  upward: new Float64Array(1024),
  depth: new Float64Array(1024),
  x: new Float64Array(1024),
  y: new Float64Array(1024),
  side: new Uint8Array(1024),
};

const makeRoom = (vertices: number): void => {
  if (vertices <= scratch.side.length) return;
  const size = 2 ** Math.ceil(Math.log2(vertices));
  scratch.sight = new Uint32Array(size);
  scratch.across = new Float64Array(size);
  scratch.upward = new Float64Array(size);
  scratch.depth = new Float64Array(size);
  scratch.x = new Float64Array(size);
  scratch.y = new Float64Array(size);
  scratch.side = new Uint8Array(size);
};

/** From eye space to cells: x = (scaleX * across / depth + offsetX), y likewise. */
interface CellMap {
  readonly scaleX: number;
  readonly scaleY: number;
  readonly offsetX: number;
  readonly offsetY: number;
}

const cellMapOf = (pyramid: SightPyramid, target: FlatTarget, size: GridSize): CellMap => {
  const cellsX = size.columns / target.widthM;
  const cellsY = size.rows / target.heightM;
  return {
    scaleX: pyramid.depthM * cellsX,
    scaleY: pyramid.depthM * cellsY,
    offsetX: pyramid.eyeAcrossM * cellsX + size.columns / 2,
    offsetY: pyramid.eyeUpwardM * cellsY + size.rows / 2,
  };
};

let lastSight = 0;

/** The number of a new sight of one occluder: every vertex is yet to be placed. */
const newSight = (vertices: number): number => {
  makeRoom(vertices);
  lastSight = (lastSight + 1) >>> 0;
  // After four thousand million sights the numbers begin anew.
  if (lastSight === 0) {
    scratch.sight.fill(0);
    lastSight = 1;
  }
  return lastSight;
};

/** Brings the vertices of one chunk into eye space and, where their depth allows, onto the grid. */
const placeVertices = (
  { positions, indices }: Occluder,
  fromCorner: number,
  toCorner: number,
  sight: number,
  pyramid: SightPyramid,
  map: CellMap,
  size: GridSize,
): void => {
  const { across, upward, depth, x, y, side, sight: sights } = scratch;
  const [ex, ey, ez] = pyramid.eye;
  const [rx, ry, rz] = pyramid.right;
  const [ux, uy, uz] = pyramid.up;
  const [nx, ny, nz] = pyramid.inward;
  const { nearM, farM } = pyramid;
  const { scaleX, scaleY, offsetX, offsetY } = map;
  const { columns, rows } = size;
  for (let corner = fromCorner; corner < toCorner; corner += 1) {
    const i = indices[corner];
    if (sights[i] === sight) continue;
    sights[i] = sight;
    const p = 3 * i;
    const px = positions[p] - ex;
    const py = positions[p + 1] - ey;
    const pz = positions[p + 2] - ez;
    const along = px * rx + py * ry + pz * rz;
    const above = px * ux + py * uy + pz * uz;
    const inward = px * nx + py * ny + pz * nz;
    across[i] = along;
    upward[i] = above;
    depth[i] = inward;
    if (inward < nearM) {
      side[i] = beforeEye;
      continue;
    }
    const cellX = (scaleX * along) / inward + offsetX;
    const cellY = (scaleY * above) / inward + offsetY;
    x[i] = cellX;
    y[i] = cellY;
    side[i] =
      (inward > farM ? beyondPlane : 0) |
      (cellX < 0 ? outLeft : cellX > columns ? outRight : 0) |
      (cellY < 0 ? outBelow : cellY > rows ? outAbove : 0);
  }
};

// A triangle clipped by two planes has at most five corners; three numbers each.
const clipA = new Float64Array(15);
const clipB = new Float64Array(15);

/** Keeps the part of a polygon where sign * (depth - limit) >= 0; returns its number of corners in `to`. */
const clipAtDepth = (from: Float64Array, corners: number, to: Float64Array, limit: number, sign: number): number => {
  let kept = 0;
  for (let i = 0; i < corners; i += 1) {
    const a = 3 * i;
    const b = 3 * ((i + 1) % corners);
    const insideA = sign * (from[a + 2] - limit);
    const insideB = sign * (from[b + 2] - limit);
    if (insideA >= 0) {
      to[3 * kept] = from[a];
      to[3 * kept + 1] = from[a + 1];
      to[3 * kept + 2] = from[a + 2];
      kept += 1;
    }
    if (insideA >= 0 !== insideB >= 0) {
      const t = insideA / (insideA - insideB);
      to[3 * kept] = from[a] + t * (from[b] - from[a]);
      to[3 * kept + 1] = from[a + 1] + t * (from[b + 1] - from[a + 1]);
      to[3 * kept + 2] = limit;
      kept += 1;
    }
  }
  return kept;
};

/** Covers the part of a triangle that lies between the eye and the target's plane. */
const fillClipped = (
  grid: CoverageGrid,
  pyramid: SightPyramid,
  map: CellMap,
  a: number,
  b: number,
  c: number,
): void => {
  const { across, upward, depth } = scratch;
  for (let corner = 0; corner < 3; corner += 1) {
    const vertex = corner === 0 ? a : corner === 1 ? b : c;
    clipA[3 * corner] = across[vertex];
    clipA[3 * corner + 1] = upward[vertex];
    clipA[3 * corner + 2] = depth[vertex];
  }
  const afterNear = clipAtDepth(clipA, 3, clipB, pyramid.nearM, 1);
  const corners = clipAtDepth(clipB, afterNear, clipA, pyramid.farM, -1);
  for (let i = 0; i < corners; i += 1) {
    const at = 3 * i;
    clipA[at] = (map.scaleX * clipA[at]) / clipA[at + 2] + map.offsetX;
    clipA[at + 1] = (map.scaleY * clipA[at + 1]) / clipA[at + 2] + map.offsetY;
  }
  for (let i = 3; i + 3 < 3 * corners; i += 3) {
    fillTriangle(grid, clipA[0], clipA[1], clipA[i], clipA[i + 1], clipA[i + 3], clipA[i + 4]);
  }
};

/** Covers the cells hidden by the triangles from one corner number to another; their vertices are placed. */
const fillTriangles = (
  grid: CoverageGrid,
  pyramid: SightPyramid,
  map: CellMap,
  indices: Uint32Array,
  fromCorner: number,
  toCorner: number,
): void => {
  const { x, y, side } = scratch;
  for (let i = fromCorner; i + 2 < toCorner; i += 3) {
    const a = indices[i];
    const b = indices[i + 1];
    const c = indices[i + 2];
    if ((side[a] & side[b] & side[c]) !== 0) continue;
    if (((side[a] | side[b] | side[c]) & depthBits) === 0) {
      fillTriangle(grid, x[a], y[a], x[b], y[b], x[c], y[c]);
    } else fillClipped(grid, pyramid, map, a, b, c);
  }
};

/** Covers the cells of the target that one occluder hides. Vertices are placed only in chunks that reach the view. */
const fillOccluder = (grid: CoverageGrid, pyramid: SightPyramid, map: CellMap, occluder: Occluder): void => {
  const { bounds } = chunksOf(occluder);
  const { indices } = occluder;
  const sight = newSight(occluder.positions.length / 3);
  for (let chunk = 0, from = 0; from < indices.length; chunk += 1, from += CHUNK_CORNERS) {
    if (!chunkMayHide(pyramid, bounds, chunk)) continue;
    const to = Math.min(indices.length, from + CHUNK_CORNERS);
    placeVertices(occluder, from, to, sight, pyramid, map, grid);
    fillTriangles(grid, pyramid, map, indices, from, to);
  }
};

const grids = new Map<number, CoverageGrid>();

/** The cleared grid of a size, kept between calls. Sizes are whole numbers from 1 to 4096. */
const gridOf = ({ columns, rows }: GridSize): CoverageGrid => {
  const fits = (n: number): boolean => Number.isInteger(n) && n >= 1 && n <= 4096;
  if (!fits(columns) || !fits(rows)) throw new Error(`A grid of ${columns} x ${rows} cells: 1 to 4096 each way.`);
  const key = columns * 8192 + rows;
  const known = grids.get(key);
  if (known) {
    clearGrid(known);
    return known;
  }
  const made = createGrid(columns, rows);
  grids.set(key, made);
  return made;
};

/**
 * The share of a flat target's front seen from a point past triangle meshes, 0 to 1. Each triangle is cut to the space
 * between the eye and the target's plane, thrown centrally onto that plane and marked on a grid of cells; the share is
 * that of the cells left unmarked. Derived; the error is about one cell along each outline. A target seen from behind or
 * edge on has share 0. The caller leaves out the viewer's own head. Not re-entrant: scratch is shared between calls.
 */
export const visibleFraction = (
  eye: Vec3,
  target: FlatTarget,
  occluders: readonly Occluder[],
  size: GridSize = pictureGrid,
): number => {
  const pyramid = sightPyramid(eye, target);
  if (!pyramid) return 0;
  const map = cellMapOf(pyramid, target, size);
  const cells = size.columns * size.rows;
  let grid: CoverageGrid | null = null;
  let covered = 0;
  for (let i = 0; i < occluders.length; i += 1) {
    const occluder = occluders[i];
    if (!mayHide(pyramid, occluder.boundsMin, occluder.boundsMax)) continue;
    grid ??= gridOf(size);
    fillOccluder(grid, pyramid, map, occluder);
    covered = coveredCells(grid);
    if (covered === cells) return 0;
  }
  return 1 - covered / cells;
};

/** The occluders that hide at least one cell of the target from the eye, the largest share first. */
export const blockersOf = (
  eye: Vec3,
  target: FlatTarget,
  occluders: readonly Occluder[],
  size: GridSize = pictureGrid,
): Blocker[] => {
  const pyramid = sightPyramid(eye, target);
  if (!pyramid) return [];
  const map = cellMapOf(pyramid, target, size);
  const found: Blocker[] = [];
  for (const occluder of occluders) {
    if (!mayHide(pyramid, occluder.boundsMin, occluder.boundsMax)) continue;
    const grid = gridOf(size);
    fillOccluder(grid, pyramid, map, occluder);
    const cells = coveredCells(grid);
    if (cells > 0) found.push({ id: occluder.id, share: cells / (size.columns * size.rows) });
  }
  return found.sort((a, b) => b.share - a.share);
};
