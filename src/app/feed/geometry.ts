import { findings } from '../../analysis/findings.ts';
import { geometryReadout } from '../../analysis/geometry.ts';
import { geometryKey } from '../../analysis/inputs/keys.ts';
import type { Project } from '../../model/project.ts';
import { sameBesides } from '../../model/same-besides.ts';
import type { View } from '../../state/view.tsx';

/** In a gesture the list of findings follows this far behind the hand: it is words to be read, not a thing to be steered by. */
const FINDINGS_LAG_MS = 250;

/**
 * Sight and angles in the frame of the edit, when their inputs changed. Findings at once after an edit, and every quarter of
 * a second while the hand moves; those shown meanwhile keep the revision they belong to.
 */
export const feedGeometry = (view: View): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | null = null;

  let measured: Project | null = null;

  const judge = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const { project, revision, variant } = view.document.getState();
    const { geometry, bass } = view.results.getState();
    if (!geometry || geometry.revision !== revision) return;
    const value = findings(project, geometry.value, bass?.value ?? null);
    view.results.setState({ findings: { variant, revision, inputsKey: geometry.inputsKey, value } });
  };

  const judgeSoon = () => {
    if (!view.document.getState().gestureOpen) judge();
    else timer ??= setTimeout(judge, FINDINGS_LAG_MS);
  };

  const measure = () => {
    const { project, revision, variant } = view.document.getState();
    const { geometry } = view.results.getState();
    // Subwoofers hide nothing and have no angles: while one is moved not even the key is written anew.
    const same = geometry !== null && measured !== null && sameBesides(measured, project, 'subwoofers');
    const inputsKey = same ? geometry.inputsKey : geometryKey(project);
    measured = project;
    const value = geometry?.inputsKey === inputsKey ? geometry.value : geometryReadout(project);
    view.results.setState({ geometry: { variant, revision, inputsKey, value } });
    judgeSoon();
  };

  let seen = { revision: -1, gestureOpen: false };
  const stopDocument = view.document.subscribe(({ revision, gestureOpen }) => {
    const moved = revision !== seen.revision;
    const released = seen.gestureOpen && !gestureOpen;
    seen = { revision, gestureOpen };
    if (moved) measure();
    else if (released) judge();
  });
  const stopResults = view.results.subscribe((now, before) => {
    if (now.bass?.value !== before.bass?.value) judgeSoon();
  });
  measure();
  return () => {
    if (timer !== null) clearTimeout(timer);
    stopDocument();
    stopResults();
  };
};
