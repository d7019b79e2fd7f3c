import { useEffect, useState } from 'react';
import { useDocument, useSession } from '../../state/view.tsx';
import { useAppActions } from '../actions.ts';
import { Icon } from '../marks/Icon.tsx';

/**
 * One line that says what to try. It goes when it is put away or when its advice has been taken, and makes way while
 * something is chosen (who has chosen has begun) and to whatever else the page has to say.
 */
export const FirstVisit = ({ says }: { readonly says: string }) => {
  const actions = useAppActions();
  const mode = useSession((state) => state.mode);
  const busy = useSession(({ selection, tool, notices }) => selection !== null || tool !== null || notices.length > 0);
  const readOnly = useDocument((state) => state.readOnly);
  const [shown, setShown] = useState(actions?.firstVisit ?? false);
  useEffect(() => {
    if (!shown || mode !== 'sit') return;
    setShown(false);
    actions?.firstVisitSeen();
  }, [shown, mode, actions]);
  if (!shown || busy || readOnly) return null;
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
