import type { PeakFilter } from '../engines/bass/filters.ts';
import type { Project } from '../model/project.ts';
import { type AlternativeLine, type Compared, compareAlternatives } from './alternatives.ts';
import { type ChainReadout, studyChain } from './chain.ts';
import type { RoomResponses, StudyProgress } from './responses.ts';
import { type ArrangementRow, compareArrangements } from './subwoofers/arrangements.ts';
import { type ImproveGoal, type ImproveResult, improveSubwoofers } from './subwoofers/improve.ts';

/** Work too long for one answer: done in slices, with progress, and stopped between them. */
export type StudyTask =
  | { readonly kind: 'arrangements'; readonly project: Project }
  | {
      readonly kind: 'improve';
      readonly project: Project;
      readonly revision: number;
      readonly goal: ImproveGoal;
      readonly seed: number;
    }
  | {
      readonly kind: 'chain';
      readonly project: Project;
      readonly revision: number;
      readonly stored: readonly PeakFilter[];
    }
  | { readonly kind: 'alternatives'; readonly documents: readonly Compared[] };

export type StudyKind = StudyTask['kind'];

export interface StudyResults {
  arrangements: ArrangementRow[];
  improve: ImproveResult;
  chain: ChainReadout;
  alternatives: AlternativeLine[];
}

export type StudyResult = StudyResults[StudyKind];

/** The slices of a study. */
export const beginStudy = (
  task: StudyTask,
  responsesOf: (project: Project) => RoomResponses,
): Generator<StudyProgress, StudyResult> => {
  switch (task.kind) {
    case 'arrangements':
      return compareArrangements(task.project, responsesOf(task.project));
    case 'improve':
      return improveSubwoofers(task.project, task.revision, task.goal, task.seed, responsesOf(task.project));
    case 'chain':
      return studyChain(task.project, task.revision, task.stored, responsesOf(task.project));
    case 'alternatives':
      return compareAlternatives(task.documents, responsesOf);
  }
};
