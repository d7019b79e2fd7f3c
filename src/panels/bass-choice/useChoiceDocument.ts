import { storeAlternative } from '../../model/commands/alternatives.ts';
import { applyProposal } from '../../proposals/apply.ts';
import type { Proposal } from '../../proposals/subwoofers/proposal.ts';
import type { Command } from '../../state/document.ts';
import { useView } from '../../state/view.tsx';
import { refusalText } from '../../words/refusals.ts';
import { announce } from '../useItemActions.ts';

/** Edits of the choice, each one undo; what was done, or why not, is said aloud. */
export const useChoiceDocument = () => {
  const view = useView();
  const run = (label: string, said: string, command: Command): boolean => {
    const refusal = view.document.actions.apply(label, command);
    const { project } = view.document.getState();
    announce(view, refusal ? refusalText(refusal, project.display.units, project) : said);
    return refusal === null;
  };
  return {
    run,
    apply: (proposal: Proposal) =>
      run('Use the proposal', 'Done. Undo brings back what was.', (project) => applyProposal(project, proposal)),
    keep: (proposal: Proposal, name: string) =>
      run('Keep as an alternative', `Kept as “${name}”.`, (project) =>
        storeAlternative(project, { name, subwoofers: proposal.subwoofers }),
      ),
  };
};
