import { type HomeGroup, homeGroupOf, homeRange } from '../../engines/loudspeakers/home-ranges.ts';
import { azimuthFromItu, type ItuPosition } from '../../engines/loudspeakers/itu-layout.ts';
import { matchLayout, rangeOf } from '../../engines/loudspeakers/layout-match.ts';
import { wrapDegrees } from '../../math/angles.ts';
import { type Context, type Heard, heardFrom, loudspeakerRef, seatRef } from './context.ts';
import { type Interval, type Measurement, type Ranges, widened } from './rule.ts';

type AzimuthRule =
  | 'front-azimuth'
  | 'side-azimuth'
  | 'rear-azimuth'
  | 'wide-azimuth'
  | 'height-azimuth'
  | 'other-azimuth';
type ElevationRule = 'front-elevation' | 'surround-elevation' | 'height-elevation' | 'other-elevation';
export type LayoutRule = AzimuthRule | ElevationRule;

/** How far outside its range a direction may lie and still be close, degrees. Ours: about what a visitor would not notice. */
const allowance = { front: 4, around: 10, elevation: 5, heightElevation: 8 } as const;

const azimuthRule = (group: HomeGroup | null): AzimuthRule | null => {
  switch (group) {
    case 'centre':
      return null;
    case 'front':
      return 'front-azimuth';
    case 'wide':
      return 'wide-azimuth';
    case 'side':
    case 'surround':
      return 'side-azimuth';
    case 'rear':
      return 'rear-azimuth';
    case 'height':
      return 'height-azimuth';
    case null:
      return 'other-azimuth';
  }
};

const elevationRule = (group: HomeGroup | null): ElevationRule | null => {
  switch (group) {
    case 'centre':
      return null;
    case 'front':
    case 'wide':
      return 'front-elevation';
    case 'height':
      return 'height-elevation';
    case null:
      return 'other-elevation';
    default:
      return 'surround-elevation';
  }
};

/** Which side a label stands on, as the standard's sign of azimuth: 1 left, -1 right. Labels on the centre line count left. */
const sideOf = (channel: string): 1 | -1 => (/^[A-Z]+-/.test(channel) ? -1 : 1);

/**
 * Azimuth counted from straight ahead towards the label's own side, so that both of a pair read alike and one on the wrong
 * side reads negative. Within 90 degrees of the range's middle the count goes on past 180.
 */
const ownAzimuth = (channel: string, reportAzimuthDeg: number, around: Interval): number => {
  const own = azimuthFromItu(reportAzimuthDeg) * sideOf(channel);
  const middle = ((around[0] ?? 0) + (around[1] ?? 0)) / 2;
  return middle + wrapDegrees(own - middle);
};

const ownRange = (channel: string, range: readonly [number, number]): readonly [number, number] =>
  sideOf(channel) === 1 ? range : [-range[1] + 0, -range[0] + 0];

/** The standard's position for a label in the layout nearest to the whole; null for labels no layout holds. */
const standardPosition = (context: Context, channel: string): ItuPosition | null => {
  const match = matchLayout(context.project.loudspeakers.map((one) => one.channel));
  return match ? (rangeOf(match.letter, channel)?.position ?? null) : null;
};

const azimuthWanted = (context: Context, channel: string, group: HomeGroup | null) => {
  const hasHeights = context.project.loudspeakers.some((one) => one.channel.startsWith('U'));
  if (context.set !== 'standard' && group) {
    const home = homeRange(context.set, group, hasHeights).azimuthSizeDeg;
    if (home) return { range: home, source: 'practice' as const };
  }
  const range = standardPosition(context, channel)?.azimuthRangeDeg;
  return range ? { range: ownRange(channel, range), source: 'bs2051' as const } : null;
};

const elevationWanted = (context: Context, channel: string, group: HomeGroup | null) => {
  const hasHeights = context.project.loudspeakers.some((one) => one.channel.startsWith('U'));
  if (context.set !== 'standard' && group)
    return { range: homeRange(context.set, group, hasHeights).elevationDeg, source: 'practice' as const };
  const range = standardPosition(context, channel)?.elevationRangeDeg;
  return range ? { range, source: 'bs2051' as const } : null;
};

/** The standard prints some positions as points, in whole degrees: a direction that rounds to the point is on it. */
const HALF_DEGREE = 0.5;

const rangesOf = (wanted: readonly [number, number], by: number): Ranges => {
  const range = wanted[0] === wanted[1] ? widened(wanted, HALF_DEGREE) : wanted;
  return { range, closeRange: widened(range, by) };
};

const azimuthOf = (context: Context, { loudspeaker, readout }: Heard): Measurement<LayoutRule>[] => {
  const { channel, id } = loudspeaker;
  const group = homeGroupOf(channel);
  const rule = group === 'centre' && context.set === 'standard' ? 'other-azimuth' : azimuthRule(group);
  const wanted = rule && azimuthWanted(context, channel, group);
  if (!rule || !wanted) return [];
  const front = rule === 'front-azimuth' || group === 'centre';
  return [
    {
      rule,
      seat: context.reference.id,
      item: id,
      value: ownAzimuth(channel, readout.azimuthDeg, wanted.range),
      ranges: rangesOf(wanted.range, front ? allowance.front : allowance.around),
      source: wanted.source,
      causes: [loudspeakerRef(id), seatRef(context.reference.id)],
      facts: { side: channel === 'M+000' ? 'centre' : sideOf(channel) === 1 ? 'left' : 'right' },
    },
  ];
};

const elevationOf = (context: Context, { loudspeaker, readout }: Heard): Measurement<LayoutRule>[] => {
  const { channel, id } = loudspeaker;
  const group = homeGroupOf(channel);
  const rule = group === 'centre' && context.set === 'standard' ? 'other-elevation' : elevationRule(group);
  const wanted = rule && elevationWanted(context, channel, group);
  if (!rule || !wanted) return [];
  return [
    {
      rule,
      seat: context.reference.id,
      item: id,
      value: readout.elevationDeg,
      ranges: rangesOf(wanted.range, rule === 'height-elevation' ? allowance.heightElevation : allowance.elevation),
      source: wanted.source,
      causes: [loudspeakerRef(id), seatRef(context.reference.id)],
    },
  ];
};

/**
 * Directions of all loudspeakers at the reference seat: `living` and `diffuse` by the habits of the home, `standard` by
 * BS.2051's ranges of the layout nearest to this one, point positions included. Low-frequency channels have no direction.
 */
export const measureLayout = (context: Context): Measurement<LayoutRule>[] =>
  heardFrom(context, context.reference)
    .filter(({ loudspeaker }) => !loudspeaker.channel.startsWith('LFE'))
    .flatMap((heard) => [...azimuthOf(context, heard), ...elevationOf(context, heard)]);
