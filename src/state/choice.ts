import type { Project } from '../model/project.ts';
import type { AlternativeLine } from '../proposals/alternatives.ts';
import type { ChainReadout } from '../proposals/chain.ts';
import type { StudyProgress } from '../proposals/responses.ts';
import type { ArrangementRow } from '../proposals/subwoofers/arrangements.ts';
import type { ImproveResult } from '../proposals/subwoofers/improve.ts';

/** An answer with the key of what it was asked for; it is current while that is still the question. */
export interface Answered<T> {
  readonly key: string;
  readonly value: T;
}

/** The search for better places: asked for by hand, never by itself. */
export interface SearchState {
  readonly status: 'idle' | 'running' | 'done' | 'failed';
  readonly progress: StudyProgress | null;
  readonly result: ImproveResult | null;
  /** The document the result was found in. */
  readonly searched: Project | null;
}

/** What the choice of subwoofers shows. `keys` are those of the document as it stands; an older answer is shown dimmed. */
export interface ChoiceState {
  readonly keys: { readonly arrangements: string; readonly chain: string; readonly compared: string };
  readonly arrangements: Answered<readonly ArrangementRow[]> | null;
  readonly chain: Answered<ChainReadout> | null;
  readonly compared: Answered<readonly AlternativeLine[]> | null;
  readonly search: SearchState;
  /** Something could not be worked out just now. */
  readonly trouble: boolean;
}

export const initialChoice: ChoiceState = {
  keys: { arrangements: '', chain: '', compared: '' },
  arrangements: null,
  chain: null,
  compared: null,
  search: { status: 'idle', progress: null, result: null, searched: null },
  trouble: false,
};
