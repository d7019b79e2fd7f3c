import type { Project } from '../../model/project.ts';

/** A project as the text of its file: JSON indented by two spaces, a line feed at the end, keys it does not know included. */
export const writeProject = (project: Project): string => `${JSON.stringify(project, null, 2)}\n`;
