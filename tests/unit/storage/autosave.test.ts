import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import type { Project } from '../../../src/model/project.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { createDocumentStore } from '../../../src/state/document.ts';
import { type AutosaveHooks, autosave, type KeepTrouble, recoverRoom } from '../../../src/storage/autosave.ts';
import { fileNameOf } from '../../../src/storage/file-dialog.ts';
import { memoryShelf } from './memory-shelf.ts';

const demo = projectSchema.parse(twoRow);
const rename = (name: string) => (project: Project) => ({ ok: true as const, project: { ...project, name } });

const hooks = (more: Partial<AutosaveHooks> = {}): AutosaveHooks => ({
  roomId: () => 'a',
  clockMs: () => 1000,
  onKept: () => {},
  onTrouble: () => expect.unreachable(),
  ...more,
});

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

describe('autosave', () => {
  it('writes at each commit, never inside a gesture, and the latest last', async () => {
    const document = createDocumentStore(demo);
    const { shelf, writes } = memoryShelf();
    const kept: string[] = [];
    const saving = autosave(document, shelf, hooks({ onKept: (id) => kept.push(id) }));
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
    await saving.flush();
    expect(writes.at(-1)).toBe('d');
    expect(kept.every((id) => id === 'a')).toBe(true);
    saving.stop();
    const found = await recoverRoom(shelf, 'a');
    expect(found.status === 'found' && found.project.name).toBe('d');
    expect(await shelf.readLast()).toBe('a');
  });

  it('says what the browser’s trouble is once, goes on, and says it again only after a write succeeded', async () => {
    const document = createDocumentStore(demo);
    const { shelf, refuse } = memoryShelf();
    const told: KeepTrouble[] = [];
    autosave(document, shelf, hooks({ onTrouble: (trouble) => told.push(trouble) }));
    refuse(new DOMException('no room left', 'QuotaExceededError'));
    document.actions.apply('rename', rename('a'));
    await settle();
    document.actions.apply('rename', rename('b'));
    await settle();
    expect(told).toEqual(['full']);
    expect(document.getState().project.name).toBe('b');
    expect(document.getState().savedAtMs).toBeNull();
    refuse(null);
    document.actions.apply('rename', rename('c'));
    await settle();
    expect(document.getState().savedAtMs).toBe(1000);
    refuse(new Error('not allowed'));
    document.actions.apply('rename', rename('d'));
    await settle();
    expect(told).toEqual(['full', 'refused']);
  });

  it('writes nothing of a room that is only shown', async () => {
    const document = createDocumentStore(demo);
    const { shelf, writes } = memoryShelf();
    autosave(document, shelf, hooks());
    document.setState({ readOnly: true });
    expect(document.actions.apply('rename', rename('a'))?.allowed).toEqual({ kind: 'otherTab' });
    document.actions.load({ ...demo, name: 'from the other tab' });
    await settle();
    expect(writes).toEqual([]);
  });

  it('recovers nothing from what is not there, and tells what cannot be read apart from it', async () => {
    const { shelf } = memoryShelf();
    expect(await recoverRoom(shelf, undefined)).toEqual({ status: 'none' });
    expect(await recoverRoom(shelf, 'a')).toEqual({ status: 'none' });
    const newer = JSON.stringify({ ...twoRow, version: 99 });
    await shelf.write({ id: 'a', name: '', text: newer, savedAtMs: 0, sketch: null });
    expect(await recoverRoom(shelf, 'a')).toEqual({ status: 'unreadable' });
    const refusing = { ...shelf, read: () => Promise.reject(new Error('no')) };
    expect(await recoverRoom(refusing, 'a')).toEqual({ status: 'none' });
  });
});

describe('file names', () => {
  it('keeps letters of any script and drops what file systems refuse', () => {
    expect(fileNameOf('Café "Größe" 12/6')).toBe('Café -Größe- 12-6.parterre.json');
    expect(fileNameOf('../..')).toBe('room.parterre.json');
    expect(fileNameOf('Old dairy, two rows')).toBe('Old dairy, two rows.parterre.json');
  });
});
