import type { Project, Row, Seat, SurfaceTreatment } from '../../model/project.ts';
import { seatPoses } from '../../model/seating.ts';
import { roomSpec } from './room-spec.ts';

/**
 * Inputs keys: strings that change exactly when the inputs of one computation change. Only the fields a computation reads
 * are written into its key, so that a new name, a note, a lock or an unknown key makes nothing stale.
 */

/** What the field of the room depends on: shape, speed of sound, wall admittances, patches. */
export const bassFieldKey = (project: Project): string => JSON.stringify(roomSpec(project));

/** What the unit responses depend on besides the field: where the subwoofers and the ears are, by id and order. */
export const bassPlacesKey = (project: Project): string =>
  JSON.stringify([
    project.subwoofers.map(({ id, atM }) => [id, atM]),
    seatPoses(project).map(({ seat, earM }) => [seat.id, earM]),
  ]);

/** Gain, delay and polarity of every subwoofer: a change here never calls the engine. */
export const driveKey = (project: Project): string =>
  JSON.stringify(project.subwoofers.map(({ id, gainDb, delayMs, inverted }) => [id, gainDb, delayMs, inverted]));

const treatmentFields = (treatment: SurfaceTreatment | undefined) =>
  treatment && [treatment.finish, treatment.absorption, treatment.admittance];

const seatFields = ({ id, xM, eyeZM, facingDeg, reclineDeg, people }: Seat) => [
  id,
  xM,
  eyeZM,
  facingDeg,
  reclineDeg,
  people && [people.eyeAbovePanM, people.earAbovePanM, people.earBehindEyeM, people.crownAboveEyeM],
];

const rowFields = ({ id, eyeZM, floorM, furniture, seat, riser, seats }: Row) => [
  id,
  eyeZM,
  floorM,
  furniture,
  [seat.widthM, seat.panHeightM, seat.backHeightM],
  riser && [riser.fromXM, riser.toXM, riser.fromZM, riser.toZM, riser.steps],
  seats.map(seatFields),
];

const roomFields = ({ room, air }: Project) => [
  room.plan,
  room.ceiling,
  (['front', 'back', 'left', 'right', 'floor', 'ceiling'] as const).map((name) => treatmentFields(room.surfaces[name])),
  room.reverberationS,
  Object.entries(room.surfaces.walls ?? {}).map(([edge, treatment]) => [edge, treatmentFields(treatment)]),
  room.patches.map((patch) => [
    patch.surface,
    patch.wall,
    patch.fromM,
    patch.widthM,
    patch.bottomM,
    patch.heightM,
    treatmentFields(patch),
  ]),
  room.openings.map((opening) => [
    opening.kind,
    opening.surface,
    opening.wall,
    opening.fromM,
    opening.widthM,
    opening.bottomM,
    opening.heightM,
    opening.leaf,
  ]),
  room.objects.map(({ id, kind, minM, maxM }) => [id, kind, minM, maxM]),
  air.temperatureC,
];

const pictureFields = ({ picture }: Project) => [
  picture.kind,
  picture.aspect,
  picture.widthM,
  picture.centreXM,
  picture.bottomM,
  picture.offFrontWallM,
  picture.acousticallyTransparent,
  picture.pixels,
  picture.projector?.atM,
];

/** What the geometry readout depends on: room, picture, people, rows, loudspeakers and the seat they aim at; no subwoofer. */
export const geometryKey = (project: Project): string => {
  const { people, rows, referenceSeat, loudspeakers } = project;
  return JSON.stringify([
    roomFields(project),
    pictureFields(project),
    [people.eyeAbovePanM, people.earAbovePanM, people.earBehindEyeM, people.crownAboveEyeM],
    rows.map(rowFields),
    referenceSeat,
    loudspeakers.map((one) => [
      one.id,
      one.channel,
      one.atM,
      one.aim,
      one.pattern,
      one.mount,
      one.sizeM,
      one.sensitivityDb,
      one.maxWatts,
    ]),
  ]);
};
