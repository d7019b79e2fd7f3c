import { createContext, useContext } from 'react';

/** What panels ask of the app because it needs files or storage, which panels never import. */
export interface AppActions {
  openFile(): void;
  saveFile(): void;
  openDropped(file: File): void;
  /** Whether the line that says what to try has not been put away yet. */
  readonly firstVisit: boolean;
  firstVisitSeen(): void;
}

const ActionsContext = createContext<AppActions | null>(null);
export const ActionsProvider = ActionsContext.Provider;

/** Null until the app has wired them: a control without its action is then not shown at all. */
export const useAppActions = (): AppActions | null => useContext(ActionsContext);
