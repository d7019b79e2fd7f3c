/**
 * How well a number is founded: read in the named source, read in another that quotes it, remembered, worked out, or a
 * habit of the trade for which no source was found.
 */
export type SourceStanding = 'read' | 'read in a quotation' | 'remembered' | 'derived' | 'common practice, no source';

export interface Source {
  readonly text: string;
  readonly standing: SourceStanding;
}

export const sources = {
  practice: { text: 'Habit of the trade', standing: 'common practice, no source' },
  own: { text: 'A limit of this program', standing: 'common practice, no source' },
  geometry: { text: 'Geometry of the room as drawn', standing: 'derived' },
  bs2051: { text: 'ITU-R BS.2051, positions and ranges of the layout nearest to this one', standing: 'read' },
  bs775: { text: 'ITU-R BS.775, picture at 3 and at 2 picture heights', standing: 'read' },
  pictureAngle: {
    text: 'SMPTE EG 18-1994 for 30 degrees at the back; 43 degrees at the main seat and the outer limits are habits of the trade',
    standing: 'read in a quotation',
  },
  pictureTop: { text: 'SMPTE EG 18-1994, angles above the eye', standing: 'remembered' },
  offAxis: {
    text: 'A naval projection manual for 45 degrees on a matt screen; 30 degrees is a habit of the trade',
    standing: 'read',
  },
  reviewRoom: {
    text: 'SMPTE 196M-2003 section 9, observers within 15 degrees of the normal; a naval projection manual for 45 degrees',
    standing: 'read in a quotation',
  },
  acuity: {
    text: 'One arcminute a pixel, the design viewing distance of ITU-R BT.500',
    standing: 'read in a quotation',
  },
  sightline: { text: 'Grandstand practice: 120 mm best, 90 mm good, 60 mm between heads', standing: 'read' },
  body: {
    text: 'DIN 33402-2:2005, seated men at the 95th and women at the 5th percentile',
    standing: 'read in a quotation',
  },
  backWall: {
    text: 'Habit of the trade; a recommended practice for home theatres asks 1.22 m from a wall at its third level',
    standing: 'read in a quotation',
  },
  riser: {
    text: 'A model building code, in a dwelling: riser at most 7 3/4 in (197 mm), tread at least 10 in (254 mm)',
    standing: 'read',
  },
  headroom: { text: 'A model building code, headroom 80 in (2.03 m)', standing: 'read' },
  exit: { text: 'A model building code, 36 in (0.91 m) of clear width', standing: 'read' },
  guard: { text: 'A model building code, guards of 36 in (0.91 m) in dwellings', standing: 'read' },
  reference: {
    text: 'Cinema reference level: 105 dB peaks a channel and 115 dB in the low-frequency channel (SMPTE RP 200)',
    standing: 'remembered',
  },
  hearing: {
    text: 'NIOSH 98-126: 85 dBA for 8 hours, half the time for every 3 dB more; home use 80 dBA for 40 hours a week (H.870)',
    standing: 'read in a quotation',
  },
  modes: {
    text: 'Standing waves of a box: every odd mode along the room is silent at its middle',
    standing: 'derived',
  },
  integral: {
    text: 'Diffuse absorption of a locally reacting wall: no real admittance takes more than 95 %',
    standing: 'derived',
  },
  spread: {
    text: 'Habit of the trade; published comparisons of subwoofer places give the aim, not this number',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>;

export type SourceId = keyof typeof sources;
