import type { SeatPose } from '../../model/seating.ts';
import { pictureFace } from '../../shapes/picture.ts';
import { clearanceOf, rowEyes } from '../geometry/clearance.ts';
import { pictureHider } from '../geometry/hider.ts';
import type { SeatReadout } from '../types.ts';
import { type Context, pictureRef, rowRef, seatRef } from './context.ts';
import type { Measurement } from './rule.ts';

type SightRule =
  | 'picture-in-view'
  | 'picture-angle'
  | 'picture-top'
  | 'picture-off-axis'
  | 'picture-pixels'
  | 'sightline'
  | 'worst-case-view';

/** A head this far to the side of the sight line leaves it free: half a head and ears (0.1 m) and a turn of the head. Ours. */
const BESIDE_M = 0.25;

/** Whether the sight line to the middle of the picture passes between the heads of a row. */
const passesBetween = (context: Context, pose: SeatPose, rowId: string): boolean => {
  const { centreM } = pictureFace(context.project);
  const heads = context.poses.filter(({ row }) => row.id === rowId);
  return heads.every(({ eyeM }) => {
    const share = (eyeM[2] - centreM[2]) / (pose.eyeM[2] - centreM[2]);
    return Math.abs(centreM[0] + (pose.eyeM[0] - centreM[0]) * share - eyeM[0]) >= BESIDE_M;
  });
};

/** The C-value like for like, at the row that gives the least. 60 mm is still close only where one looks between heads. */
const sightline = (context: Context, pose: SeatPose, seat: SeatReadout): Measurement<SightRule>[] => {
  const face = pictureFace(context.project);
  const least = clearanceOf(pose, [face.centreM[0], face.bottomM, face.zM], rowEyes(context.poses));
  if (seat.picture.clearanceMm === null || !least) return [];
  const staggered = passesBetween(context, pose, least.rowId);
  return [
    {
      rule: 'sightline',
      seat: seat.id,
      item: least.rowId,
      value: seat.picture.clearanceMm,
      ranges: { range: [120, null], closeRange: [staggered ? 60 : 90, null] },
      causes: [seatRef(seat.id), rowRef(least.rowId), pictureRef],
      facts: {
        staggered: staggered ? 'yes' : 'no',
        raiseM: Math.max(0, raiseFor(context, pose, least.rowId, 120 - seat.picture.clearanceMm)),
      },
    },
  ];
};

/** How much higher this eye must be to lift its line by `byMm` over that row: the whole line turns about the picture's edge. */
const raiseFor = (context: Context, pose: SeatPose, rowId: string, byMm: number): number => {
  const { zM } = pictureFace(context.project);
  const rowZM = context.project.rows.find(({ id }) => id === rowId)?.eyeZM ?? pose.eyeM[2];
  return ((byMm / 1000) * (pose.eyeM[2] - zM)) / Math.max(0.1, rowZM - zM);
};

/** How much of the picture is seen, and where something hides it, what hides most. */
const inView = (context: Context, pose: SeatPose, { id, picture }: SeatReadout): Measurement<SightRule> => {
  const whole = picture.visibleFraction >= 1;
  const hider = whole ? null : pictureHider(context.project, pose);
  return {
    rule: 'picture-in-view',
    seat: id,
    item: null,
    value: picture.visibleFraction,
    causes: [seatRef(id), ...(hider?.ref ? [hider.ref] : []), pictureRef],
    ...(hider && { facts: hider.ref?.kind === 'seat' ? { hiderSeat: hider.ref.id } : { hider: hider.name } }),
  };
};

const atSeat = (context: Context, pose: SeatPose): Measurement<SightRule>[] => {
  const seat = context.seats.get(pose.seat.id);
  if (!seat) return [];
  const { picture, id } = seat;
  const common = { seat: id, item: null, causes: [seatRef(id), pictureRef] };
  const standard = context.set === 'standard';
  const rowsAhead = context.poses.some(({ row, eyeM }) => row.id !== pose.row.id && eyeM[2] < pose.eyeM[2]);
  return [
    inView(context, pose, seat),
    { ...common, rule: 'picture-angle', value: picture.horizontalDeg, ...(standard && { source: 'bs775' as const }) },
    { ...common, rule: 'picture-top', value: picture.topElevationDeg },
    {
      ...common,
      rule: 'picture-off-axis',
      value: picture.offAxisDeg,
      ...(standard && { source: 'reviewRoom' as const }),
    },
    { ...common, rule: 'picture-pixels', value: picture.pixelsPerDegree },
    ...sightline(context, pose, seat),
    ...(rowsAhead ? [{ ...common, rule: 'worst-case-view' as const, value: picture.worstCase.visibleFraction }] : []),
  ];
};

/** The picture from every seat. */
export const measureSight = (context: Context): Measurement<SightRule>[] =>
  context.poses.flatMap((pose) => atSeat(context, pose));
