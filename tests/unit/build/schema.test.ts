import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEMO_FOLDER, demoProjects, publishedSchema, SCHEMA_FILE } from '../../../src/build/schema.ts';
import { readProject } from '../../../src/files/project/read.ts';

describe('what `npm run schema` writes is what is committed', () => {
  it('the schema', () => {
    expect(readFileSync(SCHEMA_FILE, 'utf8')).toBe(publishedSchema());
  });

  it('the demo projects, each of which reads without a word', () => {
    const demos = demoProjects();
    expect(readdirSync(DEMO_FOLDER).sort()).toEqual([...demos.keys()].sort());
    expect(demos.has('two-row.json')).toBe(true);
    for (const [name, text] of demos) {
      expect(readFileSync(`${DEMO_FOLDER}${name}`, 'utf8')).toBe(text);
      expect(readProject(new TextEncoder().encode(text))).toMatchObject({ ok: true, notices: [] });
    }
  });

  it('leaves out what has a default and asks for what has none', () => {
    const schema = JSON.parse(publishedSchema());
    expect(schema.required).toEqual(['format', 'version', 'room', 'rows']);
    expect(schema.properties.room.required).toEqual(['plan', 'ceiling']);
  });
});
