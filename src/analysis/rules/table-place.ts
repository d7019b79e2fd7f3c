import { inEverySet, type Rule } from './rule.ts';

/** Whether what is drawn can be built and left safely: steps, headroom, the way out, things inside one another. */
export const placeRules = {
  'riser-step': {
    title: 'Height of a step',
    unit: 'm',
    weight: 60,
    source: 'riser',
    ranges: inEverySet([null, 0.197], [null, 0.197]),
  },
  'riser-headroom': {
    title: 'Headroom over a riser',
    unit: 'm',
    weight: 65,
    source: 'headroom',
    ranges: inEverySet([2.03, null], [2.03, null]),
  },
  'riser-window': {
    title: 'Sill over a riser',
    unit: 'm',
    weight: 45,
    source: 'guard',
    ranges: inEverySet([0.91, null], [0.91, null]),
  },
  'door-clear': {
    title: 'Way out clear',
    unit: 'm',
    weight: 85,
    source: 'exit',
    ranges: inEverySet([0.91, null], [0.6, null]),
  },
  'chairs-overlap': {
    title: 'Chairs in one another',
    unit: 'm',
    weight: 55,
    source: 'geometry',
    ranges: inEverySet([null, 0], [null, 0.05]),
  },
  'things-overlap': {
    title: 'Things in one another',
    unit: 'm',
    weight: 35,
    source: 'geometry',
    ranges: inEverySet([null, 0], [null, 0.05]),
  },
  'outside-room': {
    title: 'Things through a wall',
    unit: 'm',
    weight: 35,
    source: 'geometry',
    ranges: inEverySet([null, 0], [null, 0.05]),
  },
  'picture-fits': {
    title: 'Picture within the walls',
    unit: 'm',
    weight: 88,
    source: 'geometry',
    ranges: inEverySet([null, 0], [null, 0.05]),
  },
  'caution-overhead': {
    title: 'Things overhead',
    unit: '',
    weight: 0,
    source: 'practice',
    ranges: inEverySet([null, null], [null, null]),
  },
} as const satisfies Readonly<Record<string, Rule>>;
