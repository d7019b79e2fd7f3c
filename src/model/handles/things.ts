import type { Vec3 } from '../../math/vec3.ts';
import { facingDirection } from '../commands/stretch.ts';
import { extentOf, middleOf } from '../extents.ts';
import { isLocked, seatIndices } from '../items.ts';
import type { ItemRef, Project, Row } from '../project.ts';
import { platformOf } from '../riser.ts';
import { roomShape } from '../room/shape.ts';
import { referenceSeatId, seatPose } from '../seating.ts';
import { ACROSS, ALONG, type Handle, handle, LEVEL, UP } from './handle.ts';

/** Heights are taken hold of a hand's breadth over the thing. */
const OVER_M = 0.14;
const FACING_M = 0.8;
const BEHIND_M = 0.3;
const FEET_M = 0.3;

const placeAndHeight = (project: Project, ref: ItemRef, command: string): Handle[] => {
  const extent = extentOf(project, ref);
  if (!extent) return [];
  const [x, , z] = middleOf(extent);
  const place = handle(ref, 'place', 'Place', [x, extent.minM[1], z], LEVEL, command);
  // What fills a room from floor to ceiling has nowhere to go up or down.
  if (extent.maxM[1] - extent.minM[1] >= roomShape(project).highestM - 1e-6) return [place];
  return [place, handle(ref, 'height', 'Height', [x, extent.maxM[1] + OVER_M, z], UP, command)];
};

/** The point a loudspeaker is turned to: its own, or the ear of the reference seat; null for what has no aim. */
export const aimPoint = (project: Project, id: string): Vec3 | null => {
  const found = project.loudspeakers.find((one) => one.id === id);
  if (!found || found.pattern === 'omni') return null;
  if (found.aim !== undefined && found.aim !== 'reference') return found.aim;
  if (found.aim === undefined && found.pattern === 'dipole') return null;
  const indices = seatIndices(project, referenceSeatId(project));
  return indices ? seatPose(project, ...indices).earM : null;
};

export const loudspeakerHandles = (project: Project, ref: ItemRef): Handle[] => {
  const aim = aimPoint(project, ref.id);
  return [
    ...placeAndHeight(project, ref, 'moveLoudspeaker'),
    ...(aim ? [handle(ref, 'aim', 'Aim', aim, LEVEL, 'aimLoudspeaker')] : []),
  ];
};

export const subwooferHandles = (project: Project, ref: ItemRef): Handle[] =>
  placeAndHeight(project, ref, 'moveSubwoofer');

/** Seats of a sofa are one piece of furniture: the hand that takes one of them takes all. */
export const sofaOf = (project: Project, seatId: string): Row | null => {
  const row = project.rows.find(({ seats }) => seats.some(({ id }) => id === seatId));
  return row?.furniture === 'sofa' && row.seats.length > 1 ? row : null;
};

/** Where a whole row is taken hold of: on the floor, where the feet are. */
const rowPlace = (project: Project, row: Row): Handle[] => {
  const ref: ItemRef = { kind: 'row', id: row.id };
  const extent = extentOf(project, ref);
  if (!extent || isLocked(project, ref) || row.seats.some(({ locked }) => locked === true)) return [];
  const at: Vec3 = [middleOf(extent)[0], row.floorM, extent.minM[2] - FEET_M];
  if (row.furniture !== 'sofa') return [handle(ref, 'rowPlace', 'Row', at, LEVEL, 'shiftRow')];
  return [{ ...handle(ref, 'rowPlace', 'Sofa', at, LEVEL, 'shiftRow'), tag: 'sofa' }];
};

export const seatHandles = (project: Project, ref: ItemRef): Handle[] => {
  const indices = seatIndices(project, ref.id);
  if (!indices) return [];
  const { row, seat, eyeM, facingDeg } = seatPose(project, ...indices);
  const [fx, fz] = facingDirection(facingDeg);
  const z = seat.eyeZM ?? row.eyeZM;
  const y = row.floorM;
  const sofa = sofaOf(project, ref.id);
  const leans = row.furniture === 'recliner' || row.furniture === 'chaise';
  const place = handle(ref, 'place', 'Place', [seat.xM, y, z], LEVEL, 'moveSeat');
  return [
    sofa ? { ...place, tag: `seat ${indices[1] + 1}` } : place,
    handle(ref, 'facing', 'Facing', [seat.xM + fx * FACING_M, y, z + fz * FACING_M], LEVEL, 'turnSeat'),
    ...(sofa ? rowPlace(project, sofa) : []),
    ...(leans ? [handle(ref, 'recline', 'Recline', [eyeM[0], eyeM[1], eyeM[2] + BEHIND_M], ALONG, 'reclineSeat')] : []),
  ];
};

export const rowHandles = (project: Project, ref: ItemRef): Handle[] => {
  const row = project.rows.find((one) => one.id === ref.id);
  const extent = extentOf(project, ref);
  if (!row || !extent) return [];
  const [x] = middleOf(extent);
  const distance = handle(ref, 'rowDistance', 'Distance', [x, row.floorM, extent.minM[2]], ALONG, 'moveRow');
  const riser = platformOf(project, row);
  const edge = Math.max(riser.fromXM, extent.minM[0] - 0.35);
  const raise = (at: Vec3) => handle(ref, 'riserHeight', 'Floor height', at, UP, 'raiseRow');
  const place = rowPlace(project, row);
  if (row.floorM === 0) return [...place, distance, raise([edge, OVER_M, row.eyeZM])];
  return [
    ...place,
    distance,
    raise([edge, row.floorM + OVER_M, row.eyeZM]),
    handle(ref, 'riserFront', 'Riser front', [edge, row.floorM, riser.fromZM], ALONG, 'moveRiserEdge', 'fromZM'),
    handle(ref, 'riserBack', 'Riser back', [edge, row.floorM, riser.toZM], ALONG, 'moveRiserEdge', 'toZM'),
  ];
};

export const objectHandles = (project: Project, ref: ItemRef): Handle[] => {
  const extent = extentOf(project, ref);
  if (!extent) return [];
  const { minM, maxM } = extent;
  const [x, y, z] = middleOf(extent);
  const side = (label: string, at: Vec3, axis: Handle['axis'], part: string) =>
    handle(ref, 'objectSide', label, at, axis, 'stretchObject', part);
  return [
    ...placeAndHeight(project, ref, 'shiftItem'),
    side('Width', [maxM[0], y, z], ACROSS, 'x'),
    side('Depth', [x, y, maxM[2]], ALONG, 'z'),
    side('Top', [minM[0], maxM[1], z], UP, 'y'),
  ];
};

export const pictureHandles = (project: Project, ref: ItemRef): Handle[] => {
  const { picture } = project;
  const { minM, maxM } = extentOf(project, ref)!;
  const [x, , z] = middleOf({ minM, maxM });
  const face: Handle['axis'] = { kind: 'surface', right: [1, 0, 0], up: [0, 1, 0] };
  const corner = (part: string, at: Vec3) =>
    handle(ref, 'pictureCorner', 'Picture size', at, face, 'resizePicture', part);
  const { projector } = picture;
  const projects = projector && picture.kind === 'screen';
  return [
    corner('upper left', [minM[0], maxM[1], z]),
    corner('upper right', [maxM[0], maxM[1], z]),
    corner('lower left', [minM[0], minM[1], z]),
    corner('lower right', [maxM[0], minM[1], z]),
    handle(ref, 'pictureHeight', 'Picture height', [x, maxM[1], z], UP, 'shiftItem'),
    handle(ref, 'pictureAcross', 'Across', [x, (minM[1] + maxM[1]) / 2, z], ACROSS, 'shiftItem'),
    handle(ref, 'pictureOff', 'Off the wall', [x, minM[1], z], ALONG, 'shiftItem'),
    ...(projects
      ? [
          handle(ref, 'projectorPlace', 'Projector', projector.atM, LEVEL, 'shiftProjector'),
          handle(
            ref,
            'projectorHeight',
            'Projector height',
            [projector.atM[0], projector.atM[1] - 2 * OVER_M, projector.atM[2]],
            UP,
            'shiftProjector',
          ),
        ]
      : []),
  ];
};
