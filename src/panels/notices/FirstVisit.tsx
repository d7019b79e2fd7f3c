import { useEffect, useState } from 'react';
import { useSession } from '../../state/view.tsx';
import { useAppActions } from '../actions.ts';
import { Icon } from '../marks/Icon.tsx';

/**
 * One line that says what to try. It goes when it is put away or when its advice has been taken, and makes way while
 * something is chosen: who has chosen has begun.
 */
export const FirstVisit = ({ says }: { readonly says: string }) => {
  const actions = useAppActions();
  const mode = useSession((state) => state.mode);
  const chosen = useSession(({ selection, tool }) => selection !== null || tool !== null);
  const [shown, setShown] = useState(actions?.firstVisit ?? false);
  useEffect(() => {
    if (!shown || mode !== 'sit') return;
    setShown(false);
    actions?.firstVisitSeen();
  }, [shown, mode, actions]);
  if (!shown || chosen) return null;
  const putAway = () => {
    setShown(false);
    actions?.firstVisitSeen();
  };
  return (
    <p className="first-visit">
      <span>{says}</span>
      <button type="button" className="icon-button" aria-label="Put this line away" onClick={putAway}>
        <Icon name="close" />
      </button>
    </p>
  );
};
