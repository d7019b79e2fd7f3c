import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createLane, hireWorker } from '../compute/lane.ts';
import { referenceSeatId } from '../model/seating.ts';
import { ChoiceActionsProvider } from '../panels/bass-choice/actions.ts';
import { createDocumentStore } from '../state/document.ts';
import { createResultsStore } from '../state/results.ts';
import { createSessionStore } from '../state/session.ts';
import { type View, ViewProvider } from '../state/view.tsx';
import { note } from '../storage/flags.ts';
import { browserShelf } from '../storage/shelf.ts';
import { tabTalk } from '../storage/tabs.ts';
import { ActionsFor } from './ActionsFor.tsx';
import { choiceActions } from './choice-actions.ts';
import { sayFaults } from './faults.ts';
import { feedBass, type Lanes } from './feed/bass.ts';
import { feedChoice } from './feed/choice.ts';
import { feedGeometry } from './feed/geometry.ts';
import { feedSelection } from './feed/selection.ts';
import { firstRoom } from './first-room.ts';
import { workOffline } from './offline.ts';
import { installProbe } from './probe.ts';
import { createRooms } from './rooms/rooms.ts';
import { Shell } from './Shell.tsx';

const newId = () => crypto.randomUUID?.() ?? `room-${Date.now()}`;

const start = async () => {
  const shelf = browserShelf();
  const first = await firstRoom(shelf, newId);
  const view: View = {
    document: createDocumentStore(first.project),
    session: createSessionStore(),
    results: createResultsStore(),
  };
  view.document.setState({ savedAtMs: first.savedAtMs });

  const stillness = window.matchMedia('(prefers-reduced-motion: reduce)');
  const followMotion = () => view.session.setState({ reducedMotion: stillness.matches });
  stillness.addEventListener('change', followMotion);
  followMotion();
  view.session.setState({ seatId: referenceSeatId(first.project) });

  const lanes: Lanes = { interactive: createLane(hireWorker), background: createLane(hireWorker) };
  feedSelection(view);
  feedGeometry(view);
  feedBass(view, lanes);
  const choice = choiceActions(view, feedChoice(view, lanes.background));
  const rooms = createRooms({
    view,
    shelf,
    talk: tabTalk(),
    firstId: first.id,
    rememberHere: (id) => note('room', id),
    newId,
    clockMs: Date.now,
  });
  if (first.unreadableId !== null) void rooms.open(first.unreadableId);
  sayFaults(view);
  installProbe(view, lanes);

  const root = document.getElementById('root');
  if (!root) return;
  createRoot(root).render(
    <StrictMode>
      <ViewProvider value={view}>
        <ActionsFor view={view} rooms={rooms}>
          <ChoiceActionsProvider value={choice}>
            <Shell />
          </ChoiceActionsProvider>
        </ActionsFor>
      </ViewProvider>
    </StrictMode>,
  );
  workOffline(view);
};

void start();
