import type { Drive } from '../../engines/bass/superpose.ts';
import type { Project } from '../../model/project.ts';

/** What is sent to every subwoofer, in the document's order. */
export const drivesOf = (project: Project): Drive[] =>
  project.subwoofers.map(({ gainDb, delayMs, inverted }) => ({ gainDb, delayMs, inverted }));
