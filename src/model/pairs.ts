import type { Vec3 } from '../math/vec3.ts';
import type { ItemRef, Loudspeaker, Project, Subwoofer } from './project.ts';
import { roomShape } from './room/shape.ts';

/** Decimals of a file and of a tape: nearer than this counts as the same place. */
export const SAME_PLACE_M = 0.005;

/** The x of the plane that halves the plan's width. */
export const centreXM = (project: Project): number => {
  const { minM, maxM } = roomShape(project);
  return (minM[0] + maxM[0]) / 2;
};

const CHANNEL = /^([A-Z]+)([+-])(\d{3})$/;

/** The label on the other side of the room's middle: M+030 and M-030 (ITU-R BS.2051). Null for a channel of the middle. */
export const mirrorChannel = (channel: string): string | null => {
  const found = CHANNEL.exec(channel);
  if (!found) return null;
  const [, layer, sign, degrees] = found;
  return degrees === '000' || degrees === '180' ? null : `${layer}${sign === '+' ? '-' : '+'}${degrees}`;
};

const loudspeakerPartner = ({ loudspeakers }: Project, { id, channel }: Loudspeaker): string | null => {
  const wanted = mirrorChannel(channel);
  if (wanted === null) return null;
  const twins = loudspeakers.filter((one) => one.channel === wanted);
  const own = loudspeakers.filter((one) => one.channel === channel);
  // A channel played by several is paired in the file's order.
  return twins[own.findIndex((one) => one.id === id)]?.id ?? null;
};

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_PLACE_M;

/** Another subwoofer as large as this one in the mirror of its place; subwoofers carry no label that says so. */
const subwooferPartner = (project: Project, { id, atM, sizeM }: Subwoofer): string | null => {
  const mirrored = 2 * centreXM(project) - atM[0];
  if (near(mirrored, atM[0])) return null;
  const twin = project.subwoofers.find(
    (one) =>
      one.id !== id &&
      near(one.atM[0], mirrored) &&
      near(one.atM[1], atM[1]) &&
      near(one.atM[2], atM[2]) &&
      one.sizeM.every((size, axis) => near(size, sizeM[axis])),
  );
  return twin?.id ?? null;
};

/** The thing that moves as this one's mirror image: left and right of a pair. Null where there is none. */
export const partnerOf = (project: Project, { kind, id }: ItemRef): ItemRef | null => {
  if (kind === 'loudspeaker') {
    const found = project.loudspeakers.find((one) => one.id === id);
    const partner = found ? loudspeakerPartner(project, found) : null;
    return partner === null ? null : { kind, id: partner };
  }
  if (kind !== 'subwoofer') return null;
  const found = project.subwoofers.find((one) => one.id === id);
  const partner = found ? subwooferPartner(project, found) : null;
  return partner === null ? null : { kind, id: partner };
};

export const mirroredMove = ([x, y, z]: Vec3): Vec3 => [x === 0 ? 0 : -x, y, z];
