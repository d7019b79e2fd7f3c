import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createLane, hireWorker } from '../compute/lane.ts';
import twoRow from '../model/presets/two-row.json';
import { projectSchema } from '../model/schema/project.ts';
import { referenceSeatId } from '../model/seating.ts';
import { createDocumentStore } from '../state/document.ts';
import { createResultsStore } from '../state/results.ts';
import { createSessionStore } from '../state/session.ts';
import { type View, ViewProvider } from '../state/view.tsx';
import { autosave, browserShelf, recoverProject } from '../storage/autosave.ts';
import { ActionsFor } from './ActionsFor.tsx';
import { feedBass, type Lanes } from './feed/bass.ts';
import { feedGeometry } from './feed/geometry.ts';
import { notify } from './files.ts';
import { installProbe } from './probe.ts';
import { Shell } from './Shell.tsx';

const start = async () => {
  const recovered = await recoverProject(browserShelf);
  const project = recovered?.project ?? projectSchema.parse(twoRow);
  const view: View = {
    document: createDocumentStore(project),
    session: createSessionStore(),
    results: createResultsStore(),
  };
  view.document.setState({ savedAtMs: recovered?.savedAtMs ?? null });

  const stillness = window.matchMedia('(prefers-reduced-motion: reduce)');
  const followMotion = () => view.session.setState({ reducedMotion: stillness.matches });
  stillness.addEventListener('change', followMotion);
  followMotion();
  view.session.setState({ seatId: referenceSeatId(project) });

  const lanes: Lanes = { interactive: createLane(hireWorker), background: createLane(hireWorker) };
  feedGeometry(view);
  feedBass(view, lanes);
  autosave(view.document, browserShelf, Date.now, () =>
    notify(view, {
      tone: 'caution',
      title: 'This browser does not keep your project',
      lines: ['Storage is full or not allowed here. Work goes on; use Save to keep a file.'],
    }),
  );
  installProbe(view, lanes);

  const root = document.getElementById('root');
  if (!root) return;
  createRoot(root).render(
    <StrictMode>
      <ViewProvider value={view}>
        <ActionsFor view={view}>
          <Shell />
        </ActionsFor>
      </ViewProvider>
    </StrictMode>,
  );
};

void start();
