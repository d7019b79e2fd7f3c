import { type ReactNode, useMemo, useState } from 'react';
import { ActionsProvider, type AppActions } from '../panels/actions.ts';
import type { View } from '../state/view.tsx';
import { remember, remembered } from '../storage/flags.ts';
import { openProjectFile, openWithDialog, saveToFile } from './files.ts';

const SEEN = 'first-visit-seen';

/** Gives the panels what needs files and storage. */
export const ActionsFor = ({ view, children }: { view: View; children: ReactNode }) => {
  const [firstVisit, setFirstVisit] = useState(() => !remembered(SEEN));
  const actions = useMemo<AppActions>(
    () => ({
      openFile: () => void openWithDialog(view),
      saveFile: () => saveToFile(view),
      openDropped: (file) => void openProjectFile(view, file),
      firstVisit,
      firstVisitSeen: () => {
        remember(SEEN);
        setFirstVisit(false);
      },
    }),
    [view, firstVisit],
  );
  return <ActionsProvider value={actions}>{children}</ActionsProvider>;
};
