import { inEverySet, type Rule } from './rule.ts';

/** Levels, distances and bass. */
export const soundRules = {
  'nearest-loudspeaker': {
    title: 'Nearest loudspeaker',
    unit: 'm',
    weight: 40,
    source: 'practice',
    ranges: inEverySet([1, null], [0.7, null]),
  },
  'front-level-spread': {
    title: 'Front loudspeakers equally loud at every seat',
    unit: 'dB',
    weight: 30,
    source: 'practice',
    ranges: inEverySet([null, 3], [null, 6]),
  },
  'surround-level-spread': {
    title: 'Surrounds equally loud at every seat',
    unit: 'dB',
    weight: 25,
    source: 'practice',
    ranges: inEverySet([null, 6], [null, 9]),
  },
  'level-reached': {
    title: 'Loud enough for the level asked for',
    unit: 'dB',
    weight: 50,
    source: 'reference',
    ranges: inEverySet([0, null], [-3, null]),
  },
  'bass-level-reached': {
    title: 'Bass loud enough for the level asked for',
    unit: 'dB',
    weight: 50,
    source: 'reference',
    ranges: inEverySet([0, null], [-3, null]),
  },
  'bass-spread': {
    title: 'Bass alike at every seat',
    unit: 'dB',
    weight: 65,
    source: 'spread',
    ranges: inEverySet([null, 2.5], [null, 4]),
  },
  'seat-half-length': {
    title: 'Ears away from the middle of the room’s length',
    unit: 'm',
    weight: 25,
    source: 'modes',
    ranges: inEverySet([0.3, null], [0.15, null]),
  },
  'back-wall': {
    title: 'Ears away from the wall behind',
    unit: 'm',
    weight: 50,
    source: 'backWall',
    ranges: inEverySet([1.2, null], [0.6, null]),
  },
  'bass-sealed': {
    title: 'Bass of an open room',
    unit: '',
    weight: 0,
    source: 'geometry',
    ranges: inEverySet([null, null], [null, null]),
  },
  'bass-absorption': {
    title: 'More absorption than the bass can be worked out with',
    unit: 'share',
    weight: 0,
    source: 'integral',
    ranges: inEverySet([null, null], [null, null]),
  },
  'caution-loud': {
    title: 'Loud sound harms hearing',
    unit: 'dB',
    weight: 0,
    source: 'hearing',
    ranges: inEverySet([null, null], [null, null]),
  },
} as const satisfies Readonly<Record<string, Rule>>;
