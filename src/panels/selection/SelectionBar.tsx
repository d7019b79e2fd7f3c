import { useMemo } from 'react';
import { allLocked } from '../../model/commands/group.ts';
import { isListed } from '../../model/items.ts';
import { partnerOf } from '../../model/pairs.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { chosenItems } from '../../state/chosen.ts';
import type { SessionState } from '../../state/session.ts';
import { useDocument, useSession, useView } from '../../state/view.tsx';
import { useMedia } from '../hooks.ts';
import { Icon } from '../marks/Icon.tsx';
import { useItemActions } from '../useItemActions.ts';
import './selection.css';

const copied = ({ kind }: ItemRef): boolean => kind === 'seat' || isListed(kind);

/** The halves of a pair as one reads them, left first; null where nothing chosen has another half. */
const pairOf = (project: Project, chosen: readonly ItemRef[]): string | null => {
  for (const ref of chosen) {
    const partner = partnerOf(project, ref);
    if (!partner) continue;
    const list = ref.kind === 'loudspeaker' ? project.loudspeakers : project.subwoofers;
    const xOf = (id: string) => list.find((one) => one.id === id)?.atM[0] ?? 0;
    const [left, right] = xOf(ref.id) <= xOf(partner.id) ? [ref.id, partner.id] : [partner.id, ref.id];
    return `${left} + ${right}`;
  }
  return null;
};

const TOOLS: readonly { readonly word: string; readonly tool: NonNullable<SessionState['tool']> }[] = [
  { word: 'Door', tool: { kind: 'opening', what: 'door' } },
  { word: 'Window', tool: { kind: 'opening', what: 'window' } },
  { word: 'Opening', tool: { kind: 'opening', what: 'opening' } },
  { word: 'Absorber', tool: { kind: 'patch', what: 'fibre-panel-50' } },
  { word: 'Box', tool: { kind: 'object', what: 'box' } },
];

const wordOf = ({ kind, what }: NonNullable<SessionState['tool']>): string =>
  (TOOLS.find(({ tool }) => tool.kind === kind && tool.what === what)?.word ?? what).toLowerCase();

/** What can be done with what is chosen and its form does not offer, beside it. The scene puts it there. */
export const SelectionBar = () => {
  const { session } = useView();
  const actions = useItemActions();
  const project = useDocument((state) => state.project);
  const selection = useSession((state) => state.selection);
  const alsoSelected = useSession((state) => state.alsoSelected);
  const tool = useSession((state) => state.tool);
  const gathering = useSession((state) => state.gathering);
  const released = useSession((state) => state.pairsReleased);
  const hidden = useSession(
    ({ mode, dragging, planBoard, stageCleared, barAway }) =>
      mode !== 'overlook' || dragging !== null || planBoard || stageCleared || barAway,
  );
  const formShown = useSession((state) => state.formShown);
  const coarse = useMedia('(pointer: coarse)');
  const chosen = useMemo(() => chosenItems(project, { selection, alsoSelected }), [project, selection, alsoSelected]);
  if (hidden || (chosen.length === 0 && !tool && !gathering)) return null;
  const button = (word: string, onClick: () => void, pressed?: boolean) => (
    <button key={word} type="button" aria-pressed={pressed} onClick={onClick}>
      {word}
    </button>
  );
  if (tool)
    return (
      <div className="selection-bar" data-selection-bar="true" role="toolbar" aria-label="Drawing">
        <span>Draw the {wordOf(tool)} on a wall, the floor or the ceiling</span>
        {button('Leave', () => session.setState({ tool: null }))}
      </div>
    );
  const surface = chosen.length === 1 && chosen[0].kind === 'surface';
  const pair = pairOf(project, chosen);
  const locked = allLocked(project, chosen);
  const several = chosen.length > 1 || gathering;
  const own = !several && formShown ? [] : chosen.filter(copied);
  const gathers = (coarse || gathering) && !surface;
  if (!several && !surface && !pair && own.length === 0 && !gathers) return null;
  return (
    <div
      className={surface ? 'selection-bar is-drawing' : 'selection-bar'}
      data-selection-bar="true"
      role="toolbar"
      aria-label={surface ? 'Draw on it' : 'The chosen things'}
    >
      {several && <span>{chosen.length} chosen</span>}
      {surface && <span>Draw</span>}
      {surface && TOOLS.map(({ word, tool: next }) => button(word, () => session.setState({ tool: next })))}
      {surface && button('Plan', () => session.setState({ planBoard: true }))}
      {surface && (
        <button
          type="button"
          className="icon-button"
          aria-label="Choose nothing"
          onClick={() => session.setState({ selection: null })}
        >
          <Icon name="close" />
        </button>
      )}
      {pair && button(`${pair} together`, () => session.setState({ pairsReleased: !released }), !released)}
      {own.length > 0 && button(coarse ? 'Copy' : 'Duplicate', () => actions.duplicate(chosen))}
      {own.length > 0 && button(locked ? 'Unlock' : 'Lock', () => actions.lock(chosen), locked)}
      {own.length > 0 && !locked && button('Remove', () => actions.remove(chosen))}
      {gathers &&
        button(gathering ? 'Done' : 'Choose more', () => session.setState({ gathering: !gathering }), gathering)}
    </div>
  );
};
