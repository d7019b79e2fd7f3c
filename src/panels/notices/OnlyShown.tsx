import { useDocument } from '../../state/view.tsx';
import { useAppActions } from '../actions.ts';

/** Says that another tab is changing this room, and offers the way to work on here. */
export const OnlyShown = () => {
  const actions = useAppActions();
  const readOnly = useDocument((state) => state.readOnly);
  return (
    <div role="status" className="only-shown-place">
      {readOnly && (
        <p className="only-shown">
          <span>This room is open in another tab. Here it is only shown, and follows what is done there.</span>
          <button type="button" className="word-button is-brass" onClick={() => void actions?.rooms.copy()}>
            Work on a copy
          </button>
        </p>
      )}
    </div>
  );
};
