import { FINISHES } from '../finishes.ts';
import { SURFACES } from '../schema/room.ts';
import { choiceField, type Field, flagField, numberField, placeField, textField } from './field.ts';

const finishIds = FINISHES.map(({ id }) => id);

const onSurface = (list: string, thing: string): Field[] => [
  choiceField(`${list}[].surface`, 'Surface', `Which wall, floor or ceiling the ${thing} is in.`),
  numberField(
    `${list}[].wall`,
    'Wall number',
    'count',
    `Which edge of the plan the ${thing} is in, where several walls share a name. Left out, the longest of them.`,
    { place: true },
  ),
  placeField(
    `${list}[].fromM`,
    'Along',
    'From the front wall to its near edge on a side wall, from the left wall elsewhere.',
  ),
  numberField(`${list}[].widthM`, 'Width', 'length', `How wide the ${thing} is.`),
  placeField(
    `${list}[].bottomM`,
    'Bottom',
    'From the floor to its lower edge; on floor and ceiling from the front wall.',
  ),
  numberField(`${list}[].heightM`, 'Height', 'length', `How high the ${thing} is.`),
  flagField(`${list}[].locked`, 'Stays here', `The ${thing} is not moved, by hand or by a search.`),
];

/** How a surface is stated, three ways: by finish, by octave, or as an admittance at low frequency. */
const treatment = (at: string): Field[] => [
  textField(`${at}.finish`, 'Finish', 'What it is made of: it decides how much sound comes back from it.', finishIds),
  numberField(
    `${at}.absorption{}`,
    'Absorption',
    'ratio',
    'The share of the sound from all sides that does not come back, in this octave.',
  ),
  numberField(
    `${at}.admittance[0]`,
    'Admittance, real part',
    'admittance',
    'How far the surface gives way to bass, against air (rho c / Z): 0 is rigid.',
  ),
  numberField(
    `${at}.admittance[1]`,
    'Admittance, imaginary part',
    'admittance',
    'Springy below nought or heavy above it, against air (rho c / Z).',
  ),
];

const PLAN_FIELDS: readonly Field[] = [
  numberField(
    'room.plan.widthM',
    'Room width',
    'length',
    'Between the side walls, from finished surface to finished surface.',
  ),
  numberField(
    'room.plan.lengthM',
    'Room length',
    'length',
    'From the wall with the picture to the wall behind the seats.',
  ),
  numberField('room.plan.cornersM[][0]', 'Across', 'length', 'From the middle line, negative to the left.'),
  numberField('room.plan.cornersM[][1]', 'From front', 'length', 'From the front wall towards the back.'),
];

const CEILING_FIELDS: readonly Field[] = [
  numberField('room.ceiling.heightM', 'Room height', 'length', 'From the finished floor to the ceiling.'),
  choiceField('room.ceiling.across', 'Rises along', 'Across the room (x), or from the front wall to the back (z).'),
  numberField(
    'room.ceiling.startHeightM',
    'Height where it starts',
    'length',
    'At the left wall, or at the front wall.',
  ),
  numberField('room.ceiling.endHeightM', 'Height where it ends', 'length', 'At the right wall, or at the back wall.'),
  numberField(
    'room.ceiling.pointsM[][0]',
    'Along',
    'length',
    'Where the bend is: across the room, or from the front wall.',
  ),
  numberField('room.ceiling.pointsM[][1]', 'Height', 'length', 'How high the ceiling is there.'),
];

export const ROOM_FIELDS: readonly Field[] = [
  ...PLAN_FIELDS,
  ...CEILING_FIELDS,
  ...SURFACES.flatMap((surface) => treatment(`room.surfaces.${surface}`)),
  ...treatment('room.surfaces.walls{}'),
  numberField(
    'room.reverberationS{}',
    'Reverberation time',
    'seconds',
    'How long sound takes to fall by 60 dB in this octave, measured or wanted. All surfaces are made to fit it.',
  ),
  textField('room.patches[].id', 'Name', 'A short name of its own for the panel.'),
  ...treatment('room.patches[]'),
  ...onSurface('room.patches', 'panel'),
  textField('room.openings[].id', 'Name', 'A short name of its own for the opening.'),
  choiceField('room.openings[].kind', 'Kind', 'A door, a window or a plain opening.'),
  ...onSurface('room.openings', 'opening'),
  choiceField('room.openings[].leaf', 'Leaf', 'Whether the door or window is closed, open or missing.'),
  choiceField('room.openings[].hinge', 'Hinge', 'On which side it hangs, seen from inside the room.'),
  choiceField('room.openings[].swing', 'Swings', 'Into the room or out of it.'),
  choiceField('room.openings[].opensTo', 'Opens to', 'What lies behind it: bass leaves through it accordingly.'),
  textField('room.objects[].id', 'Short name', 'A short name of its own for the object.'),
  textField('room.objects[].kind', 'Kind', 'What it is: box, beam, soffit, column, lamp, table.'),
  textField('room.objects[].name', 'Name', 'What the fitter should read on the drawing.'),
  placeField('room.objects[].minM[0]', 'Left side', 'From the middle of the room, negative to the left.'),
  placeField('room.objects[].minM[1]', 'Underside', 'Above the floor.'),
  placeField('room.objects[].minM[2]', 'Front side', 'From the front wall.'),
  placeField('room.objects[].maxM[0]', 'Right side', 'From the middle of the room, negative to the left.'),
  placeField('room.objects[].maxM[1]', 'Top', 'Above the floor.'),
  placeField('room.objects[].maxM[2]', 'Back side', 'From the front wall.'),
  flagField('room.objects[].locked', 'Stays here', 'The object is not moved, by hand or by a search.'),
];
