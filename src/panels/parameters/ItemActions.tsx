import { isLocked } from '../../model/items.ts';
import type { ItemRef } from '../../model/project.ts';
import { useDocument } from '../../state/view.tsx';
import { useItemActions } from '../useItemActions.ts';

const STAYS: readonly ItemRef['kind'][] = ['picture', 'surface'];

/** Copy it, take it away, keep it where it is: for hands that have no keys. */
export const ItemActions = ({ item }: { readonly item: ItemRef }) => {
  const actions = useItemActions();
  const locked = useDocument((state) => isLocked(state.project, item));
  if (STAYS.includes(item.kind)) return null;
  return (
    <div className="item-actions">
      <button type="button" className="word-button" onClick={() => actions.duplicate([item])}>
        Duplicate
      </button>
      <button type="button" className="word-button" aria-pressed={locked} onClick={() => actions.lock([item])}>
        {locked ? 'Unlock' : 'Lock'}
      </button>
      <button type="button" className="word-button" disabled={locked} onClick={() => actions.remove([item])}>
        Remove
      </button>
    </div>
  );
};
