import { useEffect } from 'react';
import type { AppActions } from '../panels/actions.ts';
import { OUTLINE_KEYS } from '../panels/outline/keys.ts';
import { takeBackRefused } from '../panels/parameters/refused.ts';
import { frequencyOfStep, stepOfFrequency } from '../panels/ribbon/levels.ts';
import type { KeyGroup } from '../panels/sheets/KeysSheet.tsx';
import { itemActions } from '../panels/useItemActions.ts';
import { chosenItems } from '../state/chosen.ts';
import { type LightPreset, type SessionState, wholeView } from '../state/session.ts';
import type { View } from '../state/view.tsx';
import { focusNextRegion, focusRightColumn, focusSearch } from './regions.ts';

/** What a key may reach. */
export interface Reach {
  readonly view: View;
  readonly actions: AppActions | null;
  showKeys(): void;
  showRooms(): void;
}

interface Shortcut {
  /** As KeyboardEvent.key in lower case; with `ctrl`, Control or Command is held. */
  readonly keys: readonly string[];
  readonly ctrl?: boolean;
  /** Left out, a plain key means the same with Shift and without; one with `ctrl` goes without. */
  readonly shift?: boolean;
  /** Writes no letter, so it is heard while someone is writing. */
  readonly always?: boolean;
  readonly shown: readonly string[];
  readonly does: string;
  run(reach: Reach): void;
}

const LIGHTS: readonly LightPreset[] = ['clean', 'dim', 'dark'];

const session =
  (change: (state: SessionState) => Partial<SessionState>) =>
  ({ view }: Reach): void =>
    view.session.setState(change);

const overlay = (name: keyof SessionState['overlays']) =>
  session(({ overlays }) => ({ overlays: { ...overlays, [name]: !overlays[name] } }));

const slice = (change: (state: SessionState['slice']) => Partial<SessionState['slice']>) =>
  session((state) => ({ slice: { ...state.slice, ...change(state.slice) } }));

const PLANES: readonly SessionState['slice']['plane'][] = ['level', 'across', 'along'];
const COLUMNS: readonly SessionState['rightColumn'][] = ['seat', 'bass', 'subwoofers', 'findings'];
const KINDS: readonly SessionState['slice']['as'][] = ['level', 'pressure', 'difference'];

const following = <T>(all: readonly T[], now: T): T => all[(all.indexOf(now) + 1) % all.length];

const stepFrequency = (by: number) =>
  session(({ frequencyHz }) => ({ frequencyHz: frequencyOfStep(stepOfFrequency(frequencyHz) + by) }));

const stepSeat =
  (by: number) =>
  ({ view }: Reach): void => {
    const ids = view.document.getState().project.rows.flatMap((row) => row.seats.map(({ id }) => id));
    const at = ids.indexOf(view.session.getState().seatId);
    const seatId = ids[(at + by + ids.length) % ids.length];
    view.session.setState({ seatId, selection: { kind: 'seat', id: seatId } });
  };

/** A command on all that is chosen: the panels' own, with what they say. */
const onChosen =
  (command: 'duplicate' | 'lock' | 'remove') =>
  ({ view }: Reach): void => {
    const chosen = chosenItems(view.document.getState().project, view.session.getState());
    const things = chosen.filter(({ kind }) => kind !== 'picture' && kind !== 'surface');
    if (things.length > 0) itemActions(view)[command](things);
  };

const GROUPS: readonly { readonly title: string; readonly shortcuts: readonly Shortcut[] }[] = [
  {
    title: 'Where you are',
    shortcuts: [
      {
        keys: ['1'],
        shown: ['1'],
        does: 'Overlook the room; pressed again, the whole of it',
        run: session((state) => (state.mode === 'overlook' ? wholeView(state) : { mode: 'overlook' })),
      },
      { keys: ['2'], shown: ['2'], does: 'Sit in the chosen seat', run: session(() => ({ mode: 'sit' })) },
      { keys: ['['], shown: ['['], does: 'The seat before', run: stepSeat(-1) },
      { keys: [']'], shown: [']'], does: 'The next seat', run: stepSeat(1) },
      {
        keys: ['`', 'h'],
        shown: ['`', 'H'],
        does: 'Clear the stage, and bring everything back',
        run: session(({ stageCleared }) => ({ stageCleared: !stageCleared })),
      },
      {
        keys: ['escape'],
        shown: ['Esc'],
        does: 'Bring the panels back; stop showing what a finding is about; put the curves away; stand up; choose nothing',
        run: session(({ mode, spotlight, stageCleared, bassSheet }) => {
          if (stageCleared) return { stageCleared: false };
          if (spotlight) return { spotlight: null };
          if (bassSheet) return { bassSheet: null };
          return mode === 'sit' ? { mode: 'overlook' } : { selection: null };
        }),
      },
      {
        keys: ['f6'],
        shift: false,
        always: true,
        shown: ['F6'],
        does: 'To the next part of the page: top line, outline, form, room, right column, seat plan, ribbon',
        run: () => focusNextRegion(1),
      },
      {
        keys: ['f6'],
        shift: true,
        always: true,
        shown: ['Shift', 'F6'],
        does: 'To the part before',
        run: () => focusNextRegion(-1),
      },
    ],
  },
  {
    title: 'The project',
    shortcuts: [
      {
        keys: ['z'],
        ctrl: true,
        shift: true,
        shown: ['Ctrl', 'Shift', 'Z'],
        does: 'Redo',
        run: ({ view }) => view.document.actions.redo(),
      },
      {
        keys: ['z'],
        ctrl: true,
        shown: ['Ctrl', 'Z'],
        does: 'Undo; what a field would not take is put back first',
        run: ({ view }) => {
          if (!takeBackRefused(view)) view.document.actions.undo();
        },
      },
      { keys: ['r'], shown: ['R'], does: 'Rooms: begin one, open one', run: ({ showRooms }) => showRooms() },
      { keys: ['o'], ctrl: true, shown: ['Ctrl', 'O'], does: 'Open a file', run: ({ actions }) => actions?.openFile() },
      { keys: ['s'], ctrl: true, shown: ['Ctrl', 'S'], does: 'Save a file', run: ({ actions }) => actions?.saveFile() },
      { keys: ['?'], shown: ['?'], does: 'This sheet', run: ({ showKeys }) => showKeys() },
    ],
  },
  {
    title: 'What is chosen',
    shortcuts: [
      { keys: ['d'], ctrl: true, shown: ['Ctrl', 'D'], does: 'Duplicate it', run: onChosen('duplicate') },
      { keys: ['u'], shown: ['U'], does: 'Lock it, or unlock it', run: onChosen('lock') },
      { keys: ['delete', 'backspace'], shown: ['Del'], does: 'Remove it', run: onChosen('remove') },
      {
        keys: ['j'],
        shown: ['J'],
        does: 'Pairs move together, or each by itself',
        run: session(({ pairsReleased }) => ({ pairsReleased: !pairsReleased })),
      },
      { keys: ['e'], shown: ['E'], does: 'Draw the plan', run: session(() => ({ planBoard: true })) },
    ],
  },
  {
    title: 'What is shown',
    shortcuts: [
      { keys: ['g'], shown: ['G'], does: 'Sightlines', run: overlay('sightlines') },
      { keys: ['c'], shown: ['C'], does: 'Cones from the loudspeakers', run: overlay('cones') },
      { keys: ['p'], shown: ['P'], does: 'People in the seats', run: overlay('people') },
      {
        keys: ['b'],
        shown: ['B'],
        does: 'Bass floor',
        run: slice(({ shown }) => ({ shown: !shown })),
      },
      {
        keys: ['n'],
        shown: ['N'],
        does: 'Bass floor at the ears or on the carpet',
        run: slice(({ height }) => ({ plane: 'level', height: height === 'ear' ? 'carpet' : 'ear' })),
      },
      {
        keys: ['x'],
        shown: ['X'],
        does: 'Bass floor level, standing across, standing along the room',
        run: slice(({ plane }) => ({ plane: following(PLANES, plane) })),
      },
      {
        keys: ['v'],
        shown: ['V'],
        does: 'Bass floor as level, pressure, difference from the seats’ mean',
        run: slice(({ as }) => ({ as: following(KINDS, as) })),
      },
      {
        keys: ['m'],
        shown: ['M'],
        does: 'Bass floor at the cursor’s frequency, or the mean of a band',
        run: slice(({ span, as }) => ({
          span: span === 'one' ? 'band' : 'one',
          as: span === 'one' && as === 'pressure' ? 'level' : as,
        })),
      },
      {
        keys: ['l'],
        shown: ['L'],
        does: 'Light: clean, dim, dark',
        run: session(({ light }) => ({ light: LIGHTS[(LIGHTS.indexOf(light) + 1) % LIGHTS.length] })),
      },
      {
        keys: ['f'],
        shown: ['F'],
        does: 'Seat card, bass, subwoofers, findings',
        run: ({ view }) => {
          const rightColumn = following(COLUMNS, view.session.getState().rightColumn);
          view.session.setState({ rightColumn });
          focusRightColumn(rightColumn);
        },
      },
      {
        keys: ['i'],
        shown: ['I'],
        does: 'Better places for the subwoofers: Enter looks for them',
        run: ({ view }) => {
          view.session.setState({ rightColumn: 'subwoofers' });
          focusSearch();
        },
      },
      {
        keys: ['k'],
        shown: ['K'],
        does: 'Curves of the seats over the band',
        run: session(({ bassSheet }) => ({ bassSheet: bassSheet === 'curves' ? null : 'curves' })),
      },
      {
        keys: ['d'],
        shown: ['D'],
        does: 'Picture of the decay over the band',
        run: session(({ bassSheet }) => ({ bassSheet: bassSheet === 'decay' ? null : 'decay' })),
      },
      { keys: [','], shown: [','], does: 'Frequency down a 24th of an octave', run: stepFrequency(-1) },
      { keys: ['.'], shown: ['.'], does: 'Frequency up a 24th of an octave', run: stepFrequency(1) },
    ],
  },
];

/** The table as the sheet of keys shows it. */
export const KEY_GROUPS: readonly KeyGroup[] = [
  ...GROUPS.map(({ title, shortcuts }) => ({
    title,
    lines: shortcuts.map(({ shown, does }) => ({ keys: shown, does })),
  })),
  OUTLINE_KEYS,
];

const writing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target.tagName === 'TEXTAREA' ||
    target.tagName === 'SELECT' ||
    (target instanceof HTMLInputElement && !['radio', 'range', 'checkbox', 'button'].includes(target.type)));

/** The shortcut a key press means, or undefined. Plain keys mean nothing while someone is writing. */
export const shortcutFor = (event: KeyboardEvent): Shortcut | undefined => {
  const ctrl = event.ctrlKey || event.metaKey;
  if (event.altKey) return undefined;
  const writes = !ctrl && writing(event.target);
  const key = event.key.toLowerCase();
  return GROUPS.flatMap(({ shortcuts }) => shortcuts).find(
    (one) =>
      one.keys.includes(key) &&
      (one.always || !writes) &&
      (one.ctrl ?? false) === ctrl &&
      (one.shift ?? (one.ctrl ? false : event.shiftKey)) === event.shiftKey,
  );
};

/** Answers the keys while the page is open. */
export const useShortcuts = (reach: Reach, sheetOpen: boolean): void => {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || sheetOpen) return;
      const shortcut = shortcutFor(event);
      if (!shortcut) return;
      event.preventDefault();
      shortcut.run(reach);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [reach, sheetOpen]);
};
