import { addQuad, addTriangle, addVertex, emptyMesh, type RawMesh } from './raw.ts';

/** A round hole in a baffle, in the baffle's plane: x to the right, y up. */
export interface Hole {
  readonly x: number;
  readonly y: number;
  readonly radiusM: number;
}

/** One upright strip of a baffle with one hole in it. */
interface Cell {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly hole: Hole;
}

/** A large cone is looked at closely: it gets more sides. */
export const holeSegments = ({ radiusM }: Hole): number => (radiusM > 0.1 ? 20 : 14);
const EDGE_PIECES = 3;

/** Cuts a rectangle between neighbouring holes that lie along its longer way; at least one hole. */
const cellsOf = (widthM: number, heightM: number, holes: readonly Hole[]): Cell[] => {
  const [w, h] = [widthM / 2, heightM / 2];
  const across = holes.length > 1 && holes.every((hole) => hole.y === holes[0].y);
  const sorted = [...holes].sort((a, b) => (across ? a.x - b.x : a.y - b.y));
  return sorted.map((hole, i) => {
    const split = (k: number): number => {
      const [a, b] = [sorted[k], sorted[k + 1]];
      const along = (q: Hole) => (across ? q.x : q.y);
      return (along(a) + a.radiusM + along(b) - b.radiusM) / 2;
    };
    const from = i === 0 ? null : split(i - 1);
    const to = i === sorted.length - 1 ? null : split(i);
    return across
      ? { x0: from ?? -w, x1: to ?? w, y0: -h, y1: h, hole }
      : { x0: -w, x1: w, y0: from ?? -h, y1: to ?? h, hole };
  });
};

/**
 * A plate in the plane z = 0, front towards -z and `depthM` thick behind it, with round holes through it. Its rim is
 * chamfered. Closed; neighbouring cells share the points on their common edge.
 */
export const baffle = (widthM: number, heightM: number, depthM: number, holes: readonly Hole[]): RawMesh => {
  const mesh = emptyMesh();
  const chamfer = Math.min(0.005, depthM / 2, widthM / 20, heightM / 20);
  const known = new Map<string, number>();
  const point = (x: number, y: number, z: number): number => {
    const key = `${Math.round(x * 1e6)} ${Math.round(y * 1e6)} ${Math.round(z * 1e6)}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = addVertex(mesh, x, y, z);
    known.set(key, made);
    return made;
  };
  const [w, h] = [widthM / 2, heightM / 2];
  const pulledIn = (x: number, y: number): [number, number] => [
    Math.abs(Math.abs(x) - w) < 1e-9 ? Math.sign(x) * (w - chamfer) : x,
    Math.abs(Math.abs(y) - h) < 1e-9 ? Math.sign(y) * (h - chamfer) : y,
  ];
  for (const { x0, x1, y0, y1, hole } of cellsOf(widthM, heightM, holes)) {
    const corners: [number, number][] = [];
    // Counter-clockwise seen from +z, starting at the lower left.
    for (let i = 0; i < EDGE_PIECES; i += 1) corners.push([x0 + ((x1 - x0) * i) / EDGE_PIECES, y0]);
    for (let i = 0; i < EDGE_PIECES; i += 1) corners.push([x1, y0 + ((y1 - y0) * i) / EDGE_PIECES]);
    for (let i = 0; i < EDGE_PIECES; i += 1) corners.push([x1 - ((x1 - x0) * i) / EDGE_PIECES, y1]);
    for (let i = 0; i < EDGE_PIECES; i += 1) corners.push([x0, y1 - ((y1 - y0) * i) / EDGE_PIECES]);
    const angleOf = ([x, y]: readonly [number, number]) => Math.atan2(y - hole.y, x - hole.x);
    const outer = corners.map((p) => ({ p, angle: angleOf(p) })).sort((a, b) => a.angle - b.angle);
    const segments = holeSegments(hole);
    const inner = Array.from({ length: segments }, (_, i) => {
      const angle = -Math.PI + (2 * Math.PI * (i + 0.5)) / segments;
      return { p: [hole.x + hole.radiusM * Math.cos(angle), hole.y + hole.radiusM * Math.sin(angle)] as const, angle };
    });
    const front = (p: readonly [number, number]) => point(...pulledIn(p[0], p[1]), 0);
    const behind = (p: readonly [number, number]) => point(p[0], p[1], depthM);
    // Both rings merged by angle: each step goes on along the ring whose next point comes first.
    let i = 0;
    let o = 0;
    const at = <T>(ring: readonly T[], k: number): T => ring[k % ring.length];
    const nextAngle = (ring: readonly { readonly angle: number }[], k: number): number =>
      at(ring, k + 1).angle + 2 * Math.PI * Math.floor((k + 1) / ring.length);
    while (i < inner.length || o < outer.length) {
      const onOuter = o < outer.length && (i >= inner.length || nextAngle(outer, o) <= nextAngle(inner, i));
      const a = at(inner, i).p;
      const b = at(outer, o).p;
      const c = onOuter ? at(outer, o + 1).p : at(inner, i + 1).p;
      // The front faces -z, so it turns the other way round than the back.
      addTriangle(mesh, front(a), front(c), front(b));
      addTriangle(mesh, behind(a), behind(b), behind(c));
      if (onOuter) o += 1;
      else i += 1;
    }
    for (let k = 0; k < segments; k += 1) {
      const [a, b] = [inner[k].p, at(inner, k + 1).p];
      addQuad(mesh, front(a), behind(a), behind(b), front(b));
    }
    for (let k = 0; k < corners.length; k += 1) {
      const [a, b] = [corners[k], at(corners, k + 1)];
      const rim = (v: 0 | 1, half: number) => Math.abs(a[v] - b[v]) < 1e-9 && Math.abs(Math.abs(a[v]) - half) < 1e-9;
      if (!rim(0, w) && !rim(1, h)) continue;
      const [ea, eb] = [point(a[0], a[1], chamfer), point(b[0], b[1], chamfer)];
      addQuad(mesh, front(a), front(b), eb, ea);
      addQuad(mesh, ea, eb, behind(b), behind(a));
    }
  }
  return mesh;
};
