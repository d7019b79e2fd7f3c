import { createDesk } from './desk.ts';
import type { WorkReply, WorkRequest } from './protocol.ts';

const desk = createDesk();

self.onmessage = ({ data }: MessageEvent<WorkRequest>) => {
  let reply: WorkReply;
  try {
    reply = { id: data.id, ok: true, answers: data.jobs.map((job) => desk.run(job)) };
  } catch (fault) {
    reply = { id: data.id, ok: false, reason: fault instanceof Error ? fault.message : 'unknown' };
  }
  self.postMessage(reply);
};
