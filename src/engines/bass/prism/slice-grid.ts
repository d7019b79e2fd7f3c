import type { PlanBasis } from '../plan/plan-basis.ts';
import type { SlicePlane } from '../room-field.ts';
import { sameGrid } from '../slice-rest.ts';
import type { SourceTerms } from './near-field.ts';
import { intoSection, liesWithin, type PrismGeometry } from './prism-geometry.ts';
import { screened, sumScreened } from './source-images.ts';

/**
 * The places of a slice's grid in a prism: those of the cross-section it touches, and the places along the even axis. A
 * plane across the even axis has one place along it and all its points in the section; one along it has a line of the
 * section for every line of the grid.
 */
export interface SliceGrid {
  readonly plane: SlicePlane;
  /** Section points inside the room: index along the grid's section (iv nu + iu across the axis, else along one side). */
  readonly inside: Int32Array;
  /** x, y per inside point. */
  readonly pointsM: Float64Array;
  /** phi_i per inside point. */
  readonly values: Float32Array;
  /** Places along the even axis. */
  readonly alongM: Float64Array;
  /** Index of the field at inside point p and place z: inside[p] * stride + z * strideAlong. */
  readonly stride: number;
  readonly strideAlong: number;
  readonly points: number;
}

export interface SliceGrids {
  at(plane: SlicePlane): SliceGrid;
  /** Screened images of a source over the grid's inside points, near and slope, at p * places + z. */
  imagesOf(grid: SliceGrid, source: SourceTerms): Float32Array;
}

const IMAGE_BYTES = 6e6;

export const createSliceGrids = (geometry: PrismGeometry, basis: PlanBasis): SliceGrids => {
  let grid: SliceGrid | null = null;
  let maps = new Map<string, Float32Array>();
  let held = 0;
  return {
    at: (plane) => {
      if (grid !== null && sameGrid(grid.plane, plane)) return grid;
      grid = layOut(geometry, basis, plane);
      maps = new Map();
      held = 0;
      return grid;
    },
    imagesOf: (on, source) => {
      const key = `${source.x},${source.y},${source.z}`;
      let map = maps.get(key);
      if (map === undefined) {
        map = imageMap(on, source);
        held += map.byteLength;
      } else maps.delete(key);
      maps.set(key, map);
      for (const [oldest, old] of maps) {
        if (held <= IMAGE_BYTES || maps.size === 1) break;
        maps.delete(oldest);
        held -= old.byteLength;
      }
      return map;
    },
  };
};

const layOut = (geometry: PrismGeometry, basis: PlanBasis, given: SlicePlane): SliceGrid => {
  const plane = { ...given, uM: Float64Array.from(given.uM), vM: Float64Array.from(given.vM) };
  const { normal, atM, uAxis, uM, vM } = plane;
  const nu = uM.length;
  const inside: number[] = [];
  const points: number[] = [];
  const add = (index: number, first: number, second: number): void => {
    if (!liesWithin(geometry, first, second)) return;
    const [x, y] = intoSection(geometry, first, second);
    inside.push(index);
    points.push(x, y);
  };
  const flat = normal === geometry.axis;
  const alongU = uAxis === geometry.axis;
  if (flat) {
    const uFirst = uAxis === geometry.across[0];
    for (let iv = 0; iv < vM.length; iv++)
      for (let iu = 0; iu < nu; iu++) add(iv * nu + iu, uFirst ? uM[iu] : vM[iv], uFirst ? vM[iv] : uM[iu]);
  } else {
    const line = alongU ? vM : uM;
    const normalFirst = normal === geometry.across[0];
    for (let i = 0; i < line.length; i++) add(i, normalFirst ? atM : line[i], normalFirst ? line[i] : atM);
  }
  const pointsM = Float64Array.from(points);
  const alongM = flat ? Float64Array.of(clamp(atM, geometry.lengthM)) : (alongU ? uM : vM).slice();
  return {
    plane,
    inside: Int32Array.from(inside),
    pointsM,
    values: Float32Array.from(basis.valuesAt(pointsM)),
    alongM,
    stride: flat || !alongU ? 1 : nu,
    strideAlong: alongU ? 1 : nu,
    points: nu * vM.length,
  };
};

const clamp = (z: number, lengthM: number): number => Math.min(lengthM, Math.max(0, z));

const imageMap = (grid: SliceGrid, source: SourceTerms): Float32Array => {
  const { pointsM, alongM } = grid;
  const places = alongM.length;
  const count = pointsM.length / 2;
  const map = new Float32Array(2 * count * places);
  for (let p = 0; p < count; p++) {
    for (let z = 0; z < places; z++) {
      sumScreened(source.plan, source.ends, pointsM[2 * p], pointsM[2 * p + 1], alongM[z]);
      map[2 * (p * places + z)] = screened.near;
      map[2 * (p * places + z) + 1] = screened.slope;
    }
  }
  return map;
};
