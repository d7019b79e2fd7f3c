import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { DocumentState, DocumentStore } from './document.ts';
import type { ResultsState, ResultsStore } from './results.ts';
import type { SessionState, SessionStore } from './session.ts';

/** What one view looks at. Two panes or two alternatives are two contexts; nothing reads a global document. */
export interface View {
  readonly document: DocumentStore;
  readonly session: SessionStore;
  readonly results: ResultsStore;
}

const ViewContext = createContext<View | null>(null);
export const ViewProvider = ViewContext.Provider;

export const useView = (): View => {
  const view = useContext(ViewContext);
  if (!view) throw new Error('a component was mounted outside a view');
  return view;
};

export const useDocument = <T,>(select: (state: DocumentState) => T): T => useStore(useView().document, select);
export const useSession = <T,>(select: (state: SessionState) => T): T => useStore(useView().session, select);
export const useResults = <T,>(select: (state: ResultsState) => T): T => useStore(useView().results, select);
