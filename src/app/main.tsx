import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import twoRow from '../model/presets/two-row.json';
import { projectSchema } from '../model/schema/project.ts';
import { referenceSeatId } from '../model/seating.ts';
import { createDocumentStore } from '../state/document.ts';
import { createResultsStore } from '../state/results.ts';
import { createSessionStore } from '../state/session.ts';
import { ViewProvider } from '../state/view.tsx';
import { Shell } from './Shell.tsx';

const view = {
  document: createDocumentStore(projectSchema.parse(twoRow)),
  session: createSessionStore(),
  results: createResultsStore(),
};

view.session.setState({ seatId: referenceSeatId(view.document.getState().project) });

const root = document.getElementById('root');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <ViewProvider value={view}>
        <Shell />
      </ViewProvider>
    </StrictMode>,
  );
}
