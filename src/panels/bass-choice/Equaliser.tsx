import { equaliserOf } from '../../model/alternatives.ts';
import { setEqualiser } from '../../model/commands/alternatives.ts';
import type { EqualiserReadout } from '../../proposals/chain.ts';
import { useDocument } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { type Filter, useChoiceActions } from './actions.ts';
import { dB } from './figures.tsx';
import { OverCurves } from './OverCurves.tsx';
import { Sketch } from './Sketch.tsx';
import { useChoiceDocument } from './useChoiceDocument.ts';

const Filters = ({ filters, title }: { filters: readonly Filter[]; title: string }) => (
  <table className="choice-table">
    <caption>{title}</caption>
    <thead>
      <tr>
        <th scope="col">
          At <small>Hz</small>
        </th>
        <th scope="col">
          Gain <small>dB</small>
        </th>
        <th scope="col">Q</th>
      </tr>
    </thead>
    <tbody>
      {filters.map(({ frequencyHz, gainDb, q }) => (
        <tr key={frequencyHz}>
          <th scope="row">{fixed(frequencyHz, 1)}</th>
          <td>{dB(gainDb)}</td>
          <td>{fixed(q, 1)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** A few peak filters for what all seats share: proposed, before and after, used, saved, taken away. */
export const Equaliser = ({ equaliser, current }: { equaliser: EqualiserReadout; current: boolean }) => {
  const project = useDocument((state) => state.project);
  const actions = useChoiceActions();
  const edit = useChoiceDocument();
  const stored = equaliserOf(project);
  const { fit, frequenciesHz, plainDb, storedDb, fittedDb } = equaliser;
  const alone = fit.leftAlone.some((mark) => mark === 1);
  const same = JSON.stringify(stored) === JSON.stringify(fit.filters);
  return (
    <>
      <p>
        {fit.filters.length === 0
          ? 'What the seats share is even enough: no filter is worth its place.'
          : `${fit.filters.length} filter${fit.filters.length === 1 ? '' : 's'} for all subwoofers alike bring the seats’ mean from ${dB(fit.beforeDb)} to ${dB(fit.afterDb)} dB about one level.`}
        {alone && ' Dips that are narrow, or that the seats do not share, are left alone: no filter fills a null.'}
      </p>
      <Sketch
        label="The seats’ mean level without and with the filters"
        frequenciesHz={frequenciesHz}
        lines={[
          { name: 'without', tone: 'before', levelDb: plainDb },
          { name: same || stored.length === 0 ? 'with these' : 'proposed', tone: 'after', levelDb: fittedDb },
          ...(stored.length > 0 && !same ? [{ name: 'in use', tone: 'other' as const, levelDb: storedDb }] : []),
        ]}
      />
      {fit.filters.length > 0 && <Filters filters={fit.filters} title={same ? 'In use' : 'Proposed'} />}
      {stored.length > 0 && !same && <Filters filters={stored} title="In use" />}
      {(fit.filters.length > 0 || stored.length > 0) && (
        <OverCurves
          beside={stored.length > 0 ? 'filters' : 'proposed'}
          what={stored.length > 0 ? 'the filters in use' : 'the filters proposed'}
        />
      )}
      <div className="proposal-foot">
        {fit.filters.length > 0 && !same && (
          <button
            type="button"
            className="word-button is-brass"
            disabled={!current}
            onClick={() =>
              edit.run('Use the filters', 'The filters are in use.', (now) => setEqualiser(now, fit.filters))
            }
          >
            Use these filters
          </button>
        )}
        {actions && (stored.length > 0 || fit.filters.length > 0) && (
          <button
            type="button"
            className="word-button"
            onClick={() => actions.saveFilters(stored.length > 0 ? stored : fit.filters)}
          >
            Save as CSV
          </button>
        )}
        {stored.length > 0 && (
          <button
            type="button"
            className="word-button"
            onClick={() => edit.run('Take the filters away', 'The filters are gone.', (now) => setEqualiser(now, []))}
          >
            Take away
          </button>
        )}
      </div>
      <p className="fact-note">
        Cuts to 12 dB, boosts to 3 dB at most. Bass floor and ribbon show the room without filters; the curves show
        both. <b>Verify by measurement.</b>
      </p>
    </>
  );
};
