import { createDesk } from './desk.ts';
import type { WorkReply, WorkRequest } from './protocol.ts';
import { createStudyDesk, isStudyMessage, type StudyRequest, type StudyStop } from './study-desk.ts';

const desk = createDesk();
const studies = createStudyDesk(
  desk,
  (reply) => self.postMessage(reply),
  (go) => setTimeout(go),
  () => performance.now(),
);

self.onmessage = ({ data }: MessageEvent<WorkRequest | StudyRequest | StudyStop>) => {
  if (isStudyMessage(data)) {
    studies.take(data);
    return;
  }
  let reply: WorkReply;
  try {
    reply = { id: data.id, ok: true, answers: data.jobs.map((job) => desk.run(job)) };
  } catch (fault) {
    reply = { id: data.id, ok: false, reason: fault instanceof Error ? fault.message : 'unknown' };
  }
  self.postMessage(reply);
};
