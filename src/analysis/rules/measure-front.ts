import { directionFrom } from '../../engines/loudspeakers/angles.ts';
import { wrapDegrees } from '../../math/angles.ts';
import { pictureFace } from '../../shapes/picture.ts';
import type { SeatReadout } from '../types.ts';
import { type Context, type Heard, heardFrom, isCentre, loudspeakerRef, pictureRef, seatRef } from './context.ts';
import type { Measurement } from './rule.ts';

type FrontRule =
  | 'centre-in-view'
  | 'centre-line'
  | 'centre-elevation'
  | 'front-symmetry'
  | 'front-picture-edge'
  | 'image-order'
  | 'loudspeaker-in-view';

interface FrontPair {
  readonly left: Heard;
  readonly right: Heard;
}

const pairOf = (heard: readonly Heard[]): FrontPair | null => {
  const left = heard.find(({ loudspeaker }) => loudspeaker.channel === 'M+030');
  const right = heard.find(({ loudspeaker }) => loudspeaker.channel === 'M-030');
  return left && right ? { left, right } : null;
};

/** The centre from one seat: how much of it is seen, and how high it stands. */
const centreAt = (context: Context, seat: SeatReadout): Measurement<FrontRule>[] =>
  heardFrom(context, seat)
    .filter(({ loudspeaker }) => isCentre(loudspeaker))
    .flatMap(({ loudspeaker: { id }, readout }) => {
      const common = { seat: seat.id, item: id, causes: [loudspeakerRef(id), seatRef(seat.id)] };
      const inView = { ...common, rule: 'centre-in-view' as const, value: readout.visibleFraction };
      // By the standard the centre's height at the reference seat is judged with the rest of the layout.
      const byLayout = context.set === 'standard' && seat === context.reference;
      return byLayout
        ? [inView]
        : [inView, { ...common, rule: 'centre-elevation' as const, value: readout.elevationDeg }];
    });

const centreLine = (context: Context): Measurement<FrontRule>[] => {
  const { reference, project } = context;
  const middle = directionFrom(reference.earM, pictureFace(project).centreM).azimuthDeg;
  return heardFrom(context, reference)
    .filter(({ loudspeaker }) => isCentre(loudspeaker))
    .map(({ loudspeaker: { id }, readout }) => ({
      rule: 'centre-line',
      seat: reference.id,
      item: id,
      value: wrapDegrees(readout.azimuthDeg - middle),
      causes: [loudspeakerRef(id), pictureRef],
    }));
};

/** Left and right against one another and against the picture's edges, at the reference seat. */
const frontPair = (context: Context): Measurement<FrontRule>[] => {
  const { reference, project } = context;
  const pair = pairOf(heardFrom(context, reference));
  if (!pair) return [];
  const { left, right } = pair;
  const ids = [left.loudspeaker.id, right.loudspeaker.id];
  const { centreM, widthM } = pictureFace(project);
  const edge = (sign: -1 | 1) =>
    directionFrom(reference.earM, [centreM[0] + (sign * widthM) / 2, centreM[1], centreM[2]]).azimuthDeg;
  return [
    {
      rule: 'front-symmetry',
      seat: reference.id,
      item: ids[0],
      value: Math.abs(left.readout.azimuthDeg + right.readout.azimuthDeg),
      causes: [...ids.map(loudspeakerRef), seatRef(reference.id)],
      facts: { other: ids[1] },
    },
    {
      rule: 'front-picture-edge',
      seat: reference.id,
      item: ids[0],
      value: edge(-1) - left.readout.azimuthDeg,
      causes: [loudspeakerRef(ids[0]), pictureRef],
      facts: { side: 'left' },
    },
    {
      rule: 'front-picture-edge',
      seat: reference.id,
      item: ids[1],
      value: right.readout.azimuthDeg - edge(1),
      causes: [loudspeakerRef(ids[1]), pictureRef],
      facts: { side: 'right' },
    },
  ];
};

/** Whether left, centre and right stand in that order from a seat: the smaller of the two steps between them, degrees. */
const imageOrder = (context: Context, seat: SeatReadout): Measurement<FrontRule>[] => {
  const heard = heardFrom(context, seat);
  const pair = pairOf(heard);
  const centre = heard.find(({ loudspeaker }) => isCentre(loudspeaker));
  if (!pair || !centre) return [];
  const steps = [
    wrapDegrees(centre.readout.azimuthDeg - pair.left.readout.azimuthDeg),
    wrapDegrees(pair.right.readout.azimuthDeg - centre.readout.azimuthDeg),
  ];
  const fronts = [pair.left, centre, pair.right];
  return [
    {
      rule: 'image-order',
      seat: seat.id,
      item: null,
      value: Math.min(...steps),
      causes: [seatRef(seat.id), ...fronts.map(({ loudspeaker }) => loudspeakerRef(loudspeaker.id))],
    },
  ];
};

/** Every loudspeaker but the centre, at the seat that sees least of it. */
const inView = (context: Context): Measurement<FrontRule>[] =>
  context.project.loudspeakers.flatMap((loudspeaker, index) => {
    if (isCentre(loudspeaker) || loudspeaker.channel.startsWith('LFE')) return [];
    const seen = (seat: SeatReadout) => seat.loudspeakers[index].visibleFraction;
    const worst = context.geometry.seats.reduce((least, seat) => (seen(seat) < seen(least) ? seat : least));
    return [
      {
        rule: 'loudspeaker-in-view' as const,
        seat: worst.id,
        item: loudspeaker.id,
        value: seen(worst),
        causes: [loudspeakerRef(loudspeaker.id), seatRef(worst.id)],
      },
    ];
  });

/** The centre, the front pair, and what can be seen of every loudspeaker. */
export const measureFront = (context: Context): Measurement<FrontRule>[] => [
  ...context.geometry.seats.flatMap((seat) => [...centreAt(context, seat), ...imageOrder(context, seat)]),
  ...centreLine(context),
  ...frontPair(context),
  ...inView(context),
];
