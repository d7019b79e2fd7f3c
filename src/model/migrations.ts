import { PROJECT_VERSION } from './schema/project.ts';

/** A file's value before it is validated. */
export type RawProject = Readonly<Record<string, unknown>>;

/** Turns a file of version `from` into one of version `from` + 1, touching nothing else. */
export interface Migration {
  readonly from: number;
  readonly apply: (raw: RawProject) => RawProject;
}

/**
 * One step a version, in order. Version 1 is the first, so there is none yet. Each step comes with a frozen sample of the
 * version it starts from under tests/fixtures/projects (a test counts both).
 */
export const MIGRATIONS: readonly Migration[] = [];

/** A file of any version so far as a file of the newest. The caller has made sure that `version` is a whole number in range. */
export const migrate = (
  raw: RawProject,
  migrations: readonly Migration[] = MIGRATIONS,
  newest: number = PROJECT_VERSION,
): RawProject => {
  let current = raw;
  for (let version = Number(raw.version); version < newest; version++) {
    const step = migrations.find(({ from }) => from === version);
    if (!step) throw new TypeError(`no migration leads on from version ${version}`);
    current = { ...step.apply(current), version: version + 1 };
  }
  return current;
};
