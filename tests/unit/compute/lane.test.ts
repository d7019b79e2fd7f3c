import { describe, expect, it } from 'vitest';
import { createLane, type Hire } from '../../../src/compute/lane.ts';
import type { Job, WorkReply, WorkRequest } from '../../../src/compute/protocol.ts';

const job: Job = {
  kind: 'modes',
  maxHz: 60,
  spec: { sizeM: [4, 2.5, 5], soundSpeed: 343.2, admittance: Array.from({ length: 6 }, () => [0.02, 0] as const) },
};

/** A worker whose replies and deaths the test decides. */
const puppet = () => {
  const posted: WorkRequest[] = [];
  let hired = 0;
  let reply: (answer: WorkReply) => void = () => {};
  let die: () => void = () => {};
  const hire: Hire = (onReply, onDeath) => {
    hired += 1;
    reply = onReply;
    die = onDeath;
    const post = (message: Parameters<ReturnType<Hire>['post']>[0]) => {
      if ('jobs' in message) posted.push(message);
    };
    return { post, terminate: () => {} };
  };
  return { hire, posted, hired: () => hired, reply: (answer: WorkReply) => reply(answer), die: () => die() };
};

describe('a lane', () => {
  it('runs one request, keeps one waiting and lets the latest win', async () => {
    const worker = puppet();
    const lane = createLane(worker.hire);
    const first = lane.ask([job]);
    const second = lane.ask([job]);
    const third = lane.ask([job]);
    expect(await second).toEqual({ status: 'superseded' });
    expect(worker.posted.map(({ id }) => id)).toEqual([1]);
    worker.reply({ id: 1, ok: true, answers: [[]] });
    expect((await first).status).toBe('done');
    expect(worker.posted.map(({ id }) => id)).toEqual([1, 3]);
    worker.reply({ id: 3, ok: true, answers: [[]] });
    expect((await third).status).toBe('done');
    expect(lane.busy).toBe(false);
  });

  it('drops a reply that answers no running request', async () => {
    const worker = puppet();
    const lane = createLane(worker.hire);
    const answer = lane.ask([job]);
    worker.reply({ id: 99, ok: true, answers: [['wrong' as never]] });
    worker.reply({ id: 1, ok: false, reason: 'told' });
    expect(await answer).toEqual({ status: 'failed', reason: 'told' });
  });

  it('replaces a dead worker once and repeats the request, then works on this thread', async () => {
    const worker = puppet();
    const lane = createLane(worker.hire);
    const answer = lane.ask([job]);
    worker.die();
    expect(worker.hired()).toBe(2);
    expect(worker.posted.map(({ id }) => id)).toEqual([1, 1]);
    expect(lane.place).toBe('worker');
    worker.die();
    const outcome = await answer;
    expect(lane.place).toBe('inline');
    expect(outcome.status).toBe('done');
    if (outcome.status === 'done') expect(outcome.answers[0]).not.toHaveLength(0);
  });

  it('works inline where no worker can be had', async () => {
    const lane = createLane(() => {
      throw new Error('refused');
    });
    const outcome = await lane.ask([job]);
    expect(outcome.status).toBe('done');
    expect(lane.place).toBe('inline');
  });
});
