import type { KeptRoom, Shelf } from '../../../src/storage/shelf.ts';

/** A shelf in memory that can be told to refuse. `writes` holds the names in the order they were written. */
export const memoryShelf = () => {
  const rooms = new Map<string, KeptRoom>();
  const writes: string[] = [];
  let last: string | undefined;
  let refusal: unknown = null;
  const shelf: Shelf = {
    list: async () => [...rooms.values()],
    read: async (id) => rooms.get(id),
    async write(room) {
      await Promise.resolve();
      if (refusal !== null) throw refusal;
      writes.push(room.name);
      rooms.set(room.id, room);
    },
    remove: async (id) => {
      rooms.delete(id);
    },
    readLast: async () => last,
    writeLast: async (id) => {
      last = id;
    },
  };
  return {
    shelf,
    writes,
    refuse(fault: unknown) {
      refusal = fault;
    },
  };
};
