import { readFileSync } from 'node:fs';
import { readProjectText } from '../../../src/files/project/read.ts';
import type { Project } from '../../../src/model/project.ts';

const text = readFileSync(new URL('../../fixtures/projects/v1/two-row.json', import.meta.url), 'utf8');

/** A project from JSON text; the test fails with the faults when it is refused. */
export const projectOf = (value: unknown): Project => {
  const read = readProjectText(JSON.stringify(value));
  if (!read.ok) throw new Error(read.faults.map(({ path, holds }) => `${path}: ${holds}`).join('\n'));
  return read.project;
};

/** The two-row room, frozen as a fixture: 4.3 x 6.1 x 2.7 m, seven seats, eleven loudspeakers, four subwoofers. */
export const demo = (): Project => projectOf(JSON.parse(text));

/** A plain room with one seat, changed by what is passed; everything else by the file format's defaults. */
export const plain = (over: Readonly<Record<string, unknown>> = {}): Project =>
  projectOf({
    format: 'parterre/project',
    version: 1,
    room: { plan: { shape: 'rectangle', widthM: 4, lengthM: 6 }, ceiling: { shape: 'flat', heightM: 2.5 } },
    rows: [{ id: 'only', eyeZM: 3.2, seats: [{ id: 'a', xM: 0 }] }],
    ...over,
  });
