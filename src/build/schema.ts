import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { projectSchema } from '../model/schema/project.ts';
import { z } from '../model/schema/values.ts';

const fromHere = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The schema of the project file as a file may be written: everything with a default may be left out. */
export const publishedSchema = (): string => {
  const { $schema, ...schema } = z.toJSONSchema(projectSchema, { io: 'input' });
  const title = 'Parterre project, version 1';
  const description =
    'Checks between fields (own ids, places inside the room, plans that cross themselves) come on top.';
  return `${JSON.stringify({ $schema, title, description, ...schema }, null, 2)}\n`;
};

/** The demo projects by file name, as they stand in the source. */
export const demoProjects = (): Map<string, string> => {
  const folder = fromHere('../model/presets/');
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  return new Map(names.map((name) => [name, readFileSync(`${folder}${name}`, 'utf8')]));
};

export const SCHEMA_FILE = fromHere('../../public/project.schema.json');
export const DEMO_FOLDER = fromHere('../../public/demos/');

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(SCHEMA_FILE, publishedSchema());
  mkdirSync(DEMO_FOLDER, { recursive: true });
  for (const [name, text] of demoProjects()) writeFileSync(`${DEMO_FOLDER}${name}`, text);
}
