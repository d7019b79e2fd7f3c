import { addToSurface, type OnSurfaceKind, partsOf } from '../../model/commands/add-opening.ts';
import type { ItemRef } from '../../model/project.ts';
import { useDocument } from '../../state/view.tsx';
import { itemTitle } from '../naming.ts';
import { useItemActions } from '../useItemActions.ts';

const KINDS: readonly { readonly kind: OnSurfaceKind; readonly word: string }[] = [
  { kind: 'door', word: 'a door' },
  { kind: 'window', word: 'a window' },
  { kind: 'opening', word: 'an opening' },
  { kind: 'panel', word: 'an absorber' },
];

/** What is cut into the chosen surface and lies on it, and how more of it comes there. */
export const SurfaceParts = ({ surface }: { readonly surface: string }) => {
  const project = useDocument((state) => state.project);
  const actions = useItemActions();
  const { openings, patches } = partsOf(project, surface);
  const refs: readonly ItemRef[] = [
    ...openings.map(({ id }): ItemRef => ({ kind: 'opening', id })),
    ...patches.map(({ id }): ItemRef => ({ kind: 'patch', id })),
  ];
  const lying = surface === 'floor' || surface === 'ceiling';
  return (
    <fieldset className="section">
      <legend>On this surface</legend>
      {refs.length > 0 && (
        <ul className="parts">
          {refs.map((ref) => (
            <li key={`${ref.kind}:${ref.id}`}>
              <button type="button" className="word-button" onClick={() => actions.choose([ref])}>
                {itemTitle(project, ref)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="item-actions">
        {KINDS.filter(({ kind }) => !lying || kind === 'panel' || kind === 'opening').map(({ kind, word }) => (
          <button
            key={kind}
            type="button"
            className="word-button is-brass"
            onClick={() => actions.add(`Add ${word}`, (from) => addToSurface(from, kind, surface))}
          >
            Add {word}
          </button>
        ))}
      </div>
    </fieldset>
  );
};
