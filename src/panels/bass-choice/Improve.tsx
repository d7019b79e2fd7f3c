import { useMemo, useState } from 'react';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import {
  AIMS,
  type Aim,
  EVEN_FIRST,
  type ImproveGoal,
  type Improvement,
  type ImproveResult,
} from '../../proposals/subwoofers/improve.ts';
import { changesOf } from '../../proposals/subwoofers/proposal.ts';
import { sameSubwoofers, stillOffered } from '../../proposals/subwoofers/still-offered.ts';
import { useDocument, useResults } from '../../state/view.tsx';
import { formatQuantity } from '../../words/quantities.ts';
import { fixed } from '../../words/quantities-length.ts';
import { changeText, countTitle, doingText, placeText } from '../../words/subwoofers.ts';
import { useUnits } from '../hooks.ts';
import { Choice } from '../top/Choice.tsx';
import { useChoiceActions } from './actions.ts';
import { dB, FigureList } from './figures.tsx';
import { useChoiceDocument } from './useChoiceDocument.ts';

const COUNTS = [
  { value: '1', word: '1' },
  { value: '2', word: '2' },
  { value: '3', word: '3' },
  { value: '4', word: '4' },
  { value: 'any', word: '1 to 4' },
] as const;
type Count = (typeof COUNTS)[number]['value'];

const AIM_WORDS: readonly { readonly value: Aim; readonly word: string }[] = [
  { value: 'even', word: 'Even' },
  { value: 'flat', word: 'Even and flat' },
  { value: 'loud', word: 'Even and loud' },
];

const goalFor = (count: Count, aim: Aim, drives: boolean): ImproveGoal => ({
  ...EVEN_FIRST,
  ...AIMS[aim],
  drives,
  ...(count === 'any' ? {} : { counts: [Number(count)], perCount: 3 }),
});

const NOTES: Readonly<Record<NonNullable<ImproveResult['note']>, string>> = {
  'one-seat':
    'With one seat there is nothing to even out between seats: the response over frequency was evened instead.',
  'no-place': 'Nowhere along the walls is free for a subwoofer of this size.',
  'all-locked': 'As many subwoofers as you asked for are locked. Unlock one, or ask for more.',
};

interface ItemProps {
  readonly proposal: Improvement;
  readonly result: ImproveResult;
  readonly project: Project;
  /** The room is still the one this was found in. */
  readonly offered: boolean;
  readonly best: boolean;
}

const ProposalItem = ({ proposal, result, project, offered, best }: ItemProps) => {
  const units = useUnits();
  const edit = useChoiceDocument();
  const { subwoofers, figures, drivesGainDb } = proposal;
  const title = countTitle(subwoofers.length);
  const used = sameSubwoofers(subwoofers, project.subwoofers);
  const { nominal } = figures;
  return (
    <li className="proposal" data-proposal={proposal.id}>
      <div className="proposal-head">
        <h4>
          {title}
          {best && <small> best of these</small>}
          {used && <small> stands in the room</small>}
        </h4>
        <span className="figure">
          <b>{dB(nominal.spreadDb ?? nominal.flatnessDb)}</b>
          <small>dB</small>
        </span>
      </div>
      <p className="fact-note">{subwoofers.map(({ atM }) => placeText(project, atM as Vec3, units)).join('; ')}</p>
      <details>
        <summary>Look closer</summary>
        <FigureList figures={figures} before={result.now} />
        <ul className="changes">
          {changesOf(project.subwoofers, subwoofers).map((change) => (
            <li key={`${change.what}${change.id}`}>{changeText(project, change, units)}</li>
          ))}
        </ul>
        {drivesGainDb !== null && (
          <p className="fact-note">
            Gain, delay and polarity make {dB(drivesGainDb)} dB of this. <b>Verify by measurement</b> before relying on
            it.
          </p>
        )}
      </details>
      <div className="proposal-foot">
        {(offered || used) && (
          <button
            type="button"
            className="word-button is-brass"
            aria-disabled={used}
            onClick={() => !used && edit.apply(proposal)}
          >
            {used ? 'In use' : 'Use this'}
            <span className="unseen">: {title}</span>
          </button>
        )}
        <button
          type="button"
          className="word-button"
          onClick={() => edit.keep(proposal, `${title}, ${dB(nominal.spreadDb ?? nominal.flatnessDb)} dB`)}
        >
          Keep beside<span className="unseen"> the room as an alternative: {title}</span>
        </button>
      </div>
    </li>
  );
};

const Results = ({ result, searched }: { readonly result: ImproveResult; readonly searched: Project }) => {
  const units = useUnits();
  const project = useDocument((state) => state.project);
  const offered = useMemo(
    () =>
      stillOffered(
        searched,
        project,
        result.proposals.map(({ subwoofers }) => subwoofers),
      ),
    [searched, project, result],
  );
  const best = result.proposals.reduce<Improvement | null>((so, one) => (so && so.score <= one.score ? so : one), null);
  const ranked = best ? [best, ...result.proposals.filter((one) => one !== best)] : [];
  return (
    <section aria-label="What was found">
      {result.note && <p className="waiting">{NOTES[result.note]}</p>}
      {result.proposals.length > 0 && (
        <p className="fact-note">
          {result.combinations.toLocaleString('en')} choices among {result.places} places along the walls, about{' '}
          {formatQuantity(result.spacingM, 'length', units)} apart. The number is how much the seats differ, 20 to 80 Hz
          {result.now?.nominal.spreadDb != null && `; before the search ${dB(result.now.nominal.spreadDb)} dB`}.
        </p>
      )}
      {!offered && result.proposals.length > 0 && (
        <p className="fact-note is-caution">
          The room has changed since. These stay as they were found: keep one beside the room, or search again.
        </p>
      )}
      <ol className="proposals">
        {ranked.map((proposal) => (
          <ProposalItem
            key={proposal.id}
            {...{ proposal, result, project, offered }}
            best={ranked.length > 1 && proposal === best}
          />
        ))}
      </ol>
    </section>
  );
};

/** The search for better places: how many, whether drives may be set, progress with a stop, and what came of it. */
export const Improve = () => {
  const search = useResults((state) => state.choice.search);
  const actions = useChoiceActions();
  const [count, setCount] = useState<Count>('any');
  const [aim, setAim] = useState<Aim>('even');
  const [drives, setDrives] = useState(true);
  if (!actions) return null;
  const running = search.status === 'running';
  const share = search.progress?.share ?? 0;
  return (
    <section className="choice-part" aria-label="Find better places">
      <h3>Find better places</h3>
      <Choice<Count> label="How many subwoofers" options={COUNTS} value={count} quiet onChoose={setCount} />
      <Choice<Aim> label="What counts" options={AIM_WORDS} value={aim} quiet onChoose={setAim} />
      <p className="fact-note">
        Looks for the places where the seats differ least, 20 to 80 Hz. Among the most even, 1 dB flatter over frequency
        counts as {fixed(AIMS[aim].flatnessWeight, 2)} dB more even, 1 dB louder as {fixed(AIMS[aim].levelWeight, 2)}{' '}
        dB.
      </p>
      <label className="choice-tick">
        <input type="checkbox" checked={drives} onChange={(event) => setDrives(event.target.checked)} />
        Set gain, delay and polarity too
      </label>
      {running && (
        <div className="choice-progress">
          <progress max={1} value={share} aria-label="Search" />
          <p>
            {search.progress ? doingText(search.progress.doing) : ''}, {Math.round(share * 100)} %
          </p>
        </div>
      )}
      {/* One button, whatever it does just now: it keeps the focus. A key held down presses it once. */}
      <button
        type="button"
        className="word-button is-brass"
        data-improves
        onKeyDown={(event) => event.repeat && event.key === 'Enter' && event.preventDefault()}
        onClick={() => (running ? actions.stopImproving() : actions.improve(goalFor(count, aim, drives)))}
      >
        {running ? 'Stop' : 'Improve'}
      </button>
      {search.status === 'failed' && <p className="waiting">That did not come to an end. Try it again.</p>}
      {search.result && search.searched && <Results result={search.result} searched={search.searched} />}
    </section>
  );
};
