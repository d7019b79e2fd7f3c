import { dot, type Vec3 } from '../math/vec3.ts';
import { extentOf, joined } from '../model/extents.ts';
import type { ItemRef, Project } from '../model/project.ts';
import { sameBesides } from '../model/same-besides.ts';
import { seatPoses } from '../model/seating.ts';
import { objectSolids } from './objects.ts';
import { pictureSolids } from './picture.ts';
import { axesOf } from './placement.ts';
import { projectorSolids } from './projector.ts';
import { riserSolids } from './room/riser.ts';
import { chairSolids } from './seating/chair.ts';
import type { MeshGeometry, Solid } from './solid.ts';
import { loudspeakerSolids } from './sources/loudspeaker.ts';
import { subwooferSolids } from './sources/subwoofer.ts';

/** A box as it stands in the room: its middle, its three unit directions, and half its size along each. */
interface TurnedBox {
  readonly middleM: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly halfM: Vec3;
}

/** Things may touch, lean and sink in a little: only what goes deeper than this stands in another's room. */
const TOUCH_M = 0.025;

const locals = new WeakMap<MeshGeometry, { readonly minM: Vec3; readonly maxM: Vec3 }>();

const localBounds = (geometry: MeshGeometry): { readonly minM: Vec3; readonly maxM: Vec3 } => {
  const known = locals.get(geometry);
  if (known) return known;
  const low = [Infinity, Infinity, Infinity] as [number, number, number];
  const high = [-Infinity, -Infinity, -Infinity] as [number, number, number];
  const { positions } = geometry;
  for (let i = 0; i < positions.length; i += 1) {
    const axis = i % 3;
    if (positions[i] < low[axis]) low[axis] = positions[i];
    if (positions[i] > high[axis]) high[axis] = positions[i];
  }
  const made = { minM: low, maxM: high };
  locals.set(geometry, made);
  return made;
};

const boxOf = ({ geometry, placement }: Solid): TurnedBox => {
  const { minM, maxM } = localBounds(geometry);
  const { right, up, back } = axesOf(placement);
  const [x, y, z] = [0, 1, 2].map((axis) => (minM[axis] + maxM[axis]) / 2);
  const middleM = [0, 1, 2].map(
    (axis) => placement.positionM[axis] + x * right[axis] + y * up[axis] + z * back[axis],
  ) as unknown as Vec3;
  const halfM = [0, 1, 2].map((axis) => Math.max(0, (maxM[axis] - minM[axis]) / 2 - TOUCH_M / 2)) as unknown as Vec3;
  return { middleM, axes: [right, up, back], halfM };
};

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const reach = ({ axes, halfM }: TurnedBox, direction: Vec3): number =>
  axes.reduce((sum, axis, i) => sum + Math.abs(dot(axis, direction)) * halfM[i], 0);

/** Whether two turned boxes share room: no direction parts them (separating axes: three of each, nine across). */
const meet = (a: TurnedBox, b: TurnedBox): boolean => {
  const away: Vec3 = [b.middleM[0] - a.middleM[0], b.middleM[1] - a.middleM[1], b.middleM[2] - a.middleM[2]];
  const across = a.axes.flatMap((p) => b.axes.map((q) => cross(p, q)));
  return [...a.axes, ...b.axes, ...across].every((direction) => {
    if (dot(direction, direction) < 1e-12) return true;
    return Math.abs(dot(away, direction)) <= reach(a, direction) + reach(b, direction);
  });
};

interface Body {
  readonly ref: ItemRef;
  readonly boxes: readonly TurnedBox[];
  /** Things of one group may share room: the chairs of a row share their arms, a row stands on its riser. */
  readonly group: string;
}

const body = (ref: ItemRef, solids: readonly Solid[], group = `${ref.kind}:${ref.id}`): Body[] =>
  solids.length === 0 ? [] : [{ ref, boxes: solids.map(boxOf), group }];

/** A screen's frame is a ring: what stands behind the cloth stands in it, not in its way. */
const pictureParts = (project: Project): Solid[] =>
  pictureSolids(project).filter(({ part }) => project.picture.kind === 'panel' || part === 'face');

/** Turned, on stands, with arms: a thing as drawn reaches at most this far beyond its plain box. */
const BEYOND_M = 0.4;

/** Whether a thing stands near enough to be worth drawing up. */
const nearTo = (project: Project, refs: readonly ItemRef[]): ((ref: ItemRef) => boolean) => {
  const own = joined(refs.flatMap((ref) => extentOf(project, ref) ?? []));
  return (ref) => {
    const extent = extentOf(project, ref);
    if (!own || !extent) return own !== null;
    return [0, 1, 2].every(
      (axis) =>
        extent.minM[axis] <= own.maxM[axis] + 2 * BEYOND_M && extent.maxM[axis] >= own.minM[axis] - 2 * BEYOND_M,
    );
  };
};

/** The solids of the near ones of a kind, all drawn up together and only if any is near. */
const nearSolids = (refs: readonly ItemRef[], make: () => readonly Solid[]): Body[] => {
  if (refs.length === 0) return [];
  const solids = make();
  return refs.flatMap((ref) =>
    body(
      ref,
      solids.filter(({ id }) => id === ref.id),
    ),
  );
};

/** Risers, picture and projector of the last room: no moved subwoofer changes them. */
let last: { readonly project: Project; readonly bodies: readonly Body[] } | null = null;

const structure = (project: Project): readonly Body[] => {
  if (last !== null && sameBesides(last.project, project, 'subwoofers')) return last.bodies;
  const risers = riserSolids(project);
  const picture: ItemRef = { kind: 'picture', id: 'picture' };
  const made = [
    ...project.rows.flatMap(({ id }) =>
      body(
        { kind: 'row', id },
        risers.filter((riser) => riser.id === id),
        `row:${id}`,
      ),
    ),
    ...body(picture, pictureParts(project), 'picture'),
    ...body(picture, projectorSolids(project), 'picture'),
  ];
  last = { project, bodies: made };
  return made;
};

const bodies = (project: Project, near: (ref: ItemRef) => boolean): Body[] => [
  ...seatPoses(project)
    .filter(({ seat: { id } }) => near({ kind: 'seat', id }))
    .flatMap((pose) => body({ kind: 'seat', id: pose.seat.id }, chairSolids(pose), `row:${pose.row.id}`)),
  ...structure(project),
  ...project.loudspeakers
    .filter(({ id }) => near({ kind: 'loudspeaker', id }))
    .flatMap((one) => body({ kind: 'loudspeaker', id: one.id }, loudspeakerSolids(project, one))),
  ...project.subwoofers
    .filter(({ id }) => near({ kind: 'subwoofer', id }))
    .flatMap((one) => body({ kind: 'subwoofer', id: one.id }, subwooferSolids(project, one))),
  ...nearSolids(project.room.objects.map(({ id }): ItemRef => ({ kind: 'object', id })).filter(near), () =>
    objectSolids(project),
  ),
];

/** Two things that stand in one another's room. */
export interface Overlap {
  readonly a: ItemRef;
  readonly b: ItemRef;
}

const named = (refs: readonly ItemRef[], { ref, group }: Body): boolean =>
  refs.some(({ kind, id }) => (kind === ref.kind && id === ref.id) || (kind === 'row' && group === `row:${id}`));

/** Every overlap these things have with anything that is drawn: parts as turned boxes, so a toed-in cabinet counts as it stands. */
export const overlapsOf = (project: Project, refs: readonly ItemRef[]): readonly Overlap[] => {
  if (refs.length === 0) return [];
  const all = bodies(project, nearTo(project, refs));
  const found: Overlap[] = [];
  for (const [i, a] of all.entries()) {
    if (!named(refs, a)) continue;
    for (const [j, b] of all.entries()) {
      if (a.group === b.group || (j < i && named(refs, b))) continue;
      if (a.boxes.some((p) => b.boxes.some((q) => meet(p, q)))) found.push({ a: a.ref, b: b.ref });
    }
  }
  return found;
};
