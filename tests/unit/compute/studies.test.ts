import { describe, expect, it } from 'vitest';
import { createDesk } from '../../../src/compute/desk.ts';
import { createLane } from '../../../src/compute/lane.ts';
import { createStudies } from '../../../src/compute/studies.ts';
import {
  createStudyDesk,
  type StudyReply,
  type StudyRequest,
  type StudyStop,
} from '../../../src/compute/study-desk.ts';
import type { StudyTask } from '../../../src/proposals/studies.ts';
import { EVEN_FIRST } from '../../../src/proposals/subwoofers/improve.ts';
import { boxRoom } from '../proposals/rooms.ts';

const project = boxRoom();
const arrangements = { kind: 'arrangements', project } as const;
const chain = (revision: number) => ({ kind: 'chain', project, revision, stored: [] }) as const;
const improve = { kind: 'improve', project, revision: 1, goal: { ...EVEN_FIRST, counts: [2] }, seed: 1 } as const;

/** A desk whose slices a test lets happen one by one, with a clock that runs 50 ms a look. */
const byHand = () => {
  const replies: StudyReply[] = [];
  const waiting: (() => void)[] = [];
  let now = 0;
  const desk = createStudyDesk(
    createDesk(),
    (reply) => replies.push(reply),
    (go) => waiting.push(go),
    () => {
      now += 50;
      return now;
    },
  );
  return {
    desk,
    replies,
    slice: () => waiting.shift()?.(),
    get idle() {
      return waiting.length === 0;
    },
  };
};

describe('the side that works', () => {
  it('works in slices, tells progress, answers once', () => {
    const hand = byHand();
    hand.desk.take({ study: 1, task: arrangements });
    let slices = 0;
    while (!hand.idle) {
      hand.slice();
      slices += 1;
    }
    expect(slices).toBeGreaterThan(10);
    const results = hand.replies.filter((reply) => 'result' in reply);
    expect(results).toHaveLength(1);
    expect(hand.replies.filter((reply) => 'progress' in reply).length).toBeGreaterThan(3);
  });

  it('a stop between slices ends it without an answer; a newer study does too', () => {
    const hand = byHand();
    hand.desk.take({ study: 1, task: improve });
    hand.slice();
    hand.slice();
    hand.desk.take({ stopStudy: 1 });
    while (!hand.idle) hand.slice();
    expect(hand.replies.some((reply) => 'result' in reply)).toBe(false);
    hand.desk.take({ study: 2, task: improve });
    hand.slice();
    hand.desk.take({ study: 3, task: chain(1) });
    while (!hand.idle) hand.slice();
    expect(hand.replies.filter((reply) => 'result' in reply).map(({ study }) => study)).toEqual([3]);
  });

  it('a fault is told as one', () => {
    const hand = byHand();
    hand.desk.take({ study: 4, task: { ...arrangements, project: { ...project, room: {} } } as unknown as StudyTask });
    while (!hand.idle) hand.slice();
    expect(hand.replies.at(-1)).toHaveProperty('failed');
  });
});

describe('the side that asks', () => {
  const asked = () => {
    const posted: (StudyRequest | StudyStop)[] = [];
    return { posted, studies: createStudies((message) => posted.push(message)) };
  };

  it('one runs, others wait, of one kind only the latest', async () => {
    const { posted, studies } = asked();
    const first = studies.ask(arrangements);
    const old = studies.ask(chain(1));
    const latest = studies.ask(chain(2));
    expect(posted).toHaveLength(1);
    expect(await old).toEqual({ status: 'superseded' });
    studies.hear({ study: 1, result: [] });
    expect(await first).toEqual({ status: 'done', result: [] });
    expect(posted[1]).toMatchObject({ task: { kind: 'chain', revision: 2 } });
    const result = { revision: 2, crossover: null, headroom: null, equaliser: null };
    studies.hear({ study: 99, failed: 'of another' });
    studies.hear({ study: 3, result });
    expect(await latest).toEqual({ status: 'done', result });
    expect(studies.busy).toBe(false);
  });

  it('a stop is passed on and the next goes ahead', async () => {
    const { posted, studies } = asked();
    const told: number[] = [];
    const running = studies.ask(improve, ({ share }) => told.push(share));
    const next = studies.ask(arrangements);
    studies.hear({ study: 1, progress: { share: 0.25, doing: 'search' } });
    studies.stop('improve');
    expect(await running).toEqual({ status: 'superseded' });
    expect(told).toEqual([0.25]);
    expect(posted.slice(1)).toEqual([{ stopStudy: 1 }, { study: 2, task: arrangements }]);
    studies.hear({ study: 1, result: [] });
    expect(studies.busy).toBe(true);
    studies.dispose();
    expect(await next).toEqual({ status: 'superseded' });
  });

  it('what a dead worker had begun is sent again once', async () => {
    const { posted, studies } = asked();
    const running = studies.ask(arrangements);
    studies.lost();
    expect(posted).toHaveLength(2);
    studies.lost();
    expect(await running).toMatchObject({ status: 'failed' });
  });
});

it('without a worker the twin on this thread does it, and jobs are answered in between', async () => {
  const lane = createLane(null);
  const study = lane.studies.ask(improve);
  expect((await lane.ask([])).status).toBe('done');
  expect(lane.studies.busy).toBe(true);
  const outcome = await study;
  expect(outcome.status).toBe('done');
  if (outcome.status === 'done') expect(outcome.result.proposals.length).toBeGreaterThan(0);
});
