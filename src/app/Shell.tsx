import { useEffect, useMemo, useState } from 'react';
import { useAppActions } from '../panels/actions.ts';
import { useMedia } from '../panels/hooks.ts';
import { DropZone } from '../panels/notices/DropZone.tsx';
import { Announcer } from '../panels/outline/Announcer.tsx';
import { PlanBoard } from '../panels/plan-board/PlanBoard.tsx';
import { RoomsSheet } from '../panels/rooms/RoomsSheet.tsx';
import { SelectionBar } from '../panels/selection/SelectionBar.tsx';
import { CautionsSheet } from '../panels/sheets/CautionsSheet.tsx';
import { KeysSheet } from '../panels/sheets/KeysSheet.tsx';
import type { SheetName } from '../panels/top/TopLine.tsx';
import { Stage } from '../scene/Stage.tsx';
import { useSession, useView } from '../state/view.tsx';
import { DeskShell } from './DeskShell.tsx';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { PocketShell } from './PocketShell.tsx';
import { focusRegion } from './regions.ts';
import { KEY_GROUPS, useShortcuts } from './shortcuts.ts';
import { useFocusKept } from './useFocusKept.ts';
import './theme.css';
import './shell.css';

/** Too small for columns beside the scene: one sheet with tabs instead. */
const POCKET = '(max-width: 999px), (max-height: 559px)';

/** The page: one stage for life, and around it the desk or, on a small screen, the pocket arrangement. */
export const Shell = () => {
  const view = useView();
  const actions = useAppActions();
  const pocket = useMedia(POCKET);
  const planBoard = useSession((state) => state.planBoard);
  const [sheet, setSheet] = useState<SheetName | null>(null);
  const reach = useMemo(
    () => ({ view, actions, showKeys: () => setSheet('keys'), showRooms: () => setSheet('rooms') }),
    [view, actions],
  );
  useShortcuts(reach, sheet !== null);
  useFocusKept();
  const [opened, setOpened] = useState(0);
  // The sheet the room was opened from is gone, and the focus with it: it goes to the first line of what was opened.
  useEffect(() => {
    if (opened > 0) void (focusRegion('outline') || focusRegion('tabs') || focusRegion('room'));
  }, [opened]);
  return (
    <main className={pocket ? 'shell is-pocket' : 'shell'}>
      <div className="stage">
        <ErrorBoundary of="the room in 3D">
          <Stage />
        </ErrorBoundary>
      </div>
      <SelectionBar />
      {planBoard && (
        <ErrorBoundary of="the plan">
          <PlanBoard />
        </ErrorBoundary>
      )}
      {pocket ? <PocketShell onSheet={setSheet} /> : <DeskShell onSheet={setSheet} />}
      {sheet === 'keys' && <KeysSheet groups={KEY_GROUPS} onClose={() => setSheet(null)} />}
      {sheet === 'cautions' && <CautionsSheet onClose={() => setSheet(null)} />}
      {sheet === 'rooms' && (
        <RoomsSheet
          onClose={() => setSheet(null)}
          onOpened={() => {
            setSheet(null);
            setOpened((times) => times + 1);
          }}
        />
      )}
      <Announcer />
      <DropZone />
    </main>
  );
};
