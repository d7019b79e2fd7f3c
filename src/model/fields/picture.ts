import { choiceField, type Field, flagField, numberField, placeField } from './field.ts';

export const PICTURE_FIELDS: readonly Field[] = [
  choiceField('picture.kind', 'Kind', 'A panel that shines by itself, or a screen with a projector.'),
  numberField(
    'picture.aspect',
    'Shape',
    'ratio',
    'Width divided by height: 16:9 is 1.78, 2.39:1 is the wide film shape.',
  ),
  numberField('picture.widthM', 'Picture width', 'length', 'Of the picture itself, without its frame.'),
  placeField('picture.centreXM', 'Picture centre', 'From the middle of the room, negative to the left.'),
  placeField('picture.bottomM', 'Picture bottom', 'From the floor to the lower edge of the picture.'),
  placeField('picture.offFrontWallM', 'Off the wall', 'From the front wall to the picture.'),
  flagField('picture.acousticallyTransparent', 'Lets sound through', 'Cloth that loudspeakers may stand behind.'),
  numberField('picture.pixels[0]', 'Pixels across', 'count', 'How many pixels a line of the picture has.'),
  numberField('picture.pixels[1]', 'Pixels down', 'count', 'How many lines the picture has.'),
  numberField('picture.gain', 'Screen gain', 'ratio', 'Brightness on the axis against a plain white diffuser.', {
    step: 0.05,
  }),
  numberField(
    'picture.formats[].aspect',
    'Film shape',
    'ratio',
    'Width divided by height of a film shown on this picture.',
  ),
  choiceField('picture.formats[].method', 'Shown by', 'How a film of another shape is fitted to the picture.'),
  numberField('picture.projector.lumens', 'Projector light', 'light', 'What its data sheet promises.'),
  numberField(
    'picture.projector.calibratedFraction',
    'Light left',
    'ratio',
    'The share of it that is left once calibrated.',
    {
      step: 0.05,
    },
  ),
  placeField(
    'picture.projector.atM[0]',
    'Projector across',
    'The lens, from the middle of the room, negative to the left.',
  ),
  placeField('picture.projector.atM[1]', 'Projector height', 'The lens, above the floor.'),
  placeField('picture.projector.atM[2]', 'Projector distance', 'The lens, from the front wall.'),
];
