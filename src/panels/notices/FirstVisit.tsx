import { useEffect, useState } from 'react';
import { useDocument, useSession } from '../../state/view.tsx';
import { useAppActions } from '../actions.ts';
import { Icon } from '../marks/Icon.tsx';

/**
 * One line that says what to try. It goes for good when it is put away or when its advice has been taken: something has
 * been moved or sat in. It makes way while something is chosen (who has chosen has begun) and to whatever else the page has
 * to say.
 */
export const FirstVisit = ({ says }: { readonly says: string }) => {
  const actions = useAppActions();
  const mode = useSession((state) => state.mode);
  const busy = useSession(({ selection, tool, notices }) => selection !== null || tool !== null || notices.length > 0);
  const readOnly = useDocument((state) => state.readOnly);
  const changed = useDocument((state) => state.canUndo);
  const [shown, setShown] = useState(actions?.firstVisit ?? false);
  const taken = mode === 'sit' || changed;
  useEffect(() => {
    if (!shown || !taken) return;
    setShown(false);
    actions?.firstVisitSeen();
  }, [shown, taken, actions]);
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
