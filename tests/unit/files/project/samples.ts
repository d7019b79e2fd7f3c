import { readFileSync } from 'node:fs';
import { type ReadResult, readProject } from '../../../../src/files/project/read.ts';
import type { Project } from '../../../../src/model/project.ts';
import { faultLine } from '../../../../src/words/faults.ts';

const SAMPLE = new URL('../../../fixtures/projects/v1/two-row.json', import.meta.url);

/** The frozen version 1 file as text. */
export const sampleText = readFileSync(SAMPLE, 'utf8');

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** The sample with the value at `path` (dots between keys) replaced; undefined takes the key away. */
export const changed = (changes: Record<string, Json | undefined>): string => {
  const root: unknown = JSON.parse(sampleText);
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split('.');
    const last = keys.pop()!;
    const holder = keys.reduce((at, key) => (at as Record<string, unknown>)[key], root) as Record<string, unknown>;
    if (value === undefined) delete holder[last];
    else holder[last] = value;
  }
  return JSON.stringify(root);
};

export const linesOf = (result: ReadResult): string[] => (result.ok ? [] : result.faults.map(faultLine));

/** The lines a text is refused with; none when it is accepted. */
export const refusedLines = (text: string): string[] => linesOf(readProject(bytesOf(text)));

export const accepted = (text: string): Project => {
  const result = readProject(bytesOf(text));
  if (!result.ok) throw new Error(linesOf(result).join('\n'));
  return result.project;
};
