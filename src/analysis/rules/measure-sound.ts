import { levelSpread } from '../../engines/loudspeakers/levels.ts';
import type { Loudspeaker } from '../../model/project.ts';
import { chords } from '../../model/room/pieces.ts';
import { roomShape } from '../../model/room/shape.ts';
import type { SeatReadout } from '../types.ts';
import { type Context, heardFrom, loudspeakerRef, seatRef } from './context.ts';
import type { Measurement } from './rule.ts';

type SoundRule =
  | 'nearest-loudspeaker'
  | 'front-level-spread'
  | 'surround-level-spread'
  | 'level-reached'
  | 'seat-half-length'
  | 'back-wall'
  | 'caution-loud';

/** Peak level of full scale a channel at cinema reference, dB. A full-scale sine is 102 dB rms by this convention. */
export const REFERENCE_PEAK_DB = 105;

/** Peaks asked for above which a caution is given: an evening's programme then nears 80 dBA on average. Ours. */
const LOUD_PEAK_DB = 95;

const nearest = (context: Context, seat: SeatReadout): Measurement<SoundRule>[] => {
  const heard = heardFrom(context, seat);
  if (heard.length === 0) return [];
  const { loudspeaker, readout } = heard.reduce((a, b) => (b.readout.distanceM < a.readout.distanceM ? b : a));
  return [
    {
      rule: 'nearest-loudspeaker',
      seat: seat.id,
      item: loudspeaker.id,
      value: readout.distanceM,
      causes: [seatRef(seat.id), loudspeakerRef(loudspeaker.id)],
    },
  ];
};

const isFront = ({ channel }: Loudspeaker): boolean => /^M[+-](000|030|060|SC)$/.test(channel);

const spread = (context: Context): Measurement<SoundRule>[] =>
  context.project.loudspeakers.flatMap((loudspeaker, index) => {
    const levels = context.geometry.seats.map((seat) => seat.loudspeakers[index].levelDb);
    const found = levels.length > 1 && !loudspeaker.channel.startsWith('LFE') ? levelSpread(levels) : null;
    if (!found) return [];
    const rule = isFront(loudspeaker) ? ('front-level-spread' as const) : ('surround-level-spread' as const);
    const causes = [loudspeakerRef(loudspeaker.id)];
    return [{ rule, seat: null, item: loudspeaker.id, value: found.maxMinDb, causes }];
  });

/** Direct sound at the reference seat against the peaks asked for; positive is headroom. */
const reached = (context: Context): Measurement<SoundRule>[] => {
  const askedDb = REFERENCE_PEAK_DB + context.project.listening.reReferenceDb;
  return heardFrom(context, context.reference)
    .filter(({ loudspeaker }) => !loudspeaker.channel.startsWith('LFE'))
    .map(({ loudspeaker, readout }) => ({
      rule: 'level-reached',
      seat: context.reference.id,
      item: loudspeaker.id,
      value: readout.maxLevelDb - askedDb,
      causes: [loudspeakerRef(loudspeaker.id)],
      facts: { maxDb: readout.maxLevelDb, askedDb, referenceDb: REFERENCE_PEAK_DB },
    }));
};

/** The room before and behind an ear: from the wall it looks to straight ahead, and to the wall straight behind it. */
const alongRoom = (context: Context, [x, , z]: SeatReadout['earM']): { frontZM: number; backZM: number } => {
  const { corners, minM, maxM } = roomShape(context.project);
  const run = chords(corners, 0, x).find(([from, to]) => z >= from && z <= to);
  return run ? { frontZM: run[0], backZM: run[1] } : { frontZM: minM[2], backZM: maxM[2] };
};

const places = (context: Context, seat: SeatReadout): Measurement<SoundRule>[] => {
  const { frontZM, backZM } = alongRoom(context, seat.earM);
  const earZM = seat.earM[2];
  const common = { seat: seat.id, item: null, causes: [seatRef(seat.id)] };
  return [
    { ...common, rule: 'back-wall', value: backZM - earZM },
    { ...common, rule: 'seat-half-length', value: Math.abs(earZM - (frontZM + backZM) / 2) },
  ];
};

const loud = (context: Context): Measurement<SoundRule>[] => {
  const askedDb = REFERENCE_PEAK_DB + context.project.listening.reReferenceDb;
  return askedDb >= LOUD_PEAK_DB ? [{ rule: 'caution-loud', seat: null, item: null, value: askedDb, causes: [] }] : [];
};

/** Distances and levels of the loudspeakers, and the seats' places in the room. */
export const measureSound = (context: Context): Measurement<SoundRule>[] => [
  ...context.geometry.seats.flatMap((seat) => [...nearest(context, seat), ...places(context, seat)]),
  ...spread(context),
  ...reached(context),
  ...loud(context),
];
