import { type ReactNode, useMemo, useState } from 'react';
import { ActionsProvider, type AppActions } from '../panels/actions.ts';
import type { View } from '../state/view.tsx';
import { remember, remembered } from '../storage/flags.ts';
import { openProjectFile, openWithDialog, saveToFile } from './files.ts';
import type { Rooms } from './rooms/rooms.ts';

const SEEN = 'first-visit-seen';

interface ActionsForProps {
  readonly view: View;
  readonly rooms: Rooms;
  readonly children: ReactNode;
}

/** Gives the panels what needs files and storage. */
export const ActionsFor = ({ view, rooms, children }: ActionsForProps) => {
  const [firstVisit, setFirstVisit] = useState(() => !remembered(SEEN));
  const actions = useMemo<AppActions>(
    () => ({
      openFile: () => void openWithDialog(view, rooms.take),
      saveFile: () => saveToFile(view),
      openDropped: (file) => void openProjectFile(view, rooms.take, file),
      rooms,
      firstVisit,
      firstVisitSeen: () => {
        remember(SEEN);
        setFirstVisit(false);
      },
    }),
    [view, rooms, firstVisit],
  );
  return <ActionsProvider value={actions}>{children}</ActionsProvider>;
};
