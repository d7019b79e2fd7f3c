/** Headings of the form in the order they are shown, and what stands under each: the first that fits a pattern. */
const HEADINGS: readonly { readonly title: string; readonly holds: RegExp }[] = [
  {
    title: 'What it is',
    holds: /\.(?:id|kind|channel|name|furniture|leaf|hinge|swing|opensTo|mount|locked|surface|wall)$/,
  },
  { title: 'The project', holds: /^(?:name|notes|display\.units|air\.temperatureC)$/ },
  { title: 'Walls and ceiling', holds: /^room\.(?:plan|ceiling)/ },
  { title: 'Damping', holds: /^room\.reverberationS/ },
  { title: 'Listening', holds: /^(?:listening|targets|referenceSeat|bass)/ },
  { title: 'People', holds: /(?:^|\.)people\./ },
  { title: 'Riser', holds: /\.riser/ },
  { title: 'Projector', holds: /^picture\.projector/ },
  { title: 'Films of other shapes', holds: /^picture\.formats/ },
  { title: 'What it can do', holds: /\.maxOutput|Watts$|sensitivityDb$|lowLimitHz$|highPassHz$/ },
  {
    title: 'Place',
    holds:
      /\.atM\[|minM\[|maxM\[|\.xM$|eyeZM$|floorM$|fromM$|bottomM$|centreXM$|offFrontWallM$|aim|facingDeg$|reclineDeg$|rows\[\]\.seats$/,
  },
  { title: 'Size', holds: /sizeM\[|widthM$|heightM$|HeightM$|aspect$|pixels\[/ },
  { title: 'Made of', holds: /finish$|absorption|admittance|room\.surfaces|room\.patches/ },
  { title: 'Sound', holds: /gainDb$|delayMs$|inverted$|pattern$|acousticallyTransparent$/ },
  { title: 'Light', holds: /gain$/ },
];

const OTHER = 'More';

export const headingOf = (pattern: string): string => HEADINGS.find(({ holds }) => holds.test(pattern))?.title ?? OTHER;

/** What one reaches for first stands first. */
export const HEADING_ORDER: readonly string[] = [
  'The project',
  'Walls and ceiling',
  'Damping',
  'Place',
  'Size',
  'Made of',
  'Sound',
  'What it can do',
  'Light',
  'What it is',
  'Riser',
  'Projector',
  'Films of other shapes',
  'Listening',
  'People',
  OTHER,
];
