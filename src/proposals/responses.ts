import type { Damping } from '../analysis/inputs.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import type { Vec3 } from '../math/vec3.ts';

/**
 * Complex responses from places of a room (document axes) to the ears of its seats, rows from the file's first to its last.
 * Whoever runs a study supplies it: a worker with its caches, or a test.
 */
export type RoomResponses = (placesM: readonly Vec3[], frequenciesHz: Float64Array, damping?: Damping) => UnitResponses;

/** Where a study stands: share of the work done, 0 to 1, and what is being done. */
export interface StudyProgress {
  readonly share: number;
  readonly doing: 'places' | 'search' | 'drives' | 'figures';
}
