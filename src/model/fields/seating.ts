import { choiceField, type Field, flagField, numberField, placeField, textField } from './field.ts';

const body = (group: string): Field[] => [
  numberField(
    `${group}.eyeAbovePanM`,
    'Eyes above seat',
    'length',
    'From the top of the seat pan to the eyes, sitting upright.',
  ),
  numberField(
    `${group}.earAbovePanM`,
    'Ears above seat',
    'length',
    'From the top of the seat pan to the ears, sitting upright.',
  ),
  numberField(
    `${group}.earBehindEyeM`,
    'Ears behind eyes',
    'length',
    'How much farther from the picture the ears are.',
  ),
  numberField(`${group}.crownAboveEyeM`, 'Crown above eyes', 'length', 'From the eyes to the top of the head.'),
];

export const SEATING_FIELDS: readonly Field[] = [
  ...body('people'),
  textField('rows[].id', 'Name', 'A short name of its own for the row.'),
  placeField(
    'rows[].eyeZM',
    'Eyes from front wall',
    'From the wall with the picture to the eyes of the row, sitting upright.',
  ),
  placeField('rows[].floorM', 'Floor height', 'How high the floor under this row is built: its riser.'),
  choiceField('rows[].furniture', 'Furniture', 'What the row sits on.'),
  numberField('rows[].seat.widthM', 'Seat width', 'length', 'Of one place, without shared arms.'),
  numberField(
    'rows[].seat.panHeightM',
    'Seat height',
    'length',
    "From the row's floor to the top of the seat pan, sat upon.",
  ),
  numberField('rows[].seat.backHeightM', 'Back height', 'length', "From the row's floor to the top of the back."),
  numberField('rows[].riser.fromXM', 'Riser left edge', 'length', 'From the middle of the room, negative to the left.'),
  numberField('rows[].riser.toXM', 'Riser right edge', 'length', 'From the middle of the room, negative to the left.'),
  numberField('rows[].riser.fromZM', 'Riser front edge', 'length', 'From the front wall.'),
  numberField('rows[].riser.toZM', 'Riser back edge', 'length', 'From the front wall.'),
  numberField(
    'rows[].riser.steps[].fromXM',
    'Left edge',
    'length',
    'From the middle of the room, negative to the left; as usual the edge of the riser.',
  ),
  numberField(
    'rows[].riser.steps[].toXM',
    'Right edge',
    'length',
    'From the middle of the room, negative to the left; as usual the edge of the riser.',
  ),
  numberField('rows[].riser.steps[].fromZM', 'Front edge', 'length', 'From the front wall; as usual one tread deep.'),
  numberField(
    'rows[].riser.steps[].toZM',
    'Back edge',
    'length',
    'From the front wall; as usual where the next step begins.',
  ),
  numberField(
    'rows[].riser.steps[].heightM',
    'Top',
    'length',
    'The top of the step above the floor of the room; as usual the rise in equal parts.',
  ),
  flagField('rows[].locked', 'Stays here', 'The row and its seats are not moved, by hand or by a search.'),
  textField('rows[].seats[].id', 'Name', 'A short name of its own for the seat.'),
  placeField(
    'rows[].seats[].xM',
    'Across',
    'The middle of the seat, from the middle of the room, negative to the left.',
  ),
  placeField('rows[].seats[].eyeZM', 'Eyes from front wall', "Where this seat leaves its row's line."),
  numberField(
    'rows[].seats[].facingDeg',
    'Faces',
    'angle',
    'Turned from the picture wall: positive turns the seat to its right.',
  ),
  numberField(
    'rows[].seats[].reclineDeg',
    'Recline',
    'angle',
    'How far the back leans: it lowers the head and moves it back.',
  ),
  ...body('rows[].seats[].people'),
  flagField('rows[].seats[].locked', 'Stays here', 'The seat is not moved, by hand or by a search.'),
  textField('referenceSeat', 'Reference seat', 'The seat the layout of the loudspeakers is judged at.'),
];
