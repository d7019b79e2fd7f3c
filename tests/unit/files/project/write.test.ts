import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { writeProject } from '../../../../src/files/project/write.ts';
import { MIGRATIONS, type Migration, migrate } from '../../../../src/model/migrations.ts';
import { PROJECT_VERSION } from '../../../../src/model/schema/project.ts';
import { accepted, changed, sampleText } from './samples.ts';

describe('writing', () => {
  it('indents by two spaces and ends with one line feed', () => {
    const text = writeProject(accepted(sampleText));
    expect(text.split('\n')[1]).toBe('  "format": "parterre/project",');
    expect(text).toMatch(/\}\n$/);
  });

  it('reads back what it wrote, unknown and reserved keys, locks and odd text included', () => {
    const text = changed({
      walk: [1],
      later: { deep: [null] },
      'rows.0.locked': true,
      name: 'é \u2028 "quoted" \ud83c\udfac',
    });
    const project = accepted(text);
    const again = accepted(writeProject(project));
    expect(again).toEqual(project);
    expect(writeProject(again)).toBe(writeProject(project));
    expect(again).toMatchObject({ walk: [1], later: { deep: [null] } });
  });
});

describe('migrations', () => {
  it('there is one for every version but the newest, in order, each with a frozen sample', () => {
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(
      Array.from({ length: PROJECT_VERSION - 1 }, (_, index) => index + 1),
    );
    for (let version = 1; version <= PROJECT_VERSION; version++) {
      expect(existsSync(new URL(`../../../fixtures/projects/v${version}/`, import.meta.url))).toBe(true);
    }
  });

  it('the frozen sample of version 1 still reads', () => {
    const project = accepted(sampleText);
    expect(project.rows.flatMap((row) => row.seats)).toHaveLength(7);
    expect(project.loudspeakers).toHaveLength(11);
    expect(project.subwoofers.map(({ id }) => id)).toEqual(['S1', 'S2', 'S3', 'S4']);
  });

  it('are applied one after the other, each seeing what the one before made', () => {
    const steps: Migration[] = [
      { from: 2, apply: ({ title, ...raw }) => ({ ...raw, heading: title }) },
      { from: 1, apply: ({ name, ...raw }) => ({ ...raw, title: name }) },
    ];
    const old = Object.freeze({ version: 1, name: 'Old dairy', kept: true });
    expect(migrate(old, steps, 3)).toEqual({ version: 3, heading: 'Old dairy', kept: true });
    expect(migrate({ version: 3, heading: 'x' }, steps, 3)).toEqual({ version: 3, heading: 'x' });
  });

  it('a missing step is a fault of the program, said at once', () => {
    expect(() => migrate({ version: 1 }, [], 2)).toThrow('no migration leads on from version 1');
  });
});
