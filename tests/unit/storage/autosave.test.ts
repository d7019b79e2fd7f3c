import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import type { Project } from '../../../src/model/project.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { createDocumentStore } from '../../../src/state/document.ts';
import { autosave, recoverProject, type Shelf } from '../../../src/storage/autosave.ts';
import { fileNameOf } from '../../../src/storage/file-dialog.ts';

const demo = projectSchema.parse(twoRow);
const rename = (name: string) => (project: Project) => ({ ok: true as const, project: { ...project, name } });

const memoryShelf = () => {
  const writes: string[] = [];
  let last: unknown;
  const shelf: Shelf = {
    read: async () => last,
    write: async (saved) => {
      await Promise.resolve();
      writes.push(JSON.parse(saved.text).name);
      last = saved;
    },
  };
  return { shelf, writes };
};

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

describe('autosave', () => {
  it('writes at each commit, never inside a gesture, and the latest last', async () => {
    const document = createDocumentStore(demo);
    const { shelf, writes } = memoryShelf();
    const stop = autosave(
      document,
      shelf,
      () => 1000,
      () => expect.unreachable(),
    );
    document.actions.mark('rename');
    document.actions.apply('rename', rename('a'));
    document.actions.apply('rename', rename('b'));
    await settle();
    expect(writes).toEqual([]);
    document.actions.commit();
    await settle();
    expect(writes).toEqual(['b']);
    expect(document.getState().savedAtMs).toBe(1000);
    document.actions.apply('rename', rename('c'));
    document.actions.apply('rename', rename('d'));
    await settle();
    expect(writes.at(-1)).toBe('d');
    stop();
    expect((await recoverProject(shelf))?.project.name).toBe('d');
  });

  it('says once that the browser keeps nothing, and goes on', async () => {
    const document = createDocumentStore(demo);
    let told = 0;
    const shelf: Shelf = { read: async () => undefined, write: () => Promise.reject(new Error('quota')) };
    autosave(
      document,
      shelf,
      () => 0,
      () => {
        told += 1;
      },
    );
    document.actions.apply('rename', rename('a'));
    await settle();
    document.actions.apply('rename', rename('b'));
    await settle();
    expect(told).toBe(1);
    expect(document.getState().project.name).toBe('b');
    expect(document.getState().savedAtMs).toBeNull();
  });

  it('recovers nothing from what cannot be read', async () => {
    for (const kept of [undefined, null, 7, { text: 4 }, { text: '{"format":"other"}' }]) {
      expect(await recoverProject({ read: async () => kept, write: async () => {} })).toBeNull();
    }
    expect(await recoverProject({ read: () => Promise.reject(new Error('no')), write: async () => {} })).toBeNull();
  });
});

describe('file names', () => {
  it('keeps letters of any script and drops what file systems refuse', () => {
    expect(fileNameOf('Café "Größe" 12/6')).toBe('Café -Größe- 12-6.parterre.json');
    expect(fileNameOf('../..')).toBe('room.parterre.json');
    expect(fileNameOf('Old dairy, two rows')).toBe('Old dairy, two rows.parterre.json');
  });
});
