import { useEffect, useState } from 'react';
import { useSession } from '../../state/view.tsx';
import { useAppActions } from '../actions.ts';
import { Icon } from '../marks/Icon.tsx';

/** One line that says what to try. It goes when it is put away or when its advice has been taken. */
export const FirstVisit = () => {
  const actions = useAppActions();
  const mode = useSession((state) => state.mode);
  const [shown, setShown] = useState(actions?.firstVisit ?? false);
  useEffect(() => {
    if (!shown || mode !== 'sit') return;
    setShown(false);
    actions?.firstVisitSeen();
  }, [shown, mode, actions]);
  if (!shown) return null;
  const putAway = () => {
    setShown(false);
    actions?.firstVisitSeen();
  };
  return (
    <p className="first-visit">
      <span>
        Drag a sofa, a loudspeaker or a subwoofer to move it; sit in any chair of the plan below; drag along the ribbon
        to sweep the bass.
      </span>
      <button type="button" className="icon-button" aria-label="Put this line away" onClick={putAway}>
        <Icon name="close" />
      </button>
    </p>
  );
};
