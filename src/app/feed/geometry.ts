import { findings } from '../../analysis/findings.ts';
import { geometryReadout } from '../../analysis/geometry.ts';
import { geometryKey } from '../../analysis/inputs/keys.ts';
import type { View } from '../../state/view.tsx';

/** Sight, angles and findings: cheap, so they are computed in the frame of the edit, and only when their inputs changed. */
export const feedGeometry = (view: View): (() => void) => {
  const update = () => {
    const { project, revision, variant } = view.document.getState();
    const { geometry, bass } = view.results.getState();
    const inputsKey = geometryKey(project);
    const kept = geometry?.inputsKey === inputsKey ? geometry.value : geometryReadout(project);
    const measured = bass?.value ?? null;
    view.results.setState({
      geometry: { variant, revision, inputsKey, value: kept },
      findings: { variant, revision, inputsKey, value: findings(project, kept, measured) },
    });
  };

  let seen = -1;
  const stopDocument = view.document.subscribe(({ revision }) => {
    if (revision === seen) return;
    seen = revision;
    update();
  });
  const stopResults = view.results.subscribe((now, before) => {
    if (now.bass !== before.bass) update();
  });
  update();
  return () => {
    stopDocument();
    stopResults();
  };
};
