import { useState } from 'react';
import type { Project } from '../../model/project.ts';
import type { ArrangementRow } from '../../proposals/subwoofers/arrangements.ts';
import { placedSubwoofers } from '../../proposals/subwoofers/proposal.ts';
import { useDocument, useResults } from '../../state/view.tsx';
import { formatQuantity } from '../../words/quantities.ts';
import { NO_NUMBER } from '../../words/quantities-length.ts';
import { arrangementTitle } from '../../words/subwoofers.ts';
import { useUnits } from '../hooks.ts';
import { bandText, dB } from './figures.tsx';
import { useChoiceDocument } from './useChoiceDocument.ts';

const FAR_M = 0.15;

interface RowProps {
  readonly row: ArrangementRow;
  readonly project: Project;
  readonly revision: number;
  /** Whether every figure tells what other damping would make of it, or only the first. */
  readonly banded: boolean;
}

const KEYS = ['flatnessDb', 'levelDb', 'perSubwooferDb'] as const;

const Row = ({ row, project, revision, banded }: RowProps) => {
  const edit = useChoiceDocument();
  const units = useUnits();
  const { id, places, figures } = row;
  const title = arrangementTitle(id);
  const held = project.subwoofers.some(({ locked }) => locked === true);
  const shifted = Math.max(0, ...places.map(({ shiftedM }) => shiftedM));
  const place = () =>
    edit.apply({
      id,
      kind: 'arrangement',
      revision,
      subwoofers: placedSubwoofers(
        project,
        places.map(({ atM }) => ({ atM, gainDb: 0, delayMs: 0, inverted: false })),
      ),
    });
  const { nominal } = figures ?? {};
  return (
    <tr className={id === 'now' ? 'is-now' : undefined} data-arrangement={id}>
      <th scope="row">
        {id === 'now' || !figures || held ? (
          title
        ) : (
          <button type="button" onClick={place} title="Place the subwoofers so">
            {title}
          </button>
        )}
        {shifted > FAR_M && figures && <small>shifted up to {formatQuantity(shifted, 'length', units)}</small>}
        {!figures && <small>{id === 'now' ? 'no subwoofers' : 'no free place for it here'}</small>}
      </th>
      <td>
        <b>{nominal ? dB(nominal.spreadDb) : NO_NUMBER}</b>
        {figures && <small>{bandText(figures)}</small>}
      </td>
      {KEYS.map((key) => (
        <td key={key}>
          {nominal ? dB(nominal[key]) : NO_NUMBER}
          {figures && banded && <small>{bandText(figures, key)}</small>}
        </td>
      ))}
    </tr>
  );
};

/** The trade's arrangements in this room beside what there is now; a name places the subwoofers so. */
export const Arrangements = () => {
  const project = useDocument((state) => state.project);
  const revision = useDocument((state) => state.revision);
  const answered = useResults((state) => state.choice.arrangements);
  const key = useResults((state) => state.choice.keys.arrangements);
  const [banded, setBanded] = useState(false);
  if (!answered) return <p className="waiting">Listening from the usual places …</p>;
  const current = answered.key === key;
  return (
    <div className={current ? undefined : 'is-stale'} aria-busy={!current}>
      <p className="fact-note">
        20 to 80 Hz, in dB. Seats: how much they differ, smaller is better, and what other damping of the walls would
        make of it. Line: how uneven a seat is over frequency. Level: of all together, then what each brings. Choose a
        name to place the subwoofers so.
      </p>
      <label className="choice-tick">
        <input type="checkbox" checked={banded} onChange={(event) => setBanded(event.target.checked)} />
        Other damping in every column
      </label>
      <table className={banded ? 'choice-table is-banded' : 'choice-table'}>
        <thead>
          <tr>
            <th scope="col">Arrangement</th>
            <th scope="col">Seats</th>
            <th scope="col">Line</th>
            <th scope="col">Level</th>
            <th scope="col">Each</th>
          </tr>
        </thead>
        <tbody>
          {answered.value.map((row) => (
            <Row key={row.id} row={row} project={project} revision={revision} banded={banded} />
          ))}
        </tbody>
      </table>
    </div>
  );
};
