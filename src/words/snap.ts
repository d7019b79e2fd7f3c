import type { ItemRef, Project } from '../model/project.ts';
import type { Refusal } from '../model/refusal.ts';
import type { SnapReason } from '../model/snap/reason.ts';
import { formatQuantity } from './quantities.ts';
import { inTheWayText, ownerOf } from './refusals.ts';
import { thingName } from './things.ts';

const nameOf = (project: Project, ref: ItemRef): string => (ref.kind === 'object' ? thingName(project, ref) : ref.id);

const PLAIN = {
  roomCentre: 'on the middle line of the room',
  pictureCentre: 'on the middle line of the picture',
  pictureMiddle: 'level with the middle of the picture',
  earHeight: 'level with the ears',
  eyeHeight: 'level with the eyes',
  floor: 'on the floor',
  ceiling: 'at the ceiling',
  wallMiddle: 'in the middle of the wall',
  straight: 'straight ahead',
  square: 'square with the corner beside it',
  levelBend: 'level with the bend beside it',
  toPicture: 'facing the middle of the picture',
} as const;

/** Why a dragged thing stopped where it did, short enough to stand beside it. */
export const snapText = (project: Project, reason: SnapReason): string => {
  const { units } = project.display;
  switch (reason.kind) {
    case 'mirror':
      return `the mirror of ${nameOf(project, reason.of)}`;
    case 'inLine':
      return `in line with ${nameOf(project, reason.of)}`;
    case 'sameHeight':
      return `as high as ${nameOf(project, reason.of)}`;
    case 'sameWallDistance':
      return `as far from the wall as ${nameOf(project, reason.of)}`;
    case 'edgeOf':
      return `in line with ${nameOf(project, reason.of)}`;
    case 'wallStep':
      return reason.distanceM === 0
        ? `against the ${reason.wall} wall`
        : `${formatQuantity(reason.distanceM, 'length', units)} from the ${reason.wall} wall`;
    case 'sameAngle':
      return `the same angle as ${nameOf(project, reason.of)}, ${Math.round(reason.angleDeg)}°`;
    case 'sameDistance':
      return `as far from the seat as ${nameOf(project, reason.of)}, ${formatQuantity(reason.distanceM, 'length', units)}`;
    case 'quarter':
      return `a quarter of the ${reason.along}`;
    case 'aimSeat':
      return `at the ears of ${thingName(project, { kind: 'seat', id: reason.seatId })}`;
    default:
      return PLAIN[reason.kind];
  }
};

/** Why a dragged thing goes no farther, as short; the whole sentence follows when it is let go. */
export const stopText = (project: Project, refusal: Refusal): string => {
  const barred = inTheWayText(refusal, project);
  if (barred) return barred;
  const owner = ownerOf(project, refusal.field);
  return owner === undefined ? 'it goes no farther' : `${owner} is in the way`;
};
