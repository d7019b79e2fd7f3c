import { engineTriples } from '../analysis/inputs/engine-axes.ts';
import { type Damping, earTriples, roomSpec } from '../analysis/inputs.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import type { RoomResponses, StudyProgress } from '../proposals/responses.ts';
import { beginStudy, type StudyResult, type StudyTask } from '../proposals/studies.ts';
import type { Desk } from './desk.ts';

/** Begins a study; a newer one of any kind takes its place. */
export interface StudyRequest {
  readonly study: number;
  readonly task: StudyTask;
}

/** Ends the study of that number if it is the one being done. */
export interface StudyStop {
  readonly stopStudy: number;
}

export type StudyReply =
  | { readonly study: number; readonly progress: StudyProgress }
  | { readonly study: number; readonly result: StudyResult }
  | { readonly study: number; readonly failed: string };

export const isStudyMessage = (message: object): message is StudyRequest | StudyStop =>
  'study' in message || 'stopStudy' in message;

export const isStudyReply = (message: object): message is StudyReply => 'study' in message;

/** Responses to a project's seats through a desk and what it remembers. */
export const deskResponses = (desk: Desk, project: Project): RoomResponses => {
  const responses = (placesM: readonly Vec3[], frequenciesHz: Float64Array, damping: Damping = 'nominal') =>
    desk.run({
      kind: 'responses',
      spec: roomSpec(project, damping),
      sourcesM: engineTriples(project, placesM),
      receiversM: earTriples(project),
      frequenciesHz,
    });
  const warm = (frequenciesHz: Float64Array, damping: Damping): boolean =>
    desk.run({ kind: 'warm', spec: roomSpec(project, damping), frequenciesHz });
  return Object.assign(responses, { warm });
};

/** A slice lasts about this long; then whatever else waits for this thread has its turn. */
const SLICE_MS = 40;
/** Progress is told no more often than this. */
const TELL_MS = 100;

export interface StudyDesk {
  take(message: StudyRequest | StudyStop): void;
}

/**
 * Does one study at a time in slices, so that other messages are heard in between: a stop, or a newer study, is looked for
 * before every slice. `later` gives the thread back and comes again; `nowMs` is a clock.
 */
export const createStudyDesk = (
  desk: Desk,
  reply: (reply: StudyReply) => void,
  later: (go: () => void) => void,
  nowMs: () => number,
): StudyDesk => {
  let current = 0;

  const slice = (study: number, work: Generator<StudyProgress, StudyResult>, toldMs: number): void => {
    if (study !== current) return;
    const begunMs = nowMs();
    try {
      let step = work.next();
      while (!step.done && nowMs() - begunMs < SLICE_MS) step = work.next();
      if (step.done) {
        current = 0;
        reply({ study, result: step.value });
        return;
      }
      const tell = begunMs - toldMs >= TELL_MS;
      if (tell) reply({ study, progress: step.value });
      later(() => slice(study, work, tell ? begunMs : toldMs));
    } catch (fault) {
      current = 0;
      reply({ study, failed: fault instanceof Error ? fault.message : 'unknown' });
    }
  };

  return {
    take: (message) => {
      if ('stopStudy' in message) {
        if (message.stopStudy === current) current = 0;
        return;
      }
      const { study, task } = message;
      current = study;
      later(() =>
        slice(
          study,
          beginStudy(task, (project) => deskResponses(desk, project)),
          Number.NEGATIVE_INFINITY,
        ),
      );
    },
  };
};
