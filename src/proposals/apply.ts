import { setEqualiser, setSubwoofers } from '../model/commands/alternatives.ts';
import type { Edit } from '../model/commands/edit.ts';
import type { Project } from '../model/project.ts';
import type { Proposal } from './subwoofers/proposal.ts';

/** Applies a proposal as one edit, so that it is one undo. */
export const applyProposal = (project: Project, { subwoofers, filters }: Proposal): Edit => {
  const placed: Edit = subwoofers ? setSubwoofers(project, subwoofers) : { ok: true, project };
  return placed.ok && filters ? setEqualiser(placed.project, filters) : placed;
};
