import { createContext, useContext } from 'react';
import type { PeakFilterEntry } from '../../model/alternatives.ts';
import type { ImproveGoal } from '../../proposals/subwoofers/improve.ts';

export type Filter = Pick<PeakFilterEntry, 'frequencyHz' | 'gainDb' | 'q'>;

/** What the choice of subwoofers asks of the app: long work on another thread, and files. */
export interface ChoiceActions {
  improve(goal: ImproveGoal): void;
  stopImproving(): void;
  saveFilters(filters: readonly Filter[]): void;
}

const ChoiceContext = createContext<ChoiceActions | null>(null);
export const ChoiceActionsProvider = ChoiceContext.Provider;
export const useChoiceActions = (): ChoiceActions | null => useContext(ChoiceContext);
