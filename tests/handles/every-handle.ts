import { readdirSync, readFileSync } from 'node:fs';
import type { Vec3 } from '../../src/math/vec3.ts';
import type { Handle } from '../../src/model/handles/handle.ts';
import { handlesFor } from '../../src/model/handles/handles.ts';
import { keysOf } from '../../src/model/items.ts';
import { pathText } from '../../src/model/paths.ts';
import type { ItemRef, Project } from '../../src/model/project.ts';
import { projectSchema } from '../../src/model/schema/project.ts';
import { SURFACES } from '../../src/model/schema/room.ts';

const DEMOS = 'public/demos';

export const demos = (): readonly (readonly [file: string, project: Project])[] =>
  readdirSync(DEMOS)
    .filter((file) => file.endsWith('.json'))
    .map((file) => [file, projectSchema.parse(JSON.parse(readFileSync(`${DEMOS}/${file}`, 'utf8')))]);

/** Everything of a project that can be chosen. */
export const everyItem = (project: Project): readonly ItemRef[] => {
  const of = (kind: ItemRef['kind'], items: readonly { readonly id: string }[]) =>
    items.map(({ id }) => ({ kind, id }));
  const { room } = project;
  return [
    { kind: 'picture', id: 'picture' },
    ...of('loudspeaker', project.loudspeakers),
    ...of('subwoofer', project.subwoofers),
    ...of('row', project.rows),
    ...project.rows.flatMap(({ seats }) => of('seat', seats)),
    ...of('object', room.objects),
    ...of('opening', room.openings),
    ...of('patch', room.patches),
    ...SURFACES.map((id): ItemRef => ({ kind: 'surface', id })),
  ];
};

export const everyHandle = (project: Project): readonly Handle[] =>
  everyItem(project).flatMap((ref) => handlesFor(project, [ref]));

/** The paths of all values in which two documents differ. */
export const changedPaths = (a: unknown, b: unknown, path = ''): readonly string[] => {
  if (Object.is(a, b)) return [];
  const holds = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
  if (!holds(a) || !holds(b)) return [path];
  const step = (key: string) => (Array.isArray(a) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`);
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) => changedPaths(a[key], b[key], step(key)));
};

const ROW_PLACE = String.raw`(?:eyeZM|seats\[\d+\]\.(?:xM|eyeZM))`;
const ROW_DEPTH = String.raw`(?:eyeZM|seats\[\d+\]\.eyeZM)`;
/** What a wall takes along: everything across or along the room, and what is measured along the walls. */
const WITH_WALLS = String.raw`.*(?:M\[[02]\]|[xX]M|ZM|M\[\d+\]\[0\]|fromM|bottomM|aim\[[02]\]|wall|surface)`;

/** What may change of the document by each kind of handle, behind the path of its thing: told here, apart from the code. */
const FIELDS: Readonly<Record<Handle['kind'], (handle: Handle) => string>> = {
  place: ({ ref }) => {
    if (ref.kind === 'object') return String.raw`(?:min|max)M\[[02]\]`;
    return ref.kind === 'seat' ? '(?:xM|eyeZM)' : String.raw`atM\[[02]\]`;
  },
  height: ({ ref }) => (ref.kind === 'object' ? String.raw`(?:min|max)M\[1\]` : String.raw`atM\[1\]`),
  aim: () => String.raw`aim(?:\[\d\])?`,
  facing: () => 'facingDeg',
  recline: () => 'reclineDeg',
  rowPlace: () => ROW_PLACE,
  rowDistance: () => ROW_DEPTH,
  riserHeight: () => 'floorM',
  riserFront: () => String.raw`riser(?:\.fromZM)?`,
  riserBack: () => String.raw`riser(?:\.toZM)?`,
  pictureAcross: () => 'centreXM',
  pictureOff: () => 'offFrontWallM',
  pictureHeight: () => 'bottomM',
  pictureCorner: ({ part = '' }) => (part.startsWith('upper') ? 'widthM' : '(?:widthM|bottomM)'),
  projectorPlace: () => String.raw`projector\.atM\[[02]\]`,
  projectorHeight: () => String.raw`projector\.atM\[1\]`,
  objectSide: ({ part = '' }) => String.raw`maxM\[${'xyz'.indexOf(part)}\]`,
  slide: () => '(?:fromM|bottomM)',
  edge: ({ part = '' }) => (part === 'left' || part === 'right' ? '(?:fromM|widthM)' : '(?:bottomM|heightM)'),
  wall: () => String.raw`(?:room\.plan\..*|${WITH_WALLS})`,
  corner: () =>
    String.raw`room\.(?:plan\.cornersM\[\d+\](?:\[\d\])?|(?:openings|patches)\[\d+\]\.(?:wall|surface|fromM))`,
  ceiling: () => String.raw`room\.ceiling\..*`,
  bend: () => String.raw`room\.ceiling\..*`,
  groupPlace: () => '.*',
  groupHeight: () => '.*',
};

const escaped = (path: string): string => path.replace(/[[\].]/g, String.raw`\$&`);

/** The paths a handle may change, whole; a seat's may be its row's, which goes with it towards the picture. */
export const mayChange = (project: Project, handle: Handle): RegExp => {
  const { ref, kind } = handle;
  const fields = FIELDS[kind](handle);
  if (ref.kind === 'surface') return new RegExp(`^${fields}$`);
  const path = pathText(keysOf(project, ref) ?? []);
  if (ref.kind !== 'seat') return new RegExp(`^${escaped(path)}\\.${fields}$`);
  const row = escaped(path.slice(0, path.indexOf('.seats')));
  return kind === 'place'
    ? new RegExp(`^(?:${escaped(path)}\\.${fields}|${row}\\.${ROW_DEPTH})$`)
    : new RegExp(`^${escaped(path)}\\.${fields}$`);
};

/** The directions a handle can be moved along. */
export const waysOf = ({ axis }: Handle): readonly Vec3[] => {
  if (axis.kind === 'line') return [axis.direction];
  if (axis.kind === 'surface') return [axis.right, axis.up];
  return [
    [1, 0, 0],
    [0, 0, 1],
  ];
};
