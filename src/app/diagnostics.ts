import type { View } from '../state/view.tsx';

/** What helps to find a fault, as text to paste: the program, the browser and the fault. Nothing of the project is in it. */
export const diagnosticsText = (view: View, fault: string): string => {
  const { revision, gestureOpen, readOnly } = view.document.getState();
  const { mode, reducedMotion } = view.session.getState();
  const { results } = view;
  const { trouble, bass, slice, geometry } = results.getState();
  const behind = [bass, slice, geometry].map((result) => (result ? revision - result.revision : 'none'));
  return [
    `Parterre ${__APP_VERSION__}`,
    navigator.userAgent,
    `window ${window.innerWidth} x ${window.innerHeight} at ${window.devicePixelRatio}`,
    `mode ${mode}, reduced motion ${reducedMotion}, gesture open ${gestureOpen}, only shown ${readOnly}`,
    `results behind by ${behind.join(', ')} revisions, trouble ${trouble !== null}`,
    fault,
  ].join('\n');
};
