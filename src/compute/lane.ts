import { createDesk, type Desk } from './desk.ts';
import type { Answers, Job, WorkReply, WorkRequest } from './protocol.ts';
import { createStudies, type Studies } from './studies.ts';
import {
  createStudyDesk,
  isStudyReply,
  type StudyDesk,
  type StudyReply,
  type StudyRequest,
  type StudyStop,
} from './study-desk.ts';

/** What a lane needs of a worker thread; tests pass their own. */
export interface Hand {
  post(request: WorkRequest | StudyRequest | StudyStop): void;
  terminate(): void;
}
export type Hire = (onReply: (reply: WorkReply | StudyReply) => void, onDeath: () => void) => Hand;

export type Outcome =
  | { readonly status: 'done'; readonly answers: readonly Answers[Job['kind']][] }
  /** A newer request came before this one was begun. */
  | { readonly status: 'superseded' }
  | { readonly status: 'failed'; readonly reason: string };

interface Waiting {
  readonly request: WorkRequest;
  readonly settle: (outcome: Outcome) => void;
}

export interface Lane {
  /** One request runs, one waits; a newer one takes the waiting one's place. */
  ask(jobs: readonly Job[]): Promise<Outcome>;
  /** Long work in slices on the same thread: requests are heard in between. */
  readonly studies: Studies;
  readonly busy: boolean;
  /** Worker, or the twin on this thread after the worker died twice. */
  readonly place: 'worker' | 'inline';
  dispose(): void;
}

/** Deaths of the worker that are answered by a new one; after that the work is done here, between frames. */
const RESPAWNS = 1;

export const createLane = (hire: Hire | null): Lane => {
  let running: Waiting | null = null;
  let waiting: Waiting | null = null;
  let worker: Hand | null = null;
  let twin: Desk | null = null;
  let studyTwin: StudyDesk | null = null;
  let deaths = 0;
  let lastId = 0;

  const finish = (reply: WorkReply | StudyReply) => {
    if (isStudyReply(reply)) {
      studies.hear(reply);
      return;
    }
    if (!running || reply.id !== running.request.id) return;
    const { settle } = running;
    running = null;
    settle(reply.ok ? { status: 'done', answers: reply.answers } : { status: 'failed', reason: reply.reason });
    next();
  };

  const inline = (request: WorkRequest) => {
    twin ??= createDesk();
    const desk = twin;
    setTimeout(() => {
      try {
        finish({ id: request.id, ok: true, answers: request.jobs.map((job) => desk.run(job)) });
      } catch (fault) {
        finish({ id: request.id, ok: false, reason: fault instanceof Error ? fault.message : 'unknown' });
      }
    });
  };

  const died = () => {
    worker?.terminate();
    worker = null;
    deaths += 1;
    if (running) send(running.request);
    studies.lost();
  };

  const studyHere = (message: StudyRequest | StudyStop) => {
    twin ??= createDesk();
    studyTwin ??= createStudyDesk(
      twin,
      (reply) => studies.hear(reply),
      (go) => setTimeout(go),
      () => performance.now(),
    );
    studyTwin.take(message);
  };

  const studies = createStudies((message) => {
    if (hire === null || deaths > RESPAWNS) {
      studyHere(message);
      return;
    }
    try {
      worker ??= hire(finish, died);
      worker.post(message);
    } catch {
      worker = null;
      deaths = RESPAWNS + 1;
      studyHere(message);
    }
  });

  const send = (request: WorkRequest) => {
    if (hire === null || deaths > RESPAWNS) {
      inline(request);
      return;
    }
    try {
      worker ??= hire(finish, died);
      worker.post(request);
    } catch {
      worker = null;
      deaths = RESPAWNS + 1;
      inline(request);
    }
  };

  const next = () => {
    if (running || !waiting) return;
    running = waiting;
    waiting = null;
    send(running.request);
  };

  return {
    ask: (jobs) =>
      new Promise((settle) => {
        waiting?.settle({ status: 'superseded' });
        lastId += 1;
        waiting = { request: { id: lastId, jobs }, settle };
        next();
      }),
    studies,
    get busy() {
      return running !== null || waiting !== null;
    },
    get place() {
      return hire === null || deaths > RESPAWNS ? 'inline' : 'worker';
    },
    dispose() {
      waiting?.settle({ status: 'superseded' });
      running?.settle({ status: 'superseded' });
      waiting = null;
      running = null;
      studies.dispose();
      worker?.terminate();
      worker = null;
    },
  };
};

/** A worker thread of the page. */
export const hireWorker: Hire = (onReply, onDeath) => {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'parterre-bass' });
  worker.addEventListener('message', ({ data }: MessageEvent<WorkReply | StudyReply>) => onReply(data));
  worker.addEventListener('error', onDeath);
  return { post: (request) => worker.postMessage(request), terminate: () => worker.terminate() };
};
