import { playedDrives } from '../../../analysis/decay.ts';
import {
  bassFieldKey,
  bassPlacesKey,
  defaultFrequenciesHz,
  earTriples,
  roomSpec,
  sourceTriples,
} from '../../../analysis/inputs.ts';
import type { SliceQuestion } from '../../../analysis/slice/field.ts';
import { enginePlane } from '../../../analysis/slice/grid.ts';
import { cutOf, sliceFrequenciesHz } from '../../../analysis/slice/wish.ts';
import type { Answers, Job } from '../../../compute/protocol.ts';
import type { Detail, RoomSpec } from '../../../engines/bass/room-field.ts';
import type { Project } from '../../../model/project.ts';
import { sameBesides } from '../../../model/same-besides.ts';
import type { View } from '../../../state/view.tsx';
import type { Kept } from './kept.ts';

/** The report's frequencies: what the seats are answered at while the hand moves. */
export const FREQUENCIES_HZ = defaultFrequenciesHz();

/** What document and session ask of the engine just now, and the keys its answers are kept under. */
export interface Wanted {
  readonly project: Project;
  readonly revision: number;
  readonly seatId: string;
  readonly fieldKey: string;
  readonly responsesKey: string;
  readonly slicesKey: string;
  /** Null where no difference from the seats' mean is shown. */
  readonly meanKey: string | null;
  /** Null where no decay is looked at. */
  readonly decayKey: string | null;
  /** The same as played: with what is sent to every subwoofer, its own high-pass included. */
  readonly pictureKey: string | null;
  readonly question: SliceQuestion;
}

/** The room as the engine takes it with its key, kept as long as nothing but the subwoofers changes: they have no say in it. */
let lastRoom: { readonly project: Project; readonly spec: RoomSpec; readonly key: string } | null = null;

const roomOf = (project: Project): { readonly spec: RoomSpec; readonly key: string } => {
  if (lastRoom === null || !sameBesides(lastRoom.project, project, 'subwoofers'))
    lastRoom = { project, spec: roomSpec(project), key: bassFieldKey(project) };
  return lastRoom;
};

export const wantedOf = (view: View): Wanted => {
  const { project, revision } = view.document.getState();
  const { slice, seatId, frequencyHz, bassSheet } = view.session.getState();
  const cut = cutOf(project, slice, seatId);
  const frequenciesHz = sliceFrequenciesHz(slice, frequencyHz);
  const fieldKey = roomOf(project).key;
  const responsesKey = `${fieldKey}|${bassPlacesKey(project)}`;
  const sources = JSON.stringify(project.subwoofers.map(({ id, atM }) => [id, atM]));
  const frequencies = frequenciesHz.join();
  const decayKey = bassSheet === 'decay' ? `${responsesKey}|${seatId}` : null;
  return {
    project,
    revision,
    seatId,
    fieldKey,
    responsesKey,
    slicesKey: `${fieldKey}|${sources}|${cut.normal}${cut.atM}|${frequencies}`,
    decayKey,
    pictureKey: decayKey && `${decayKey}|${JSON.stringify(playedDrives(project))}`,
    meanKey: slice.as === 'difference' ? `${responsesKey}|${frequencies}` : null,
    question: { wish: slice, cut, frequencyHz, frequenciesHz },
  };
};

/** Whether everything that is wanted has been answered, at least this finely. */
export const answered = (wanted: Wanted, kept: Kept, detail: Detail): boolean =>
  kept.responses.has(wanted.responsesKey, detail) &&
  kept.slices.has(wanted.slicesKey, detail) &&
  (wanted.meanKey === null || kept.mean.has(wanted.meanKey, detail));

export interface Errand {
  readonly jobs: readonly Job[];
  /** Puts the answers where they belong. */
  take(answers: readonly Answers[Job['kind']][]): void;
}

/** What the interactive lane has to do for what is wanted and not kept: slice, seats and mean in one request. */
export const errandFor = (wanted: Wanted, kept: Kept, detail: Detail): Errand => {
  const { project, question } = wanted;
  const { frequenciesHz } = question;
  const common = { spec: roomOf(project).spec, detail, sourcesM: sourceTriples(project) };
  const jobs: Job[] = [];
  const takers: ((answers: readonly Answers[Job['kind']][]) => void)[] = [];
  if (!kept.slices.has(wanted.slicesKey, detail)) {
    const plane = enginePlane(project, question.cut);
    const first = jobs.length;
    for (const frequencyHz of frequenciesHz) jobs.push({ kind: 'slices', ...common, plane, frequencyHz });
    takers.push((answers) => {
      const found = answers.slice(first, first + frequenciesHz.length) as Answers['slices'][];
      const fields = found.map((slice) => slice.fields);
      kept.slices.put(wanted.slicesKey, fields, detail);
    });
  }
  const ears = (hz: Float64Array): Job => ({
    kind: 'responses',
    ...common,
    receiversM: earTriples(project),
    frequenciesHz: hz,
  });
  if (!kept.responses.has(wanted.responsesKey, detail)) {
    const at = jobs.push(ears(FREQUENCIES_HZ)) - 1;
    takers.push((answers) => kept.responses.put(wanted.responsesKey, answers[at] as Answers['responses'], detail));
  }
  const { meanKey } = wanted;
  if (meanKey !== null && !kept.mean.has(meanKey, detail)) {
    const at = jobs.push(ears(frequenciesHz)) - 1;
    takers.push((answers) => kept.mean.put(meanKey, answers[at] as Answers['responses'], detail));
  }
  return {
    jobs,
    take: (answers) => {
      for (const take of takers) take(answers);
    },
  };
};
