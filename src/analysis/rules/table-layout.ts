import { inEverySet, type Rule } from './rule.ts';

/**
 * Loudspeaker directions, judged at the reference seat; `centre-*`, `image-order` and `loudspeaker-in-view` at every seat.
 * Rules without ranges here take theirs from the layout: engines/loudspeakers, see measure-layout.
 */
export const layoutRules = {
  'centre-in-view': {
    title: 'Centre loudspeaker in view',
    unit: 'share',
    weight: 100,
    source: 'practice',
    ranges: inEverySet([0.95, null], [0.75, null]),
  },
  'centre-line': {
    title: 'Centre loudspeaker on the picture’s centre line',
    unit: 'deg',
    weight: 70,
    source: 'practice',
    ranges: inEverySet([-2, 2], [-5, 5]),
  },
  'centre-elevation': {
    title: 'Height of the centre loudspeaker',
    unit: 'deg',
    weight: 50,
    source: 'practice',
    ranges: inEverySet([-15, 10], [-20, 15]),
  },
  'front-azimuth': { title: 'Left and right, direction', unit: 'deg', weight: 80, source: 'practice', ranges: null },
  'front-elevation': { title: 'Left and right, height', unit: 'deg', weight: 45, source: 'practice', ranges: null },
  'front-symmetry': {
    title: 'Left and right alike',
    unit: 'deg',
    weight: 60,
    source: 'practice',
    ranges: inEverySet([null, 2], [null, 5]),
  },
  'front-picture-edge': {
    title: 'Left and right at the picture’s edges',
    unit: 'deg',
    weight: 40,
    source: 'practice',
    ranges: inEverySet([-2, 10], [-6, 15]),
  },
  'side-azimuth': { title: 'Side surrounds, direction', unit: 'deg', weight: 45, source: 'practice', ranges: null },
  'rear-azimuth': { title: 'Rear surrounds, direction', unit: 'deg', weight: 40, source: 'practice', ranges: null },
  'wide-azimuth': { title: 'Wides, direction', unit: 'deg', weight: 30, source: 'practice', ranges: null },
  'surround-elevation': { title: 'Surrounds, height', unit: 'deg', weight: 35, source: 'practice', ranges: null },
  'height-azimuth': { title: 'Upper loudspeakers, direction', unit: 'deg', weight: 25, source: 'bs2051', ranges: null },
  'height-elevation': {
    title: 'Upper loudspeakers, height',
    unit: 'deg',
    weight: 35,
    source: 'practice',
    ranges: null,
  },
  'other-azimuth': {
    title: 'Further loudspeakers, direction',
    unit: 'deg',
    weight: 25,
    source: 'bs2051',
    ranges: null,
  },
  'other-elevation': { title: 'Further loudspeakers, height', unit: 'deg', weight: 20, source: 'bs2051', ranges: null },
  'image-order': {
    title: 'Left, centre and right in order',
    unit: 'deg',
    weight: 40,
    source: 'practice',
    ranges: inEverySet([5, null], [0, null]),
  },
  'loudspeaker-in-view': {
    title: 'Loudspeaker in view from every seat',
    unit: 'share',
    weight: 45,
    source: 'practice',
    ranges: inEverySet([0.9, null], [0.5, null]),
  },
} as const satisfies Readonly<Record<string, Rule>>;
