import { bassReadout } from '../../../analysis/bass.ts';
import { driveKey } from '../../../analysis/inputs.ts';
import { modeReadouts } from '../../../analysis/modes.ts';
import { bassSlice, seatsMeanDb } from '../../../analysis/slice/field.ts';
import { requestFrame } from '../../../state/frames.ts';
import type { Keyed } from '../../../state/results.ts';
import type { View } from '../../../state/view.tsx';
import type { Kept } from './kept.ts';
import { FREQUENCIES_HZ, type Wanted } from './wanted.ts';

const NO_BAND = { low: null, high: null };

/** The value already shown under this key, or a new one. */
const keep = <T>(shown: Keyed<T> | null, inputsKey: string, make: () => T): T =>
  shown?.inputsKey === inputsKey ? shown.value : make();

/** Shows what is kept as the results of what is wanted, with that project's own gains and delays. Calls no engine. */
export const show = (view: View, kept: Kept, wanted: Wanted): void => {
  const { project, revision, question } = wanted;
  const { variant } = view.document.getState();
  const drives = driveKey(project);
  const shown = view.results.getState();
  const responses = kept.responses.of(wanted.responsesKey);
  if (responses) {
    const bounds = kept.band.of(wanted.responsesKey);
    const inputsKey = `${wanted.responsesKey}|${drives}|${bounds ? 'band' : ''}`;
    const value = keep(shown.bass, inputsKey, () =>
      bassReadout(project, { frequenciesHz: FREQUENCIES_HZ, nominal: responses, ...(bounds ?? NO_BAND) }),
    );
    view.results.setState({ bass: { variant, revision, inputsKey, value } });
  }
  const modes = kept.modes.of(wanted.fieldKey);
  if (modes && shown.modes?.inputsKey !== wanted.fieldKey) {
    const value = modeReadouts(modes);
    view.results.setState({ modes: { variant, revision, inputsKey: wanted.fieldKey, value } });
  }
  const fields = kept.slices.of(wanted.slicesKey);
  const mean = kept.mean.of(wanted.meanKey);
  if (fields && (mean !== null || wanted.meanKey === null)) {
    const { as } = question.wish;
    const inputsKey = `${wanted.slicesKey}|${wanted.meanKey}|${drives}|${as}`;
    const value = keep(shown.slice, inputsKey, () =>
      bassSlice(project, question, fields, mean && seatsMeanDb(project, mean, question.frequenciesHz)),
    );
    view.results.setState({ slice: { variant, revision, inputsKey, value }, trouble: null });
    requestFrame('floor-ready');
  }
};
