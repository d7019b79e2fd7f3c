import type { Handle } from '../model/handles/handle.ts';
import type { Project } from '../model/project.ts';
import { roomShape } from '../model/room/shape.ts';
import { undusted } from '../model/snap/lines.ts';
import { formatQuantity } from './quantities.ts';

const DEGREES = (deg: number): string => `${Math.round(deg)}°`;

/** What a held handle has made of the document, as a number beside it; null where the dimension lines say it all. */
export const handleValue = (project: Project, { kind, ref, part }: Handle): string | null => {
  const { picture, room, rows } = project;
  const m = (metres: number) => formatQuantity(metres, 'length', project.display.units);
  const fromFront = (zM: number) => `${m(undusted(zM - roomShape(project).minM[2]))} from the front wall`;
  const row = rows.find(({ id }) => id === ref.id);
  const seat = rows.flatMap(({ seats }) => seats).find(({ id }) => id === ref.id);
  const item = [...room.openings, ...room.patches].find(({ id }) => id === ref.id);
  const object = room.objects.find(({ id }) => id === ref.id);
  const source = [...project.loudspeakers, ...project.subwoofers].find(({ id }) => id === ref.id);
  switch (kind) {
    case 'height':
      return source ? `${m(source.atM[1])} to its middle` : null;
    case 'pictureCorner':
      return `${m(picture.widthM)} wide, ${m(picture.widthM / picture.aspect)} high`;
    case 'pictureHeight':
      return `${m(picture.bottomM)} from the floor`;
    case 'pictureOff':
      return `${m(picture.offFrontWallM)} off the wall`;
    case 'rowDistance':
      return row ? fromFront(row.eyeZM) : null;
    case 'riserHeight':
      return row ? `${m(row.floorM)} high` : null;
    case 'riserFront':
      return row?.riser ? fromFront(row.riser.fromZM) : null;
    case 'riserBack':
      return row?.riser ? fromFront(row.riser.toZM) : null;
    case 'facing':
      return DEGREES(seat?.facingDeg ?? 0);
    case 'recline':
      return DEGREES(seat?.reclineDeg ?? 0);
    case 'slide':
      return item ? `${m(item.fromM)} along, ${m(item.bottomM)} up` : null;
    case 'edge':
      return item ? `${m(item.widthM)} wide, ${m(item.heightM)} high` : null;
    case 'objectSide': {
      const axis = part === 'x' ? 0 : part === 'y' ? 1 : 2;
      return object ? m(object.maxM[axis] - object.minM[axis]) : null;
    }
    case 'ceiling':
      return `${m(roomShape(project).highestM)} high`;
    case 'bend': {
      const { ceiling } = room;
      if (ceiling.shape === 'slope') return `${m(part === '0' ? ceiling.startHeightM : ceiling.endHeightM)} high`;
      return ceiling.shape === 'profile' ? `${m(ceiling.pointsM[Number(part)][1])} high` : null;
    }
    case 'wall':
    case 'corner': {
      const { minM, maxM } = roomShape(project);
      return `${m(maxM[0] - minM[0])} × ${m(maxM[2] - minM[2])}`;
    }
    default:
      return null;
  }
};
