import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const SRC = resolve(import.meta.dirname, '../src');

/** What each folder may import from inside the house. An engine is a folder of its own below engines/. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  math: [],
  model: ['math'],
  shapes: ['model', 'math'],
  'engines/bass': ['math'],
  'engines/sight': ['math'],
  'engines/loudspeakers': ['math'],
  'engines/acoustics': ['math'],
  'engines/movement': ['math'],
  analysis: ['shapes', 'engines', 'model', 'math'],
  proposals: ['analysis', 'engines', 'model', 'math'],
  words: ['proposals', 'analysis', 'model', 'math'],
  files: ['shapes', 'proposals', 'analysis', 'words', 'model', 'math'],
  compute: ['proposals', 'analysis', 'engines', 'model', 'math'],
  state: ['proposals', 'analysis', 'model', 'math'],
  storage: ['files', 'state', 'model', 'math'],
  scene: ['state', 'shapes', 'analysis', 'words', 'engines/movement', 'model', 'math'],
  panels: ['state', 'proposals', 'analysis', 'words', 'model', 'math'],
  app: ['*'],
  build: ['files', 'analysis', 'shapes', 'engines', 'words', 'model', 'math'],
};

const PURE = ['math', 'model', 'shapes', 'engines', 'analysis', 'proposals', 'words', 'files'];
const FORBIDDEN_PACKAGES = /^(three|react|react-dom|@react-three|leva|zustand|idb-keyval|camera-controls|node:)/;
const FORBIDDEN_GLOBALS =
  /\b(window|document|navigator|localStorage|performance|Date|console)\s*[.(]|Math\.random|new Date/;

const filesBelow = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));

const roomOf = (path: string): string => {
  const parts = relative(SRC, path).split('/');
  if (parts.length === 1) return parts[0];
  return parts[0] === 'engines' ? `engines/${parts[1]}` : parts[0];
};

const importsOf = (text: string): string[] =>
  [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((match) => match[1]);

const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '');
const withoutStrings = (text: string): string => text.replace(/'[^'\n]*'|`[^`]*`/g, "''");

const files = filesBelow(SRC).map((path) => ({ path, room: roomOf(path), text: readFileSync(path, 'utf8') }));

describe('architecture', () => {
  it('looks at the whole house', () => {
    expect(files.length).toBeGreaterThan(120);
  });

  it('keeps every folder to the layers it may stand on', () => {
    const broken: string[] = [];
    for (const { path, room, text } of files) {
      if (room.endsWith('.ts')) continue;
      const allowed = MAY_IMPORT[room];
      if (!allowed) {
        broken.push(`${relative(SRC, path)}: no layer is stated for ${room}`);
        continue;
      }
      for (const name of importsOf(text).filter((name) => name.startsWith('.'))) {
        const target = roomOf(resolve(path, '..', name));
        const fits =
          target === room ||
          allowed.some((layer) => layer === '*' || target === layer || target.startsWith(`${layer}/`));
        if (!fits) broken.push(`${relative(SRC, path)} imports ${name}`);
      }
    }
    expect(broken).toEqual([]);
  });

  it('keeps the pure folders free of three, React, the document, clocks and chance', () => {
    const broken: string[] = [];
    for (const { path, room, text } of files) {
      if (!PURE.includes(room.split('/')[0])) continue;
      for (const name of importsOf(text))
        if (FORBIDDEN_PACKAGES.test(name)) broken.push(`${relative(SRC, path)} imports ${name}`);
      const hit = FORBIDDEN_GLOBALS.exec(withoutStrings(withoutComments(text)));
      // The project document is what the model calls `document`; the page's is what is meant here.
      if (hit) broken.push(`${relative(SRC, path)} uses ${hit[0]}`);
    }
    expect(broken).toEqual([]);
  });

  it('lets nobody import the composition root', () => {
    const broken = files.filter(
      ({ path, room, text }) =>
        room !== 'app' &&
        importsOf(text).some((name) => name.startsWith('.') && roomOf(resolve(path, '..', name)) === 'app'),
    );
    expect(broken.map(({ path }) => relative(SRC, path))).toEqual([]);
  });
});
