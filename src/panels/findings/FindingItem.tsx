import type { Finding } from '../../analysis/types.ts';
import { useProjectBesides } from '../../state/steady-project.ts';
import { useSession, useView } from '../../state/view.tsx';
import { findingSentence } from '../../words/findings.ts';
import { ruleTitle, sourceText, whyText } from '../../words/rules.ts';
import { useUnits } from '../hooks.ts';
import { VerdictWord } from '../marks/VerdictMark.tsx';
import { rangeText, shownOf } from './values.ts';

const SET_WORDS: Readonly<Record<Finding['set'], string>> = {
  living: 'living-room targets',
  standard: 'standard targets',
  diffuse: 'diffuse-surround targets',
};

const Value = ({ finding }: { finding: Finding }) => {
  const units = useUnits();
  const shown = shownOf(finding, units);
  if (!shown) return null;
  return (
    <span className={shown.unit === '°' ? 'figure is-tight' : 'figure'} data-value={shown.value}>
      <b>{shown.text}</b>
      {shown.unit !== '' && <small>{shown.unit}</small>}
    </span>
  );
};

/** One finding: verdict, number, sentence; why, range, target set and source on request; "show me" lights its cause. */
export const FindingItem = ({ finding }: { finding: Finding }) => {
  const { session } = useView();
  const units = useUnits();
  const project = useProjectBesides('subwoofers');
  const lit = useSession((state) => state.spotlight?.findingId === finding.id);
  const range = rangeText(finding.range, finding.unit, units);
  const show = () =>
    session.setState((state) =>
      lit
        ? { spotlight: null }
        : {
            spotlight: { findingId: finding.id, items: finding.causes },
            mode: 'overlook',
            seatId: finding.seat ?? state.seatId,
          },
    );
  return (
    <li className={lit ? 'finding is-lit' : 'finding'} data-finding={finding.id}>
      <div className="finding-head">
        <VerdictWord verdict={finding.verdict} />
        <span className="finding-rule">{ruleTitle(finding.rule)}</span>
        <Value finding={finding} />
      </div>
      <p>{findingSentence(finding, units, project)}</p>
      <div className="finding-foot">
        <details>
          <summary>Why</summary>
          <p>{whyText(finding.rule)}</p>
          {range !== '' && (
            <p>
              Asked for: {range}, by the {SET_WORDS[finding.set]}.
            </p>
          )}
          <p>Source: {sourceText(finding.source)}</p>
        </details>
        {finding.causes.length > 0 && (
          <button type="button" className="word-button is-brass" aria-pressed={lit} onClick={show}>
            {lit ? 'Stop showing' : 'Show me'}
          </button>
        )}
      </div>
    </li>
  );
};
