import type { DecayQuestion } from '../analysis/decay.ts';
import type { DecayReadout } from '../analysis/types.ts';
import type { Detail, RoomMode, RoomSpec, SlicePlane, UnitResponses } from '../engines/bass/room-field.ts';

/** Complex responses of every source at every receiver: apart from gain, delay and polarity, so that those cost nothing. */
export interface ResponsesJob {
  readonly kind: 'responses';
  readonly spec: RoomSpec;
  /** `fine` where nothing else is said. */
  readonly detail?: Detail;
  readonly sourcesM: Float64Array;
  readonly receiversM: Float64Array;
  readonly frequenciesHz: Float64Array;
  /** For a response over time: see RoomField. */
  readonly growthPerS?: number;
}

/** Complex fields of every source over a plane at one frequency. */
export interface SlicesJob {
  readonly kind: 'slices';
  readonly spec: RoomSpec;
  /** `fine` where nothing else is said. */
  readonly detail?: Detail;
  readonly sourcesM: Float64Array;
  readonly plane: SlicePlane;
  readonly frequencyHz: number;
}

export interface ModesJob {
  readonly kind: 'modes';
  readonly spec: RoomSpec;
  /** `fine` where nothing else is said. */
  readonly detail?: Detail;
  readonly maxHz: number;
}

/** The rigid shapes of the modes at points: what each place gives to and takes from them. */
export interface ShapesJob {
  readonly kind: 'shapes';
  readonly spec: RoomSpec;
  /** `fine` where nothing else is said. */
  readonly detail?: Detail;
  readonly maxHz: number;
  readonly pointsM: Float64Array;
}

/**
 * Prepares a room at some frequencies, in portions short enough for a hand that may move again. The answer is false as long as
 * only a portion of what the room itself takes was done: the same job again goes on with it.
 */
export interface WarmJob {
  readonly kind: 'warm';
  readonly spec: RoomSpec;
  /** `fine` where nothing else is said. */
  readonly detail?: Detail;
  readonly frequenciesHz: Float64Array;
  /** Prepares what the modes to there need instead of the room's field. */
  readonly modesToHz?: number;
  /** Works those modes out too. */
  readonly decays?: boolean;
}

/** Makes the picture of a decay from responses that were asked for before. */
export interface DecayJob extends DecayQuestion {
  readonly kind: 'decay';
}

/** What is asked of a room. */
export type RoomJob = ResponsesJob | SlicesJob | ModesJob | ShapesJob | WarmJob;
export type Job = RoomJob | DecayJob;

/** One unit field a source: index iv * uM.length + iu. */
export interface UnitSlices {
  readonly frequencyHz: number;
  readonly fields: readonly { readonly re: Float32Array; readonly im: Float32Array }[];
}

export interface Answers {
  responses: UnitResponses;
  slices: UnitSlices;
  modes: RoomMode[];
  /** Index mode * points + point. */
  shapes: Float64Array;
  warm: boolean;
  decay: Omit<DecayReadout, 'seatId'>;
}

export type AnswerTo<J extends Job> = Answers[J['kind']];

/** Several jobs of one revision travel together, so that what is shown together was computed together. */
export interface WorkRequest {
  readonly id: number;
  readonly jobs: readonly Job[];
}

export type WorkReply =
  | { readonly id: number; readonly ok: true; readonly answers: readonly Answers[Job['kind']][] }
  | { readonly id: number; readonly ok: false; readonly reason: string };
