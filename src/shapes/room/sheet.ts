import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { addTriangle, addVertex, emptyMesh, type RawMesh } from '../mesh/raw.ts';
import { cellsOf, type Region } from './cells.ts';

/** Where a sheet's points lie in the room. */
export interface SheetPlaces {
  readonly front: (point: Point2) => Vec3;
  readonly back: (point: Point2) => Vec3;
  /** Whether u x v points away from whoever looks at the front. */
  readonly mirrored: boolean;
}

/** Points nearer than this are one. */
const WELD = 1e5;
const keyOf = ([u, v]: Point2): string => `${Math.round(u * WELD)} ${Math.round(v * WELD)}`;

/** The points of one face of a sheet, made when they are first asked for. */
class Face {
  readonly known = new Map<string, number>();
  private readonly mesh: RawMesh;
  private readonly place: (point: Point2) => Vec3;

  constructor(mesh: RawMesh, place: (point: Point2) => Vec3) {
    this.mesh = mesh;
    this.place = place;
  }

  at(point: Point2): number {
    const key = keyOf(point);
    const found = this.known.get(key);
    if (found !== undefined) return found;
    const made = addVertex(this.mesh, ...this.place(point));
    this.known.set(key, made);
    return made;
  }
}

interface Edge {
  readonly from: Point2;
  readonly to: Point2;
}

/** The sides of cells that no other cell shares. */
const rimOf = (cells: readonly (readonly Point2[])[]): Edge[] => {
  const open = new Map<string, Edge>();
  for (const cell of cells)
    cell.forEach((from, i) => {
      const to = cell[(i + 1) % cell.length];
      const [a, b] = [keyOf(from), keyOf(to)];
      if (a === b) return;
      if (!open.delete(`${b}|${a}`)) open.set(`${a}|${b}`, { from, to });
    });
  return [...open.values()];
};

/** The points on an edge's way that others know, from its start on. */
const pointsBetween = ({ from, to }: Edge, points: readonly Point2[]): Point2[] => {
  const [du, dv] = [to[0] - from[0], to[1] - from[1]];
  const squared = du * du + dv * dv;
  const long = Math.sqrt(squared);
  return points
    .map((point) => {
      const [u, v] = [point[0] - from[0], point[1] - from[1]];
      return { point, t: (u * du + v * dv) / squared, away: Math.abs(u * dv - v * du) / long };
    })
    .filter(({ t, away }) => away < 1e-5 && t * long > 1e-5 && (1 - t) * long > 1e-5)
    .sort((a, b) => a.t - b.t)
    .map(({ point }) => point);
};

/**
 * A sheet of some thickness behind a region cut finely for the light; closed, reveals of holes included. Nobody lights the
 * outside: its back is cut no finer than corners and holes ask for.
 */
export const sheet = (
  region: Region,
  places: SheetPlaces,
  stepM: number,
  lines: { readonly u: readonly number[]; readonly v: readonly number[] },
): RawMesh => {
  const mesh = emptyMesh();
  const triangle = places.mirrored
    ? (a: number, b: number, c: number) => addTriangle(mesh, a, c, b)
    : (a: number, b: number, c: number) => addTriangle(mesh, a, b, c);
  const fine = cellsOf(region, stepM, lines);
  const coarse = cellsOf(region, Number.POSITIVE_INFINITY, { u: [], v: [] });
  const front = new Face(mesh, places.front);
  const back = new Face(mesh, places.back);
  for (const cell of fine) {
    const [first, ...rest] = cell.map((point) => front.at(point));
    for (let k = 0; k + 1 < rest.length; k += 1) triangle(first, rest[k], rest[k + 1]);
  }
  for (const cell of coarse) {
    const [first, ...rest] = cell.map((point) => back.at(point));
    for (let k = 0; k + 1 < rest.length; k += 1) triangle(first, rest[k + 1], rest[k]);
  }
  const rim = rimOf(fine).map(({ from }) => from);
  for (const edge of rimOf(coarse)) {
    const [from, to] = [back.at(edge.from), back.at(edge.to)];
    const run = [edge.from, ...pointsBetween(edge, rim), edge.to].map((point) => front.at(point));
    triangle(run[0], from, to);
    for (let k = 0; k + 1 < run.length; k += 1) triangle(run[k], to, run[k + 1]);
  }
  return mesh;
};
