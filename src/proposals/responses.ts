import type { Damping } from '../analysis/inputs.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import type { Vec3 } from '../math/vec3.ts';

/**
 * Complex responses from places of a room (document axes) to the ears of its seats, rows from the file's first to its last.
 * Whoever runs a study supplies it: a worker with its caches, or a test.
 */
export interface RoomResponses {
  (placesM: readonly Vec3[], frequenciesHz: Float64Array, damping?: Damping): UnitResponses;
  /**
   * Prepares what depends on room and frequency alone, or a portion of what the room itself takes: false until that is done, and
   * asked again. Left out where that costs nothing worth a slice of its own.
   */
  readonly warm?: (frequenciesHz: Float64Array, damping: Damping) => boolean;
}

/** Where a study stands: share of the work done, 0 to 1, and what is being done. */
export interface StudyProgress {
  readonly share: number;
  readonly doing: 'places' | 'search' | 'drives' | 'figures';
}

/** Frequencies prepared in one slice: a room that is no box takes some milliseconds each. */
const WARM_AT_ONCE = 2;

/** Prepares a room a few frequencies at a time, so that a stop is heard in between; shares from `from` to `to`. */
export function* warmUp(
  responses: RoomResponses,
  frequenciesHz: Float64Array,
  dampings: readonly Damping[],
  from: number,
  to: number,
): Generator<StudyProgress, void> {
  if (!responses.warm) return;
  const slices = Math.ceil(frequenciesHz.length / WARM_AT_ONCE);
  for (const [turn, damping] of dampings.entries()) {
    for (let slice = 0; slice < slices; slice += 1) {
      const share = (done: number) => from + ((to - from) * (turn + done / slices)) / dampings.length;
      const portion = frequenciesHz.slice(slice * WARM_AT_ONCE, (slice + 1) * WARM_AT_ONCE);
      while (!responses.warm(portion, damping)) yield { share: share(slice), doing: 'places' };
      yield { share: share(slice + 1), doing: 'places' };
    }
  }
}
