import { choiceField, type Field, flagField, numberField, placeField, textField } from './field.ts';

const source = (list: string, thing: string): Field[] => [
  textField(`${list}[].id`, 'Name', `A short name of its own for the ${thing}.`),
  placeField(`${list}[].atM[0]`, 'Across', 'Its acoustic centre, from the middle of the room, negative to the left.'),
  placeField(`${list}[].atM[1]`, 'Height', 'Its acoustic centre, above the floor.'),
  placeField(`${list}[].atM[2]`, 'From front wall', 'Its acoustic centre, from the wall with the picture.'),
  numberField(`${list}[].sizeM[0]`, 'Box width', 'length', 'Of the cabinet.'),
  numberField(`${list}[].sizeM[1]`, 'Box height', 'length', 'Of the cabinet.'),
  numberField(`${list}[].sizeM[2]`, 'Box depth', 'length', 'Of the cabinet.'),
  flagField(`${list}[].locked`, 'Stays here', `The ${thing} is not moved, by hand or by a search.`),
];

/** Words the scene knows how to draw; a file may say others. */
const MOUNTS = ['stand', 'wall', 'in-wall', 'in-ceiling'];

export const SOURCE_FIELDS: readonly Field[] = [
  ...source('loudspeakers', 'loudspeaker'),
  textField(
    'loudspeakers[].channel',
    'Channel',
    'An ITU-R BS.2051 label: M+030 stands 30 degrees to the left at ear height.',
  ),
  ...(['across', 'height', 'from front wall'] as const).map((axis, index) =>
    numberField(
      `loudspeakers[].aim[${index}]`,
      `Aims at: ${axis}`,
      'length',
      'The point its front faces; for a dipole the point its front lobe faces.',
    ),
  ),
  choiceField('loudspeakers[].pattern', 'Pattern', 'How it sends sound to its sides and back.'),
  textField('loudspeakers[].mount', 'Mounted', 'On a stand, on or in a wall, in the ceiling.', MOUNTS),
  numberField('loudspeakers[].sensitivityDb', 'Sensitivity', 'decibel', 'Level at 1 m on its axis for 1 W.'),
  numberField('loudspeakers[].maxWatts', 'Power', 'power', 'What it takes at most.'),
  numberField('loudspeakers[].lowLimitHz', 'Plays down to', 'frequency', 'Where its own bass ends.'),
  ...source('subwoofers', 'subwoofer'),
  numberField('subwoofers[].gainDb', 'Gain', 'decibel', 'To be verified by measurement once built.'),
  numberField('subwoofers[].delayMs', 'Delay', 'time', 'To be verified by measurement once built.'),
  flagField('subwoofers[].inverted', 'Inverted', 'Polarity reversed. To be verified by measurement once built.'),
  numberField('subwoofers[].highPassHz', 'Plays down to', 'frequency', 'The high-pass that protects it.'),
  numberField(
    'subwoofers[].maxOutput.bandsDb{}',
    'Most at 1 m',
    'decibel',
    'The most it can do around this frequency, at 1 m, from its data sheet.',
  ),
  choiceField(
    'subwoofers[].maxOutput.space',
    'Measured in',
    'Over the ground (half space) or free of any surface (full).',
  ),
  choiceField('subwoofers[].maxOutput.kind', 'Measured as', 'Peak or mean (rms) level.'),
  numberField(
    'bass.crossoverHz',
    'Crossover',
    'frequency',
    'Below it, the bass of every channel goes to the subwoofers.',
  ),
  numberField(
    'bass.lfeGainDb',
    'LFE gain',
    'decibel',
    'How much louder the effects track is played than it is recorded.',
  ),
  numberField('bass.lfeLimitHz', 'LFE limit', 'frequency', 'Where the effects track ends.'),
];
