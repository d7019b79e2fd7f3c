import { createStore, del, entries, get, set } from 'idb-keyval';
import type { PlanSketch } from '../model/plan-sketch.ts';

/** A room as this browser keeps it. */
export interface KeptRoom {
  readonly id: string;
  readonly name: string;
  /** The project file's text: read with the care a file gets, whoever wrote it. */
  readonly text: string;
  readonly savedAtMs: number;
  readonly sketch: PlanSketch | null;
}

/** Where the browser keeps rooms; tests pass their own. Every call may be refused. */
export interface Shelf {
  list(): Promise<KeptRoom[]>;
  read(id: string): Promise<KeptRoom | undefined>;
  write(room: KeptRoom): Promise<void>;
  remove(id: string): Promise<void>;
  /** The room that was last written or opened, so that the next visit begins with it. */
  readLast(): Promise<string | undefined>;
  writeLast(id: string): Promise<void>;
}

const LAST = 'parterre/last-room';
/** Where a version without a list of rooms kept its only one. */
const ONLY_ROOM = 'parterre/autosave/main';

const isKept = (value: unknown): value is KeptRoom => {
  const room = value as Partial<KeptRoom> | null;
  return typeof room === 'object' && room !== null && typeof room.id === 'string' && typeof room.text === 'string';
};

/** Rooms in IndexedDB, one record a room. */
export const browserShelf = (): Shelf => {
  const rooms = createStore('parterre-rooms', 'rooms');
  const adopt = async () => {
    const only = (await get(ONLY_ROOM)) as { text?: unknown; savedAtMs?: unknown } | undefined;
    if (typeof only?.text !== 'string') return;
    const savedAtMs = typeof only.savedAtMs === 'number' ? only.savedAtMs : 0;
    await set('kept-before', { id: 'kept-before', name: '', text: only.text, savedAtMs, sketch: null }, rooms);
    await set(LAST, 'kept-before');
    await del(ONLY_ROOM);
  };
  return {
    list: async () => (await entries<string, unknown>(rooms)).map(([, room]) => room).filter(isKept),
    async read(id) {
      const room = await get(id, rooms);
      return isKept(room) ? room : undefined;
    },
    write: (room) => set(room.id, room, rooms),
    remove: (id) => del(id, rooms),
    async readLast() {
      await adopt();
      return get(LAST);
    },
    writeLast: (id) => set(LAST, id),
  };
};
