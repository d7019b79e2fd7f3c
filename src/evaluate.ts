import { createHash } from 'node:crypto';
import { fstatSync, openSync, readSync, writeFileSync } from 'node:fs';
import { parseFrequencies } from './analysis/evaluate/frequencies.ts';
import { evaluateProject } from './analysis/evaluate.ts';
import { readProject } from './files/project/read.ts';
import { LARGEST_FILE_BYTES } from './files/project/text.ts';
import { escapeText } from './model/paths.ts';
import { faultLine } from './words/faults.ts';
import { noticeLine } from './words/notices.ts';

const USAGE = 'npm run -s evaluate -- FILE [--frequencies start:stop:step] [--out FILE]';

/** A fault that is told in one line, with exit code 2. */
class Told extends Error {}

const shown = (text: string): string => escapeText(JSON.stringify(text.length > 200 ? `${text.slice(0, 200)}…` : text));

interface Options {
  readonly file: string;
  readonly frequenciesHz: Float64Array | null;
  readonly out: string | null;
}

const frequenciesOf = (text: string): Float64Array => {
  const list = parseFrequencies(text);
  if (!list.ok) throw new Told(`--frequencies: holds ${shown(text)}; allowed: ${list.why}`);
  return list.frequenciesHz;
};

const optionsOf = (args: readonly string[]): Options => {
  let file: string | null = null;
  let frequenciesHz: Float64Array | null = null;
  let out: string | null = null;
  const waiting = [...args];
  for (let arg = waiting.shift(); arg !== undefined; arg = waiting.shift()) {
    const [name, ...inline] = arg.startsWith('--') ? arg.split('=') : [arg];
    if (name === '--frequencies' || name === '--out') {
      const value = inline.length > 0 ? inline.join('=') : waiting.shift();
      if (value === undefined || value === '') throw new Told(`${name}: holds nothing; allowed: ${USAGE}`);
      if (name === '--out') out = value;
      else frequenciesHz = frequenciesOf(value);
    } else if (arg.startsWith('-')) throw new Told(`option ${shown(arg)}: not known; allowed: --frequencies, --out`);
    else if (file === null) file = arg;
    else throw new Told(`argument ${shown(arg)}: a second file; allowed: one file`);
  }
  if (file === null) throw new Told(`file: none given; allowed: ${USAGE}`);
  return { file, frequenciesHz, out };
};

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'not there',
  EACCES: 'not allowed to be read or written',
  EPERM: 'not allowed to be read or written',
  EISDIR: 'a folder',
  ENOTDIR: 'in something that is no folder',
  ENOSPC: 'on a full disk',
  ENAMETOOLONG: 'a name that is too long',
};

const reasonOf = (error: unknown): string => {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : 'unknown reason';
  return reasons[code] ?? `not usable (${code})`;
};

const CHUNK_BYTES = 1 << 16;

/** A file, or what stands in for one such as a pipe, read no further than what shows that it is too large. */
const readUpTo = (descriptor: number, mostBytes: number): Uint8Array => {
  const chunks: Uint8Array[] = [];
  let size = 0;
  while (size <= mostBytes) {
    const chunk = new Uint8Array(CHUNK_BYTES);
    const count = readSync(descriptor, chunk);
    if (count === 0) break;
    chunks.push(chunk.subarray(0, count));
    size += count;
  }
  return Buffer.concat(chunks);
};

const bytesOf = (file: string): Uint8Array => {
  try {
    const descriptor = openSync(file, 'r');
    const { size } = fstatSync(descriptor);
    if (size > LARGEST_FILE_BYTES)
      throw new Told(`file: holds ${size} bytes; allowed: up to ${LARGEST_FILE_BYTES} bytes (5 MB)`);
    return readUpTo(descriptor, LARGEST_FILE_BYTES);
  } catch (error) {
    if (error instanceof Told) throw error;
    throw new Told(`file ${shown(file)}: ${reasonOf(error)}; allowed: a project file`);
  }
};

const deliver = (text: string, out: string | null): void => {
  if (out === null) {
    // Not writeFileSync: a pipe whose reader is slow would answer EAGAIN. A reader that has gone away is no fault of ours.
    process.stdout.on('error', () => {});
    process.stdout.write(text);
    return;
  }
  try {
    writeFileSync(out, text);
  } catch (error) {
    throw new Told(`--out ${shown(out)}: ${reasonOf(error)}; allowed: a file that can be written`);
  }
};

const run = (args: readonly string[]): void => {
  const options = optionsOf(args);
  const bytes = bytesOf(options.file);
  const read = readProject(bytes);
  if (!read.ok) throw new Told(read.faults.map(faultLine).join('\n'));
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const report = evaluateProject(read.project, options.frequenciesHz, sha256);
  const notices = read.notices.map(noticeLine);
  deliver(`${JSON.stringify({ ...report, notices }, null, 2)}\n`, options.out);
};

try {
  run(process.argv.slice(2));
} catch (error) {
  const line = error instanceof Told ? error.message : `file: could not be evaluated (${String(error)})`;
  process.stderr.write(`${line}\n`);
  process.exitCode = 2;
}
