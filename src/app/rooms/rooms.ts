import { emptyRoom, type RoomLengths } from '../../model/presets/empty-room.ts';
import type { Project } from '../../model/project.ts';
import { referenceSeatId } from '../../model/seating.ts';
import type { RoomActions } from '../../panels/actions.ts';
import { wholeView } from '../../state/session.ts';
import type { View } from '../../state/view.tsx';
import { autosave, recoverRoom } from '../../storage/autosave.ts';
import { offerDownload } from '../../storage/file-dialog.ts';
import type { KeptRoom, Shelf } from '../../storage/shelf.ts';
import { claimRoom, type TabTalk } from '../../storage/tabs.ts';
import { notify } from '../files.ts';
import { demoCards, loadDemo } from './demos.ts';
import { TROUBLE } from './words.ts';

export interface Rooms extends RoomActions {
  /** Shows a project as a new room of its own: what was open stays kept as it is. */
  take(project: Project): Promise<void>;
}

export interface RoomsNeed {
  readonly view: View;
  readonly shelf: Shelf;
  readonly talk: TabTalk;
  /** The room that is open when the page begins; a new one has not been kept yet. */
  readonly firstId: string;
  /** This tab's own memory of its room, so that a reload finds it again. */
  rememberHere(id: string): void;
  newId(): string;
  clockMs(): number;
}

const showProject = ({ document, session, results }: View, project: Project): void => {
  // Numbers of the room before are nobody's while those of this one are worked out.
  const empty = results.getInitialState();
  results.setState(({ choice }) => ({ ...empty, choice: { ...choice, search: empty.choice.search } }));
  document.actions.load(project);
  session.setState((state) => ({
    ...wholeView(state),
    seatId: referenceSeatId(project),
    selection: null,
    hovered: null,
    spotlight: null,
  }));
};

/** The rooms of this browser: one is open here, each may be changed by one tab at a time. */
export const createRooms = ({ view, shelf, talk, firstId, rememberHere, newId, clockMs }: RoomsNeed): Rooms => {
  let id = firstId;
  let letGo = () => {};
  let removed: KeptRoom | null = null;

  const keeping = autosave(view.document, shelf, {
    roomId: () => id,
    clockMs,
    onKept: talk.kept,
    onTrouble: (trouble) => notify(view, TROUBLE[trouble]),
  });

  /** Shows what is kept of the open room, when another tab has changed it. */
  const follow = async () => {
    const found = await recoverRoom(shelf, id);
    if (found.status !== 'found') return;
    view.document.actions.load(found.project);
    view.document.setState({ savedAtMs: found.savedAtMs });
  };

  /** Resolves once it is known whether this tab or another may change the room. */
  const claim = () =>
    new Promise<void>((resolve) => {
      letGo();
      rememberHere(id);
      let waited = false;
      letGo = claimRoom(id, (mine) => {
        if (!mine) waited = true;
        view.document.setState({ readOnly: !mine });
        if (mine && waited) void follow();
        resolve();
      });
    });

  const change = async (nextId: string, project: Project, savedAtMs: number | null) => {
    if (!view.document.getState().readOnly) {
      view.document.actions.commit();
      if (view.document.getState().savedAtMs !== null) await keeping.flush();
    }
    // Shown before it is claimed: until then nothing may be written over what is kept.
    view.document.setState({ readOnly: true, savedAtMs });
    id = nextId;
    showProject(view, project);
    await claim();
  };

  const take = async (project: Project) => {
    await change(newId(), project, null);
    await keeping.flush();
  };

  talk.onKept((other) => {
    if (other === id && view.document.getState().readOnly) void follow();
  });
  void claim();

  return {
    take,
    currentId: () => id,
    demos: demoCards,
    async list() {
      const kept = await shelf.list();
      return kept
        .map(({ id, name, savedAtMs, sketch }) => ({ id, name: name || 'Kept before', savedAtMs, sketch }))
        .sort((a, b) => b.savedAtMs - a.savedAtMs);
    },
    async open(nextId) {
      if (nextId === id) return;
      const found = await recoverRoom(shelf, nextId);
      if (found.status === 'found') {
        await change(nextId, found.project, found.savedAtMs);
        await shelf.writeLast(nextId).catch(() => {});
      } else if (found.status === 'unreadable') {
        notify(view, {
          tone: 'caution',
          title: 'That room was kept by another version of Parterre',
          lines: ['It stays as it is. Save it as a file to open it with the version that made it.'],
          action: { word: 'Save it as a file', run: () => void saveKept(nextId) },
        });
      }
    },
    openDemo: async (demo) => {
      const project = await loadDemo(demo);
      if (project) await take(project);
    },
    begin: (lengths: RoomLengths) => take(emptyRoom(lengths)),
    copy: () => {
      const { project } = view.document.getState();
      return take({ ...project, name: `${project.name}, copy`.slice(0, 200) });
    },
    async remove(other) {
      if (other === id) return;
      removed = (await shelf.read(other)) ?? null;
      await shelf.remove(other);
    },
    async putBack() {
      if (removed) await shelf.write(removed);
      removed = null;
    },
  };

  async function saveKept(other: string): Promise<void> {
    const kept = await shelf.read(other);
    if (kept) offerDownload('kept-room.parterre.json', kept.text);
  }
};
