import { writeEqualiserCsv } from '../files/equaliser-csv.ts';
import type { ChoiceActions } from '../panels/bass-choice/actions.ts';
import type { View } from '../state/view.tsx';
import { fileNameOf, offerDownload } from '../storage/file-dialog.ts';
import type { Choice } from './feed/choice.ts';

/** What the panel of subwoofers may ask for: the search on its thread, the filters as a file. */
export const choiceActions = (view: View, choice: Choice): ChoiceActions => ({
  ...choice,
  saveFilters: (filters) => {
    const { name } = view.document.getState().project;
    offerDownload(fileNameOf(name).replace('.parterre.json', ' equaliser.csv'), writeEqualiserCsv(filters), 'text/csv');
  },
});
