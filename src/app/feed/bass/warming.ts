import { earTriples, roomSpec, sourceTriples } from '../../../analysis/inputs.ts';
import type { Lane } from '../../../compute/lane.ts';
import type { Job } from '../../../compute/protocol.ts';
import { isExactAtOnce } from '../../../engines/bass/create-room-field.ts';
import type { Detail } from '../../../engines/bass/room-field.ts';
import type { Project } from '../../../model/project.ts';
import { FREQUENCIES_HZ, type Wanted } from './wanted.ts';

/** Frequencies prepared between two looks at what the hand does. */
const PORTION = 6;
/** Rooms known to be prepared: as many as the desk keeps, dampings aside. */
const REMEMBERED = 2;

/** The room at some frequencies at a time, then one subwoofer's responses at a time: the lane's desk keeps them all. */
const portionsOf = ({ project }: Wanted): Job[] => {
  const common = { spec: roomSpec(project), detail: 'fine' } as const;
  const sourcesM = sourceTriples(project);
  const receiversM = earTriples(project);
  const jobs: Job[] = [];
  for (let from = 0; from < FREQUENCIES_HZ.length; from += PORTION)
    jobs.push({ kind: 'warm', ...common, frequenciesHz: FREQUENCIES_HZ.slice(from, from + PORTION) });
  for (let at = 0; at < sourcesM.length; at += 3)
    jobs.push({
      kind: 'responses',
      ...common,
      sourcesM: sourcesM.slice(at, at + 3),
      receiversM,
      frequenciesHz: FREQUENCIES_HZ,
    });
  return jobs;
};

export interface Warming {
  /** How finely the room can be answered without making the hand wait. */
  detailFor(wanted: Wanted): Detail;
  /** Prepares a room in portions, as long as `goOn` and nobody else wants the lane. */
  warm(wanted: Wanted, goOn: () => boolean): Promise<'ready' | 'interrupted' | 'failed'>;
}

/** Which rooms the interactive lane has worked out finely; the others are shown by a first picture meanwhile. */
export const createWarming = (lane: Lane): Warming => {
  const warm: string[] = [];
  let exact: { readonly room: Project['room']; readonly atOnce: boolean } | null = null;
  const atOnce = (project: Project): boolean => {
    if (exact?.room !== project.room) exact = { room: project.room, atOnce: isExactAtOnce(roomSpec(project)) };
    return exact.atOnce;
  };
  return {
    detailFor: ({ project, fieldKey }) => (atOnce(project) || warm.includes(fieldKey) ? 'fine' : 'first'),
    async warm(wanted, goOn) {
      const { fieldKey } = wanted;
      for (const job of portionsOf(wanted)) {
        for (let again = true; again; ) {
          // The lane keeps one request waiting: a portion must not take the place of what the hand wants.
          if (!goOn() || lane.busy) return 'interrupted';
          const outcome = await lane.ask([job]);
          if (outcome.status === 'failed') return 'failed';
          if (outcome.status === 'superseded') return 'interrupted';
          again = outcome.answers[0] === false;
        }
      }
      warm.push(fieldKey);
      if (warm.length > REMEMBERED) warm.shift();
      return goOn() ? 'ready' : 'interrupted';
    },
  };
};
