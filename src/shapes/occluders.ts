import type { Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { type Body, type SeatPose, seatPose, seatPoses } from '../model/seating.ts';
import { memoOf } from './memo.ts';
import { objectSolids } from './objects.ts';
import { pictureSolids } from './picture.ts';
import { placed } from './placement.ts';
import { projectorSolids } from './projector.ts';
import { riserSolids } from './room/riser.ts';
import { chairSolids } from './seating/chair.ts';
import { personSolids } from './seating/person.ts';
import type { MeshGeometry, Solid } from './solid.ts';
import { loudspeakerSolids } from './sources/loudspeaker.ts';
import { subwooferSolids } from './sources/subwoofer.ts';

/** One thing that can hide another: all its drawn triangles in document axes, metres. */
export interface ItemOccluder {
  readonly id: string;
  readonly kind: Solid['kind'];
  /** The seat it belongs to, for chairs and people. */
  readonly seatId?: string;
  /** The row it belongs to, for chairs, people and risers. */
  readonly rowIndex?: number;
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
  readonly boundsMin: Vec3;
  readonly boundsMax: Vec3;
}

export interface OccluderOptions {
  /** The body to seat in a chair instead of the file's; null leaves the chair empty. */
  readonly people?: (pose: SeatPose) => Body | null;
  /** Whether the picture's own frame and, unless its cloth is acoustically transparent, its face hide things behind. */
  readonly picture?: boolean;
  /** Whether the subwoofers hide things. */
  readonly subwoofers?: boolean;
}

const numbers = new WeakMap<MeshGeometry, number>();
let lastNumber = 0;

const numberOf = (geometry: MeshGeometry): number => {
  const known = numbers.get(geometry);
  if (known !== undefined) return known;
  lastNumber += 1;
  numbers.set(geometry, lastNumber);
  return lastNumber;
};

interface WorldMesh {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
  readonly boundsMin: Vec3;
  readonly boundsMax: Vec3;
}

/** At most 1024 items' world triangles are kept, about 40 kB each. */
const worlds = memoOf<WorldMesh>(1024);

const joinedWorld = (solids: readonly Solid[]): WorldMesh => {
  const positions = new Float32Array(solids.reduce((n, { geometry }) => n + geometry.positions.length, 0));
  const indices = new Uint32Array(solids.reduce((n, { geometry }) => n + geometry.indices.length, 0));
  let at = 0;
  let corner = 0;
  for (const { geometry, placement } of solids) {
    positions.set(placed(geometry.positions, placement), at);
    const first = at / 3;
    for (let i = 0; i < geometry.indices.length; i += 1) indices[corner + i] = geometry.indices[i] + first;
    at += geometry.positions.length;
    corner += geometry.indices.length;
  }
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 1) {
    const axis = i % 3;
    if (positions[i] < low[axis]) low[axis] = positions[i];
    if (positions[i] > high[axis]) high[axis] = positions[i];
  }
  return { positions, indices, boundsMin: low, boundsMax: high };
};

/** The world triangles of one item, kept by what its parts are and where they stand. */
const worldOf = (solids: readonly Solid[]): WorldMesh => {
  const key = solids
    .map(({ geometry, placement: { positionM, yawDeg, pitchDeg } }) =>
      [numberOf(geometry), ...positionM, yawDeg, pitchDeg].join(' '),
    )
    .join(';');
  return worlds(key, () => joinedWorld(solids));
};

const occluderOf = (solids: readonly Solid[], belongs: { seatId?: string; rowIndex?: number } = {}): ItemOccluder[] =>
  solids.length === 0 ? [] : [{ id: solids[0].id, kind: solids[0].kind, ...belongs, ...worldOf(solids) }];

const byItem = (solids: readonly Solid[]): Solid[][] => {
  const groups = new Map<string, Solid[]>();
  for (const solid of solids) {
    const group = groups.get(solid.id);
    if (group) group.push(solid);
    else groups.set(solid.id, [solid]);
  }
  return [...groups.values()];
};

/** The occluder of one person, as drawn by personSolids for the same pose. */
export const personOccluder = (pose: SeatPose): ItemOccluder[] =>
  occluderOf(personSolids(pose), { seatId: pose.seat.id, rowIndex: pose.rowIndex });

const seated = (project: Project, pose: SeatPose, people: OccluderOptions['people']): ItemOccluder[] => {
  const body = people ? people(pose) : pose.body;
  if (body === null) return [];
  const same = body === pose.body;
  return personOccluder(same ? pose : seatPose(project, pose.rowIndex, pose.seatIndex, body));
};

/**
 * Everything that can hide a picture or a loudspeaker, one occluder an item: chairs, people, risers, objects, projector,
 * loudspeakers and, unless left out, subwoofers and the picture (its cloth only where sound does not pass it; it is never in
 * front of its own face). The triangles are those drawn. The caller leaves out the viewer's own person (and chair).
 */
export const occluders = (project: Project, options: OccluderOptions = {}): ItemOccluder[] => {
  const { people, picture = true, subwoofers = true } = options;
  const clear = project.picture.acousticallyTransparent;
  const rowIndexOf = (id: string) => project.rows.findIndex((row) => row.id === id);
  return [
    ...seatPoses(project).flatMap((pose) => [
      ...occluderOf(chairSolids(pose), { seatId: pose.seat.id, rowIndex: pose.rowIndex }),
      ...seated(project, pose, people),
    ]),
    ...byItem(riserSolids(project)).flatMap((solids) => occluderOf(solids, { rowIndex: rowIndexOf(solids[0].id) })),
    ...byItem(objectSolids(project)).flatMap((solids) => occluderOf(solids)),
    ...occluderOf(projectorSolids(project)),
    ...project.loudspeakers.flatMap((loudspeaker) => occluderOf(loudspeakerSolids(project, loudspeaker))),
    ...(subwoofers ? project.subwoofers.flatMap((one) => occluderOf(subwooferSolids(project, one))) : []),
    ...(picture ? occluderOf(pictureSolids(project).filter(({ part }) => !(clear && part === 'face'))) : []),
  ];
};
