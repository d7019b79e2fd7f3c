import { ACROSS, type BoxGeometry } from './box-state.ts';
import type { SlicePlane } from './room-field.ts';
import { imageList, rest, rigidShape, setRigidClosed, sumImages } from './screened.ts';

/** The near part and the slope of the rest of one source over a grid, index iv * nu + iu. */
export interface RestMaps {
  readonly near: Float32Array;
  readonly slope: Float32Array;
}

/** Maps of the screened rest over one grid, kept by source; independent of frequency and of the source's weight. */
export interface SliceRests {
  mapsFor(plane: SlicePlane, source: Float64Array): RestMaps;
}

export const createSliceRests = (geometry: BoxGeometry, limitBytes: number): SliceRests => {
  let grid: SlicePlane | null = null;
  let maps = new Map<string, RestMaps>();
  let held = 0;
  return {
    mapsFor: (plane, source) => {
      if (grid === null || !sameGrid(grid, plane)) {
        grid = { ...plane, uM: Float64Array.from(plane.uM), vM: Float64Array.from(plane.vM) };
        maps = new Map();
        held = 0;
      }
      const key = source.join();
      const known = maps.get(key);
      if (known !== undefined) {
        maps.delete(key);
        maps.set(key, known);
        return known;
      }
      const map = restMaps(geometry, plane, source);
      maps.set(key, map);
      held += 2 * map.near.byteLength;
      for (const [oldest, old] of maps) {
        if (held <= limitBytes || maps.size === 1) break;
        maps.delete(oldest);
        held -= 2 * old.near.byteLength;
      }
      return map;
    },
  };
};

export const sameGrid = (a: SlicePlane, b: SlicePlane): boolean =>
  a.normal === b.normal && a.atM === b.atM && a.uAxis === b.uAxis && sameNumbers(a.uM, b.uM) && sameNumbers(a.vM, b.vM);

export const sameNumbers = (a: Float64Array, b: Float64Array): boolean => {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
};

/** Image sum less the transverse terms that the engine keeps, all of them up to the cut. */
const restMaps = (geometry: BoxGeometry, plane: SlicePlane, source: Float64Array): RestMaps => {
  const { normal, uAxis, vAxis, uM, vM, atM } = plane;
  const { sizeM, orders } = geometry;
  const terms = geometry.terms(normal);
  const uFirst = ACROSS[normal][0] === uAxis;
  const nu = uM.length;
  const nv = vM.length;
  const near = new Float32Array(nu * nv);
  const slope = new Float32Array(nu * nv);
  // sum over the u order for each v: T[iv, m] = sum over n of c(m, n) shape_n(v)
  const ordersU = orders[uAxis];
  const shapesU = shapeRows(uM, ordersU, sizeM[uAxis]);
  const shapesV = shapeRows(vM, orders[vAxis], sizeM[vAxis]);
  // near and slope side by side
  const partial = new Float64Array(2 * nv * ordersU);
  for (let t = 0; t < terms.count; t++) {
    const m = uFirst ? terms.first[t] : terms.second[t];
    const n = uFirst ? terms.second[t] : terms.first[t];
    setRigidClosed(terms.kappa2[t], atM, source[normal], sizeM[normal]);
    const weight =
      4 * Math.PI * rigidShape(m, source[uAxis], sizeM[uAxis]) * rigidShape(n, source[vAxis], sizeM[vAxis]);
    for (let iv = 0; iv < nv; iv++) {
      const value = weight * shapesV[iv * orders[vAxis] + n];
      partial[2 * (iv * ordersU + m)] += value * rest.near;
      partial[2 * (iv * ordersU + m) + 1] += value * rest.slope;
    }
  }
  const images = imageList(geometry, source);
  const point: [number, number, number] = [0, 0, 0];
  point[normal] = atM;
  for (let iv = 0; iv < nv; iv++) {
    point[vAxis] = vM[iv];
    for (let iu = 0; iu < nu; iu++) {
      point[uAxis] = uM[iu];
      let keptNear = 0;
      let keptSlope = 0;
      for (let m = 0; m < ordersU; m++) {
        const shape = shapesU[iu * ordersU + m];
        keptNear += partial[2 * (iv * ordersU + m)] * shape;
        keptSlope += partial[2 * (iv * ordersU + m) + 1] * shape;
      }
      sumImages(images, point[0], point[1], point[2]);
      near[iv * nu + iu] = rest.near - keptNear;
      slope[iv * nu + iu] = rest.slope - keptSlope;
    }
  }
  return { near, slope };
};

const shapeRows = (at: Float64Array, orders: number, lengthM: number): Float64Array => {
  const rows = new Float64Array(at.length * orders);
  for (let i = 0; i < at.length; i++) {
    for (let n = 0; n < orders; n++) rows[i * orders + n] = rigidShape(n, at[i], lengthM);
  }
  return rows;
};
