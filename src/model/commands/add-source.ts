import { radiansOf } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { freeId } from '../items.ts';
import type { Project } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { referenceSeatId, seatPoses } from '../seating.ts';
import { type Added, centimetres, firstFree } from './add-place.ts';
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

/** Elevation by layer: upper loudspeakers at 40 degrees, surrounds a little over the heads (common practice, no source). */
const elevationOf = (layer: string, azimuthDeg: number): number => {
  if (layer === 'T') return 90;
  if (layer === 'U' || layer === 'UH') return 40;
  if (layer === 'B') return -20;
  return Math.abs(azimuthDeg) > 75 ? 12 : 0;
};

const LABEL = /^(M|U|UH|T|B)([+-])(\d{3})$/;

/** Where a label points, by its own figures: degrees positive to the LEFT in it, so x turns the other way. */
const directionOf = (channel: string): Vec3 => {
  const found = LABEL.exec(channel);
  const left = found ? Number(`${found[2]}${found[3]}`) : 0;
  const elevation = radiansOf(elevationOf(found?.[1] ?? 'M', left));
  const azimuth = radiansOf(-left);
  return [Math.cos(elevation) * Math.sin(azimuth), Math.sin(elevation), -Math.cos(elevation) * Math.cos(azimuth)];
};

const referenceEar = (project: Project): Vec3 => {
  const id = referenceSeatId(project);
  const { minM, maxM } = roomShape(project);
  return (
    seatPoses(project).find(({ seat }) => seat.id === id)?.earM ?? [
      (minM[0] + maxM[0]) / 2,
      1.1,
      minM[2] + 0.6 * (maxM[2] - minM[2]),
    ]
  );
};

/** A cabinet stands off the wall behind it by this much. */
const OFF_WALL_M = 0.08;
const BOX_M: Vec3 = [0.2, 0.35, 0.25];
const FLAT_M: Vec3 = [0.22, 0.16, 0.22];
const WIDE_M: Vec3 = [0.5, 0.2, 0.3];

/** As far along a direction as a box of this size stays in the room. */
const farthest = (project: Project, from: Vec3, direction: Vec3, sizeM: Vec3): Vec3 => {
  const shape = roomShape(project);
  const half: Vec3 = [sizeM[0] / 2 + OFF_WALL_M, sizeM[1] / 2 + OFF_WALL_M, sizeM[2] / 2 + OFF_WALL_M];
  const at = (far: number): Vec3 => [
    from[0] + far * direction[0],
    from[1] + far * direction[1],
    from[2] + far * direction[2],
  ];
  let near = 0;
  let beyond = Math.hypot(...shape.maxM.map((max, axis) => max - shape.minM[axis]));
  for (let halving = 0; halving < 24; halving += 1) {
    const middle = (near + beyond) / 2;
    if (shape.contains(at(middle), half)) near = middle;
    else beyond = middle;
  }
  return shape.nearestInside(at(near), half);
};

/** The same place, then others ever farther beside, above and below it. */
const nearby = ([x, y, z]: Vec3): Vec3[] => {
  const steps = [0, 0.15, -0.15, 0.3, -0.3, 0.45, -0.45, 0.6, -0.6];
  const places: Vec3[] = [];
  for (const dy of steps)
    for (const dx of steps)
      for (const dz of [0, 0.25, -0.25, 0.5, -0.5])
        places.push([centimetres(x + dx), centimetres(y + dy), centimetres(z + dz)]);
  return places.sort((a, b) => Math.hypot(a[0] - x, a[1] - y, a[2] - z) - Math.hypot(b[0] - x, b[1] - y, b[2] - z));
};

/** The centre: behind cloth that lets sound through at the picture's middle, else under the picture, else over it. */
const centrePlaces = (project: Project, sizeM: Vec3): Vec3[] => {
  const { picture } = project;
  const { centreXM, bottomM, widthM, aspect, offFrontWallM, acousticallyTransparent } = picture;
  const topM = bottomM + widthM / aspect;
  const zM = Math.max(sizeM[2] / 2 + 0.02, Math.min(offFrontWallM + sizeM[2] / 2, 0.4));
  const under: Vec3 = [centreXM, bottomM - sizeM[1] / 2 - 0.04, zM];
  const over: Vec3 = [centreXM, topM + sizeM[1] / 2 + 0.04, zM];
  const behind: Vec3 = [
    centreXM,
    (bottomM + topM) / 2,
    Math.max(sizeM[2] / 2 + 0.02, offFrontWallM - sizeM[2] / 2 - 0.02),
  ];
  return acousticallyTransparent ? [behind, under, over] : [under, over, behind];
};

const sizeOf = (channel: string): Vec3 => {
  if (channel === 'M+000') return WIDE_M;
  return /^[UT]/.test(channel) ? FLAT_M : BOX_M;
};

/** A loudspeaker for a channel, seen from the reference seat in the label's own direction, on the wall or ceiling there. */
export const addLoudspeaker = (project: Project, channel: string): Added => {
  const sizeM = sizeOf(channel);
  const ear = referenceEar(project);
  const along = nearby(farthest(project, ear, directionOf(channel), sizeM));
  const places = channel === 'M+000' ? [...centrePlaces(project, sizeM), ...along] : along;
  const atM = firstFree(project, places, sizeM);
  const id = freeId(project, 'loudspeaker', tradeName(channel));
  const ceiling = /^[UT]/.test(channel);
  const front = /^M[+-]0(?:00|30|45|60)$/.test(channel);
  const mount = ceiling ? 'ceiling' : front ? 'stand' : 'wall';
  const edit = addItem(project, 'loudspeaker', { id, channel, atM: atM.map(centimetres), sizeM: [...sizeM], mount });
  return { edit, item: edit.ok ? { kind: 'loudspeaker', id } : null };
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
