import type { Project } from '../../../src/model/project.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { type MeshGeometry, placed, type Solid } from '../../../src/shapes/index.ts';
import preset from './two-rows.json';

type Json = Record<string, unknown>;

/** A room of 4.3 x 6.1 x 2.7 m with two rows, eleven loudspeakers and four subwoofers, with some of its parts replaced. */
export const demo = (changes: Json = {}): Project => projectSchema.parse({ ...structuredClone(preset), ...changes });

/** A bare room of 4 x 5 x 2.5 m with one chair two metres from the front. */
export const bare = (changes: Json = {}): Project =>
  projectSchema.parse({
    format: 'parterre/project',
    version: 1,
    room: { plan: { shape: 'rectangle', widthM: 4, lengthM: 5 }, ceiling: { shape: 'flat', heightM: 2.5 } },
    rows: [{ id: 'r', eyeZM: 2.5, furniture: 'single', seats: [{ id: 's', xM: 0 }] }],
    ...changes,
  });

/** A room with everything in it that shapes can make. */
export const full = (): Project =>
  demo({
    room: {
      ...preset.room,
      openings: [
        ...preset.room.openings.map((opening) => ({ ...opening, leaf: 'open', swing: 'in' })),
        { id: 'hatch', kind: 'opening', surface: 'ceiling', fromM: 1, widthM: 0.6, bottomM: 2, heightM: 0.6 },
        { id: 'pass', kind: 'opening', surface: 'back', fromM: 1, widthM: 0.8, bottomM: 0.8, heightM: 1 },
      ],
      patches: [
        { id: 'p1', surface: 'left', fromM: 3, widthM: 1.2, bottomM: 0.4, heightM: 1.2, finish: 'fibre-panel-50' },
        { id: 'p2', surface: 'ceiling', fromM: 1, widthM: 1.2, bottomM: 3, heightM: 1.2, finish: 'fibre-panel-25' },
      ],
      objects: ['box', 'beam', 'column', 'lamp', 'table', 'cabinet', 'radiator'].map((kind, i) => ({
        id: kind,
        kind,
        minM: [-2 + i * 0.5, 0, 1],
        maxM: [-1.65 + i * 0.5, 0.7, 1.4],
      })),
    },
    rows: [
      ...preset.rows,
      ...(['single', 'chaise', 'stool', 'recliner'] as const).map((furniture, i) => ({
        id: furniture,
        eyeZM: 2,
        furniture,
        seats: [
          { id: `${furniture}-1`, xM: -1.2 + i * 0.8, reclineDeg: furniture === 'stool' ? 0 : 25, facingDeg: 10 },
        ],
      })),
    ],
    loudspeakers: [
      ...preset.loudspeakers,
      ...(['dipole', 'bipole', 'omni'] as const).map((pattern, i) => ({
        id: pattern,
        channel: 'M+110',
        atM: [-2.02, 1.2, 1 + i],
        pattern,
        mount: 'wall',
        sizeM: [0.3, 0.3, 0.2],
      })),
      { id: 'flush', channel: 'M-110', atM: [2.1, 1.2, 2.5], mount: 'in-wall', sizeM: [0.2, 0.3, 0.1] },
    ],
  });

export interface Bounds {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** The box round solids as they stand in the room. */
export const boundsOf = (solids: readonly Solid[]): Bounds => {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const { geometry, placement } of solids) {
    const world = placed(geometry.positions, placement);
    for (let i = 0; i < world.length; i += 1) {
      min[i % 3] = Math.min(min[i % 3], world[i]);
      max[i % 3] = Math.max(max[i % 3], world[i]);
    }
  }
  return { min, max };
};

const corner = ({ positions }: MeshGeometry, index: number): [number, number, number] => [
  positions[3 * index],
  positions[3 * index + 1],
  positions[3 * index + 2],
];

/** Edges that are not walked as often one way as the other once vertices within 0.02 mm are one: none on a closed skin. */
export const openEdges = (geometry: MeshGeometry): number => {
  const weld = new Map<string, number>();
  const ids: number[] = [];
  for (let i = 0; i < geometry.positions.length / 3; i += 1) {
    const key = corner(geometry, i)
      .map((v) => Math.round(v * 5e4))
      .join(' ');
    if (!weld.has(key)) weld.set(key, weld.size);
    ids.push(weld.get(key)!);
  }
  const walked = new Map<string, number>();
  for (let i = 0; i < geometry.indices.length; i += 3) {
    for (let k = 0; k < 3; k += 1) {
      const a = ids[geometry.indices[i + k]];
      const b = ids[geometry.indices[i + ((k + 1) % 3)]];
      if (a === b) continue;
      const key = a < b ? `${a} ${b}` : `${b} ${a}`;
      walked.set(key, (walked.get(key) ?? 0) + (a < b ? 1 : -1));
    }
  }
  return [...walked.values()].filter((count) => count !== 0).length;
};

/** The volume a closed skin holds (divergence theorem); positive when its triangles turn outwards. Cubic metres. */
export const volumeOf = (geometry: MeshGeometry): number => {
  let six = 0;
  for (let i = 0; i < geometry.indices.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => corner(geometry, geometry.indices[i + k]));
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
};

/** Twice each triangle's area along its normal, with its corners' numbers. */
export const facesOf = (geometry: MeshGeometry): { vector: [number, number, number]; corners: number[] }[] =>
  Array.from({ length: geometry.indices.length / 3 }, (_, t) => {
    const corners = [0, 1, 2].map((k) => geometry.indices[3 * t + k]);
    const [a, b, c] = corners.map((index) => corner(geometry, index));
    const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
    return {
      vector: [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]],
      corners,
    };
  });

export const byId = (solids: readonly Solid[], id: string): Solid[] => solids.filter((solid) => solid.id === id);
export const byPart = (solids: readonly Solid[], part: string): Solid[] => solids.filter((s) => s.part === part);
