import type { Vec3 } from '../../math/vec3.ts';
import { pictureExtent } from '../extents.ts';
import { freeId } from '../items.ts';
import type { ItemRef, Project } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { type Added, centimetres, firstFree } from './add-place.ts';
import { loudspeakerPlaces, nearby } from './add-source-place.ts';
import { addItem } from './items.ts';

/** Trade names of the commonest ITU-R BS.2051 labels; others are named by their label. */
const TRADE_NAMES: Readonly<Record<string, string>> = {
  'M+000': 'C',
  'M+030': 'L',
  'M-030': 'R',
  'M+060': 'Lw',
  'M-060': 'Rw',
  'M+090': 'Lss',
  'M-090': 'Rss',
  'M+110': 'Ls',
  'M-110': 'Rs',
  'M+135': 'Lrs',
  'M-135': 'Rrs',
  'M+180': 'Cs',
  'U+030': 'Ltf',
  'U-030': 'Rtf',
  'U+045': 'Ltf',
  'U-045': 'Rtf',
  'U+090': 'Ltm',
  'U-090': 'Rtm',
  'U+110': 'Ltr',
  'U-110': 'Rtr',
  'U+135': 'Ltr',
  'U-135': 'Rtr',
  'T+000': 'Top',
};

/** Labels a person is offered, the order of a layout growing. */
export const OFFERED_CHANNELS: readonly string[] = [
  'M+030',
  'M-030',
  'M+000',
  'M+110',
  'M-110',
  'M+090',
  'M-090',
  'M+135',
  'M-135',
  'M+060',
  'M-060',
  'U+045',
  'U-045',
  'U+135',
  'U-135',
  'U+090',
  'U-090',
  'T+000',
];

export const tradeName = (channel: string): string => TRADE_NAMES[channel] ?? channel.replace(/^M\+000$/, 'C');

const BOX_M: Vec3 = [0.2, 0.35, 0.25];
const FLAT_M: Vec3 = [0.22, 0.16, 0.22];
const WIDE_M: Vec3 = [0.5, 0.2, 0.3];

/** A cabinet keeps this far off the wall behind it and the cloth before it. */
const CLEAR_M = 0.02;
/** A centre under or over a picture that stands far out hangs no farther from the front wall than this. */
const FARTHEST_M = 0.4;

/** The centre: behind cloth that lets sound through at the picture's middle, else under the picture, else over it. */
const centrePlaces = (project: Project, sizeM: Vec3): Vec3[] => {
  const { minM: low, maxM: high } = pictureExtent(project);
  const { acousticallyTransparent, centreXM, offFrontWallM } = project.picture;
  const frontZM = roomShape(project).minM[2];
  const off = (wantedM: number): number => frontZM + Math.max(sizeM[2] / 2 + CLEAR_M, wantedM);
  const besideZM = off(Math.min(offFrontWallM + sizeM[2] / 2, FARTHEST_M));
  const under: Vec3 = [centreXM, low[1] - sizeM[1] / 2 - 0.04, besideZM];
  const over: Vec3 = [centreXM, high[1] + sizeM[1] / 2 + 0.04, besideZM];
  const behind: Vec3 = [centreXM, (low[1] + high[1]) / 2, off(offFrontWallM - sizeM[2] / 2 - CLEAR_M)];
  return acousticallyTransparent ? [behind, under, over] : [under, over, behind];
};

const sizeOf = (channel: string): Vec3 => {
  if (channel === 'M+000') return WIDE_M;
  return /^[UT]/.test(channel) ? FLAT_M : BOX_M;
};

/** A loudspeaker for a channel, where its label is given at home: seen from the reference seat, on the wall or ceiling there. */
export const addLoudspeaker = (project: Project, channel: string): Added => {
  const sizeM = sizeOf(channel);
  const along = loudspeakerPlaces(project, channel, sizeM);
  const places = channel === 'M+000' ? [...centrePlaces(project, sizeM), ...along] : along;
  const atM = firstFree(project, places, sizeM);
  const id = freeId(project, 'loudspeaker', tradeName(channel));
  const ceiling = /^[UT]/.test(channel);
  const front = /^M[+-]0(?:00|30|45|60)$/.test(channel);
  const mount = ceiling ? 'ceiling' : front ? 'stand' : 'wall';
  const edit = addItem(project, 'loudspeaker', { id, channel, atM: atM.map(centimetres), sizeM: [...sizeM], mount });
  return { edit, item: edit.ok ? { kind: 'loudspeaker', id } : null };
};

/** Several loudspeakers, one after the other, as one change; those of them that are there already are left out. */
export const addLoudspeakers = (project: Project, channels: readonly string[]): Added => {
  let next = project;
  const items: ItemRef[] = [];
  for (const channel of channels) {
    if (next.loudspeakers.some((one) => one.channel === channel)) continue;
    const { edit, item } = addLoudspeaker(next, channel);
    if (!edit.ok || !item) return { edit, item: null };
    next = edit.project;
    items.push(item);
  }
  return { edit: { ok: true, project: next }, item: items[0] ?? null, also: items.slice(1) };
};

const SUB_M: Vec3 = [0.4, 0.4, 0.4];

/**
 * A subwoofer at the next of the usual places that is free: the middle of the front wall, its quarter points, the corners,
 * the middles of the back and side walls (common practice).
 */
export const addSubwoofer = (project: Project): Added => {
  const { minM, maxM } = roomShape(project);
  const low = (axis: 0 | 2): number => minM[axis] + SUB_M[axis] / 2 + 0.05;
  const high = (axis: 0 | 2): number => maxM[axis] - SUB_M[axis] / 2 - 0.05;
  const share = (axis: 0 | 2, part: number): number => minM[axis] + part * (maxM[axis] - minM[axis]);
  const y = SUB_M[1] / 2;
  const places: Vec3[] = [
    [share(0, 0.5), y, low(2)],
    [share(0, 0.25), y, low(2)],
    [share(0, 0.75), y, low(2)],
    [low(0), y, low(2)],
    [high(0), y, low(2)],
    [low(0), y, high(2)],
    [high(0), y, high(2)],
    [share(0, 0.5), y, high(2)],
    [low(0), y, share(2, 0.5)],
    [high(0), y, share(2, 0.5)],
  ];
  const [x, , z] = firstFree(project, [...places, ...places.flatMap(nearby).map(([a, , b]): Vec3 => [a, y, b])], SUB_M);
  const id = freeId(project, 'subwoofer', 'S1');
  const edit = addItem(project, 'subwoofer', { id, atM: [centimetres(x), y, centimetres(z)], sizeM: [...SUB_M] });
  return { edit, item: edit.ok ? { kind: 'subwoofer', id } : null };
};
