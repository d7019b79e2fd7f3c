import type { Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { seatPoses } from '../model/seating.ts';
import { engineTriples } from './inputs/engine-axes.ts';

/**
 * The document as the engines' input: the only place where axes are converted. Kept by subject in inputs/: the room and its
 * damping, what a surface is made of, the boundary for reverberation, keys, frequencies.
 */
export { DAMPING_FACTOR, type Damping } from './inputs/damping.ts';
export { drivesOf } from './inputs/drives.ts';
export { defaultFrequenciesHz, METRIC_FREQUENCIES_HZ, opensWithSpreadGrid } from './inputs/frequencies.ts';
export { bassFieldKey, bassPlacesKey, driveKey, geometryKey } from './inputs/keys.ts';
export { bassApproximation, roomSpec } from './inputs/room-spec.ts';

/** The subwoofers' places as the engine takes them, in the document's order. */
export const sourceTriples = (project: Project): Float64Array =>
  engineTriples(
    project,
    project.subwoofers.map(({ atM }) => atM as Vec3),
  );

/** The ears' places as the engine takes them, rows from the file's first to its last. */
export const earTriples = (project: Project): Float64Array =>
  engineTriples(
    project,
    seatPoses(project).map(({ earM }) => earM),
  );

/** The seats' ids in the order of `earTriples`. */
export const seatIdsInOrder = (project: Project): string[] =>
  project.rows.flatMap(({ seats }) => seats.map(({ id }) => id));
