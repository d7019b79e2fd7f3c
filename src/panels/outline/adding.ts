import { addObject, type ObjectKind } from '../../model/commands/add-object.ts';
import { addToSurface, type OnSurfaceKind } from '../../model/commands/add-opening.ts';
import type { Added } from '../../model/commands/add-place.ts';
import { addRow, addSeatToRow, addSofa } from '../../model/commands/add-seating.ts';
import {
  addLoudspeaker,
  addLoudspeakers,
  addSubwoofer,
  OFFERED_CHANNELS,
  tradeName,
} from '../../model/commands/add-source.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { wallOfItem } from '../../model/room/places.ts';

/** Something that can be added: what the menu says, and the command. */
export interface Addition {
  readonly id: string;
  readonly word: string;
  /** Said at the right of the menu's line. */
  readonly note?: string;
  /** What it is called in the history, where that is not the word in lower case. */
  readonly label?: string;
  add(project: Project): Added;
}

export interface AdditionGroup {
  readonly title: string;
  readonly additions: readonly Addition[];
}

/** The surface a thing on a wall goes to: the chosen one, or the one the chosen thing is in, else a side wall. */
const surfaceFor = (project: Project, chosen: ItemRef | null, usual: string): string => {
  if (chosen?.kind === 'surface') return chosen.id;
  const items =
    chosen?.kind === 'opening' ? project.room.openings : chosen?.kind === 'patch' ? project.room.patches : [];
  const item = items.find(({ id }) => id === chosen?.id);
  if (!item) return usual;
  const wall = wallOfItem(project, item);
  return project.room.plan.shape === 'polygon' && wall ? String(wall.edge) : (wall?.surface ?? item.surface);
};

/** The row a seat goes to: the chosen one or the chosen seat's, else the first. */
const rowFor = (project: Project, chosen: ItemRef | null): string => {
  const row =
    chosen?.kind === 'row'
      ? project.rows.find(({ id }) => id === chosen.id)
      : project.rows.find(({ seats }) => chosen?.kind === 'seat' && seats.some(({ id }) => id === chosen.id));
  return (row ?? project.rows[0])?.id ?? '';
};

const onSurface = (kind: OnSurfaceKind, word: string, chosen: ItemRef | null, usual: string): Addition => ({
  id: kind,
  word,
  add: (project) => addToSurface(project, kind, surfaceFor(project, chosen, usual)),
});

const object = (kind: ObjectKind, word: string): Addition => ({
  id: kind,
  word,
  add: (project) => addObject(project, kind),
});

/** How far round a loudspeaker stands, degrees from the front, up to and with these. */
const DEPTHS = [
  [45, 'front'],
  [60, 'wide'],
  [90, 'side'],
  [110, 'surround'],
  [180, 'rear'],
] as const;

/** Where a loudspeaker stands by its ITU-R BS.2051 label, in words: the label counts its angles the other way round. */
const standsAt = (channel: string): string => {
  const [, layer, sign, degrees] = /^([MUT])([+-])(\d{3})$/.exec(channel) ?? [];
  if (layer === undefined) return channel;
  if (layer === 'T') return 'overhead';
  const azimuth = Number(degrees);
  const [, depth] = DEPTHS.find(([up]) => azimuth <= up) ?? [180, 'rear'];
  const side = azimuth === 0 || azimuth === 180 ? 'centre' : sign === '+' ? 'left' : 'right';
  if (layer === 'U') return `top ${depth} ${side}`;
  return side === 'centre' ? `${depth} ${side}` : `${side} ${depth}`;
};

/** Loudspeakers that are not there yet. */
const loudspeakers = (project: Project): readonly Addition[] => {
  const there = new Set(project.loudspeakers.map(({ channel }) => channel));
  const missing = OFFERED_CHANNELS.filter((channel) => !there.has(channel));
  return missing.map((channel) => ({
    id: channel,
    word: tradeName(channel),
    note: standsAt(channel),
    label: `loudspeaker ${tradeName(channel)}`,
    add: (from) => addLoudspeaker(from, channel),
  }));
};

const SETS: readonly { readonly word: string; readonly channels: readonly string[] }[] = [
  { word: 'Front three', channels: ['M+030', 'M+000', 'M-030'] },
  { word: 'Surround pair', channels: ['M+110', 'M-110'] },
  { word: 'Side pair', channels: ['M+090', 'M-090'] },
  { word: 'Rear pair', channels: ['M+135', 'M-135'] },
  { word: 'Upper four', channels: ['U+045', 'U-045', 'U+135', 'U-135'] },
];

/** Loudspeakers that belong together, as long as none of them is there. A surround pair does the work of sides and rears. */
const sets = ({ loudspeakers: there }: Project): readonly Addition[] => {
  const has = (channel: string): boolean => there.some((one) => one.channel === channel);
  return SETS.filter(({ channels }) => !channels.some(has)).map(({ word, channels }) => ({
    id: channels.join(' '),
    word,
    note: channels.map(tradeName).join(' '),
    add: (from) => addLoudspeakers(from, channels),
  }));
};

/** All that can be added, given what is chosen. */
export const additionsFor = (project: Project, chosen: ItemRef | null): readonly AdditionGroup[] => [
  {
    title: 'Seats',
    additions: [
      { id: 'sofa', word: 'Sofa for three', add: (from) => addSofa(from, 3) },
      { id: 'seat', word: 'Seat', add: (from) => addSeatToRow(from, rowFor(from, chosen)) },
      { id: 'row', word: 'Row', add: addRow },
    ],
  },
  { title: 'Subwoofer', additions: [{ id: 'subwoofer', word: 'Subwoofer', add: addSubwoofer }] },
  { title: 'Loudspeakers together', additions: sets(project) },
  { title: 'Loudspeakers one by one', additions: loudspeakers(project) },
  {
    title: 'On a wall',
    additions: [
      onSurface('door', 'Door', chosen, 'right'),
      onSurface('window', 'Window', chosen, 'left'),
      onSurface('opening', 'Opening', chosen, 'back'),
      onSurface('panel', 'Absorber', chosen, 'left'),
    ],
  },
  {
    title: 'Furniture and fittings',
    additions: [
      object('box', 'Cabinet'),
      object('table', 'Table'),
      object('lamp', 'Lamp'),
      object('beam', 'Beam'),
      object('column', 'Column'),
    ],
  },
];
