import { bassReadout } from '../../../analysis/bass.ts';
import { bassCurves } from '../../../analysis/curves.ts';
import { heardModes } from '../../../analysis/heard-modes.ts';
import { driveKey } from '../../../analysis/inputs.ts';
import { modeReadouts } from '../../../analysis/modes.ts';
import { bassSlice, seatsMeanDb } from '../../../analysis/slice/field.ts';
import { levelScale } from '../../../math/level-scale.ts';
import { requestFrame } from '../../../state/frames.ts';
import type { Keyed } from '../../../state/results.ts';
import type { View } from '../../../state/view.tsx';
import type { Kept } from './kept.ts';
import { FREQUENCIES_HZ, type Wanted } from './wanted.ts';

const NO_BAND = { low: null, high: null };

/** The value already shown under this key, or a new one. */
const keep = <T>(shown: Keyed<T> | null, inputsKey: string, make: () => T): T =>
  shown?.inputsKey === inputsKey ? shown.value : make();

type Results = Partial<ReturnType<View['results']['getState']>>;

/** Everything that can be shown of what is kept, as results of what is wanted. */
const resultsOf = (view: View, kept: Kept, wanted: Wanted): Results => {
  const { project, revision, seatId, question, responsesKey, fieldKey } = wanted;
  const { variant } = view.document.getState();
  const shown = view.results.getState();
  const drives = driveKey(project);
  const found: { -readonly [K in keyof Results]: Results[K] } = {};
  const keyed = <T>(before: Keyed<T> | null, inputsKey: string, make: () => T): Keyed<T> => ({
    variant,
    revision,
    inputsKey,
    value: keep(before, inputsKey, make),
  });
  const nominal = kept.responses.of(responsesKey);
  if (nominal) {
    const bounds = kept.band.of(responsesKey) ?? NO_BAND;
    const key = `${responsesKey}|${kept.responses.detail}|${drives}|${bounds.low ? 'band' : ''}`;
    found.bass = keyed(shown.bass, key, () =>
      bassReadout(project, { frequenciesHz: FREQUENCIES_HZ, nominal, ...bounds }),
    );
    const fine = kept.fine.of(responsesKey);
    found.curves = keyed(shown.curves, `${key}|${fine ? 'fine' : ''}`, () =>
      bassCurves(project, { nominal, ...bounds, fine }),
    );
  }
  const modes = kept.modes.of(fieldKey);
  if (modes) found.modes = keyed(shown.modes, `${fieldKey}|${kept.modes.detail}`, () => modeReadouts(modes));
  const shapes = kept.shapes.of(responsesKey);
  if (modes && shapes)
    found.heard = keyed(shown.heard, `${responsesKey}|${kept.modes.detail}|${drives}|${seatId}`, () =>
      heardModes(project, seatId, modes, shapes),
    );
  const { pictureKey } = wanted;
  const decay = kept.decayPicture.of(pictureKey);
  if (decay && pictureKey !== null) found.decay = keyed(shown.decay, pictureKey, () => decay);
  const fields = kept.slices.of(wanted.slicesKey);
  const mean = kept.mean.of(wanted.meanKey);
  if (fields && (mean !== null || wanted.meanKey === null)) {
    const details = `${kept.slices.detail}${kept.mean.detail}`;
    const key = `${wanted.slicesKey}|${wanted.meanKey}|${details}|${drives}|${question.wish.as}`;
    found.slice = keyed(shown.slice, key, () =>
      bassSlice(project, question, fields, mean && seatsMeanDb(project, mean, question.frequenciesHz)),
    );
    found.trouble = null;
  }
  const bass = found.bass?.value;
  if (bass && bass !== shown.bass?.value)
    found.scale = levelScale(
      bass.seats.map(({ levelDb }) => levelDb),
      shown.scale,
    );
  return found;
};

/** Shows what is kept as the results of what is wanted, with that project's own gains and delays. Calls no engine. */
export const show = (view: View, kept: Kept, wanted: Wanted): void => {
  const found = resultsOf(view, kept, wanted);
  if (Object.keys(found).length === 0) return;
  view.results.setState(found);
  if (found.slice) requestFrame('floor-ready');
};
