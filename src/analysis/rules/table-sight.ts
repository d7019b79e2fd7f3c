import { inEverySet, type Rule } from './rule.ts';

const homeAngle = { range: [30, 43], closeRange: [26, 60] } as const;

/** The picture from every seat. */
export const sightRules = {
  'picture-in-view': {
    title: 'Whole picture in view',
    unit: 'share',
    weight: 90,
    source: 'practice',
    ranges: inEverySet([0.99, null], [0.95, null]),
  },
  'picture-angle': {
    title: 'Width of the picture',
    unit: 'deg',
    weight: 55,
    source: 'pictureAngle',
    ranges: { living: homeAngle, diffuse: homeAngle, standard: { range: [33, 48], closeRange: [30, 60] } },
  },
  'picture-top': {
    title: 'Looking up at the picture',
    unit: 'deg',
    weight: 50,
    source: 'pictureTop',
    ranges: inEverySet([null, 15], [null, 35]),
  },
  'picture-off-axis': {
    title: 'Looking at the picture from the side',
    unit: 'deg',
    weight: 30,
    source: 'offAxis',
    ranges: {
      living: { range: [null, 30], closeRange: [null, 45] },
      diffuse: { range: [null, 30], closeRange: [null, 45] },
      standard: { range: [null, 15], closeRange: [null, 45] },
    },
  },
  'picture-pixels': {
    title: 'Pixels too fine to see',
    unit: 'px/deg',
    weight: 15,
    source: 'acuity',
    ranges: inEverySet([60, null], [40, null]),
  },
  sightline: {
    title: 'Sight over the row in front',
    unit: 'mm',
    weight: 75,
    source: 'sightline',
    // The close end is 60 mm where the seats are staggered, so that one looks between heads; see measure-sight.
    ranges: inEverySet([120, null], [90, null]),
  },
  'worst-case-view': {
    title: 'A short person behind tall ones',
    unit: 'share',
    weight: 0,
    source: 'body',
    ranges: inEverySet([null, null], [null, null]),
  },
} as const satisfies Readonly<Record<string, Rule>>;
