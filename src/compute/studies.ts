import type { StudyProgress } from '../proposals/responses.ts';
import type { StudyKind, StudyResults, StudyTask } from '../proposals/studies.ts';
import type { StudyReply, StudyRequest, StudyStop } from './study-desk.ts';

export type StudyOutcome<K extends StudyKind = StudyKind> =
  | { readonly status: 'done'; readonly result: StudyResults[K] }
  /** Stopped, or a newer study of the same kind came. */
  | { readonly status: 'superseded' }
  | { readonly status: 'failed'; readonly reason: string };

interface Waiting {
  readonly study: number;
  readonly task: StudyTask;
  readonly onProgress: (progress: StudyProgress) => void;
  readonly settle: (outcome: StudyOutcome) => void;
}

/** The asking side of studies: one runs, the others wait in line, of each kind only the latest. */
export interface Studies {
  ask<K extends StudyKind>(
    task: StudyTask & { readonly kind: K },
    onProgress?: (progress: StudyProgress) => void,
  ): Promise<StudyOutcome<K>>;
  /** Stops what runs or waits of a kind. */
  stop(kind: StudyKind): void;
  readonly busy: boolean;
  /** An answer from the other side. */
  hear(reply: StudyReply): void;
  /** The other side died: what ran is sent again, once. */
  lost(): void;
  dispose(): void;
}

export const createStudies = (post: (message: StudyRequest | StudyStop) => void): Studies => {
  let running: Waiting | null = null;
  let line: Waiting[] = [];
  let lastStudy = 0;
  let sentAgain = 0;

  const next = (): void => {
    if (running || line.length === 0) return;
    [running, ...line] = line;
    post({ study: running.study, task: running.task });
  };

  const end = (outcome: StudyOutcome): void => {
    const ended = running;
    running = null;
    ended?.settle(outcome);
    next();
  };

  const stop = (kind: StudyKind): void => {
    for (const waiting of line) if (waiting.task.kind === kind) waiting.settle({ status: 'superseded' });
    line = line.filter(({ task }) => task.kind !== kind);
    if (running?.task.kind !== kind) return;
    post({ stopStudy: running.study });
    end({ status: 'superseded' });
  };

  return {
    ask: <K extends StudyKind>(task: StudyTask & { readonly kind: K }, onProgress = (_: StudyProgress) => {}) =>
      new Promise<StudyOutcome<K>>((settle) => {
        stop(task.kind);
        lastStudy += 1;
        line.push({
          study: lastStudy,
          task,
          onProgress,
          settle: (outcome) => settle(outcome as StudyOutcome<K>),
        });
        next();
      }),
    stop,
    get busy() {
      return running !== null || line.length > 0;
    },
    hear: (reply) => {
      if (reply.study !== running?.study) return;
      if ('progress' in reply) running.onProgress(reply.progress);
      else if ('result' in reply) end({ status: 'done', result: reply.result });
      else end({ status: 'failed', reason: reply.failed });
    },
    lost: () => {
      if (!running) return;
      if (sentAgain === running.study) {
        end({ status: 'failed', reason: 'the worker stopped twice' });
        return;
      }
      sentAgain = running.study;
      post({ study: running.study, task: running.task });
    },
    dispose: () => {
      for (const waiting of line) waiting.settle({ status: 'superseded' });
      running?.settle({ status: 'superseded' });
      line = [];
      running = null;
    },
  };
};
