import type { Beside } from '../../proposals/beside.ts';
import { useDocument, useSession, useView } from '../../state/view.tsx';
import { seatTitle } from '../naming.ts';

/** Lays something over the curves and opens them: at the chosen seat, with every other seat's numbers in the table behind. */
export const OverCurves = ({ beside, what }: { readonly beside: Beside; readonly what: string }) => {
  const { session } = useView();
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const shown = useSession((state) => state.beside === beside && state.bassSheet === 'curves');
  const show = () => {
    session.setState(shown ? { beside: 'nothing' } : { beside, bassSheet: 'curves' });
    // On a phone the curves stand further up in the same sheet.
    requestAnimationFrame(() => document.querySelector('.bass-plots')?.scrollIntoView({ block: 'nearest' }));
  };
  return (
    <button type="button" className="word-button" aria-pressed={shown} onClick={show}>
      Over the curve of {seatTitle(project, seatId)}
      <span className="unseen">: {what}</span>
    </button>
  );
};
