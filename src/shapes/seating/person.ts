import type { SeatPose } from '../../model/seating.ts';
import { madeParts, partsOf } from '../geometries.ts';
import { standing } from '../placement.ts';
import type { Solid } from '../solid.ts';
import { bodyGeometry } from './figure.ts';
import { headMesh } from './head.ts';
import type { FigureMeasures } from './joints.ts';
import { elbowHalfM, hasFootRail, legRaiseDeg, seatPlacement } from './sitting.ts';

/**
 * The seated figure of a pose, kind 'person' with the seat's id: head and body. The eye point is exactly `pose.eyeM`, the
 * crown exactly crownAboveEyeM over it; the head looks straight to the front wall whatever way the chair faces, as the
 * ear of model/seating does.
 */
export const personSolids = (pose: SeatPose): Solid[] => {
  const { row, seat, body, facingDeg, reclineDeg } = pose;
  const measures: FigureMeasures = {
    panM: row.seat.panHeightM,
    eyeAbovePanM: body.eyeAbovePanM,
    earBehindEyeM: body.earBehindEyeM,
    reclineDeg,
    facingDeg,
    elbowHalfM: elbowHalfM(row.furniture, row.seat.widthM),
    legRaiseDeg: legRaiseDeg(row.furniture, reclineDeg),
    onRail: hasFootRail(row.furniture, row.seat.panHeightM),
  };
  const key = Object.values(measures).map((value) => value ?? 'none');
  const headKey = [body.crownAboveEyeM, body.earBehindEyeM];
  const head = partsOf('head', headKey, () => [
    { part: 'head', material: 'figure', mesh: headMesh(body.crownAboveEyeM, body.earBehindEyeM), creaseDeg: 180 },
  ]);
  const trunk = madeParts('figure', key, () => [
    { part: 'body', material: 'figure', geometry: bodyGeometry(measures) },
  ]);
  const person = { kind: 'person', id: seat.id } as const;
  const upright = seatPlacement(pose);
  return [
    ...head.map((part): Solid => ({ ...person, ...part, placement: standing(pose.eyeM) })),
    ...trunk.map((part): Solid => ({ ...person, ...part, placement: upright })),
  ];
};
