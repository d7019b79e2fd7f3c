import type { Project } from '../../model/project.ts';
import { SURFACES } from '../../model/schema/room.ts';
import { pictureSolids } from '../../shapes/picture.ts';
import type { MaterialName, MeshGeometry, Solid } from '../../shapes/solid.ts';
import { roomExtent } from '../light/light-room.ts';

const cache = new Map<string, MeshGeometry>();
const box = (sx: number, sy: number, sz: number): MeshGeometry => {
  const key = `${sx} ${sy} ${sz}`;
  const found = cache.get(key);
  if (found) return found;
  const p: number[] = [],
    n: number[] = [],
    u: number[] = [],
    idx: number[] = [];
  const size = [sx, sy, sz];
  for (let axis = 0; axis < 3; axis++)
    for (const s of [-1, 1]) {
      const a = (axis + 1) % 3,
        b = (axis + 2) % 3;
      const base = p.length / 3;
      for (const [i, j] of [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ]) {
        const v = [0, 0, 0];
        v[axis] = (s * size[axis]) / 2;
        v[a] = (i * size[a]) / 2;
        v[b] = (j * size[b]) / 2;
        p.push(...v);
        const nn = [0, 0, 0];
        nn[axis] = s;
        n.push(...nn);
        u.push((i * size[a]) / 2, (j * size[b]) / 2);
      }
      if (s > 0) idx.push(base, base + 1, base + 2, base, base + 2, base + 3);
      else idx.push(base, base + 2, base + 1, base, base + 3, base + 2);
    }
  const g = {
    positions: Float32Array.from(p),
    normals: Float32Array.from(n),
    uvs: Float32Array.from(u),
    indices: Uint32Array.from(idx),
  };
  cache.set(key, g);
  return g;
};

export const temporarySolids = (project: Project): Solid[] => {
  const { minM, maxM } = roomExtent(project);
  const w = maxM[0] - minM[0],
    h = maxM[1],
    l = maxM[2];
  const out: Solid[] = [...pictureSolids(project)];
  const put = (
    kind: Solid['kind'],
    id: string,
    part: string,
    material: MaterialName,
    g: MeshGeometry,
    x: number,
    y: number,
    z: number,
  ) => out.push({ kind, id, part, material, geometry: g, placement: { positionM: [x, y, z], yawDeg: 0, pitchDeg: 0 } });
  const t = 0.1;
  for (const s of SURFACES) {
    if (s === 'left' || s === 'right')
      put(
        'surface',
        s,
        'wall',
        'plaster',
        box(t, h, l),
        s === 'left' ? minM[0] - t / 2 : maxM[0] + t / 2,
        h / 2,
        l / 2,
      );
    else if (s === 'front' || s === 'back')
      put('surface', s, 'wall', 'plaster', box(w, h, t), 0, h / 2, s === 'front' ? -t / 2 : l + t / 2);
    else
      put(
        'surface',
        s,
        s,
        s === 'floor' ? 'oak' : 'ceiling',
        box(w, t, l),
        0,
        s === 'floor' ? -t / 2 : h + t / 2,
        l / 2,
      );
  }
  for (const row of project.rows) {
    if (row.riser)
      put(
        'riser',
        row.id,
        'riser',
        'carpet',
        box(row.riser.toXM - row.riser.fromXM, row.floorM, row.riser.toZM - row.riser.fromZM),
        0,
        row.floorM / 2,
        (row.riser.fromZM + row.riser.toZM) / 2,
      );
    for (const seat of row.seats) {
      const z = row.eyeZM + 0.05;
      put('seat', seat.id, 'seat', 'velvet', box(0.62, 0.3, 0.6), seat.xM, row.floorM + 0.28, z - 0.2);
      put('seat', seat.id, 'back', 'velvet', box(0.62, 0.75, 0.18), seat.xM, row.floorM + 0.6, z + 0.2);
      put('person', seat.id, 'body', 'figure', box(0.36, 0.6, 0.2), seat.xM, row.floorM + 0.73, z);
      put('person', seat.id, 'head', 'figure', box(0.16, 0.22, 0.2), seat.xM, row.floorM + 1.15, z);
    }
  }
  for (const s of project.loudspeakers)
    put('loudspeaker', s.id, 'cabinet', 'cabinet', box(...s.sizeM), s.atM[0], s.atM[1], s.atM[2]);
  for (const s of project.subwoofers)
    put('subwoofer', s.id, 'cabinet', 'cabinet', box(...s.sizeM), s.atM[0], s.atM[1], s.atM[2]);
  return out;
};
