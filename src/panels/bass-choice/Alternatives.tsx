import { useState } from 'react';
import { METRIC_FREQUENCIES_HZ } from '../../analysis/inputs.ts';
import { alternativesOf } from '../../model/alternatives.ts';
import {
  removeAlternative,
  renameAlternative,
  storeAlternative,
  swapAlternative,
} from '../../model/commands/alternatives.ts';
import type { AlternativeLine } from '../../proposals/alternatives.ts';
import { CHAIN_FREQUENCIES_HZ } from '../../proposals/chain.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { NO_NUMBER } from '../../words/quantities-length.ts';
import { countTitle } from '../../words/subwoofers.ts';
import { hertz, signed } from '../figures.ts';
import { seatTitle } from '../naming.ts';
import { levelAt } from '../ribbon/levels.ts';
import { dB } from './figures.tsx';
import { OverCurves } from './OverCurves.tsx';
import { Sketch } from './Sketch.tsx';
import { useChoiceDocument } from './useChoiceDocument.ts';

const PRESENT = 'As it was';
const METRIC_COUNT = METRIC_FREQUENCIES_HZ.length;

const Cell = ({ value, now }: { value: number | null | undefined; now: number | null | undefined }) => (
  <td>
    {value == null ? NO_NUMBER : dB(value)}
    {value != null && now != null && <small>{signed(value - now)}</small>}
  </td>
);

/** A mean over the fixed grid of 20 to 80 Hz, which opens the chain's. */
const meanOf = (levelDb: Float64Array): number =>
  levelDb.subarray(0, METRIC_COUNT).reduce((sum, db) => sum + db, 0) / METRIC_COUNT;

const Change = ({ db, nowDb }: { readonly db: number; readonly nowDb: number }) => (
  <td>
    {dB(db)}
    <small>{signed(db - nowDb)}</small>
  </td>
);

interface BySeatProps {
  readonly now: AlternativeLine;
  readonly shown: AlternativeLine;
  readonly name: string;
}

/** What every seat gets with a kept arrangement, and how far that is from now: over the bass and at the cursor. */
const BySeat = ({ now, shown, name }: BySeatProps) => {
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const at = (levelDb: Float64Array) => levelAt(CHAIN_FREQUENCIES_HZ, levelDb, frequencyHz);
  return (
    <table className="choice-table">
      <caption>{name}, seat by seat, dB; below, the difference from now</caption>
      <thead>
        <tr>
          <th scope="col">Seat</th>
          <th scope="col">Mean, 20 to 80 Hz</th>
          <th scope="col">At {hertz(frequencyHz).text} Hz</th>
        </tr>
      </thead>
      <tbody>
        {shown.seats.map(({ id, levelDb }) => {
          const before = now.seats.find((seat) => seat.id === id)?.levelDb;
          return (
            <tr key={id} className={id === seatId ? 'is-now' : undefined}>
              <th scope="row">{seatTitle(project, id)}</th>
              {before && <Change db={meanOf(levelDb)} nowDb={meanOf(before)} />}
              {before && <Change db={at(levelDb)} nowDb={at(before)} />}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
};

const Compared = ({ lines, names }: { lines: readonly AlternativeLine[]; names: ReadonlyMap<string, string> }) => {
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const [chosen, setChosen] = useState<string | null>(null);
  const [now, ...others] = lines;
  const shown = others.find(({ id }) => id === chosen) ?? others[0];
  if (!now || !shown) return null;
  const curve = (line: AlternativeLine) =>
    line.seats.find(({ id }) => id === seatId)?.levelDb ?? line.seats[0]?.levelDb;
  const [nowCurve, shownCurve] = [curve(now), curve(shown)];
  return (
    <>
      <table className="choice-table">
        <caption>Beside one another, 20 to 80 Hz, dB; below, the difference from now</caption>
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">Seats</th>
            <th scope="col">Line</th>
            <th scope="col">Level</th>
            <th scope="col">Left over</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => {
            const before = line.id === 'now' ? null : now;
            return (
              <tr key={line.id} className={line.id === 'now' ? 'is-now' : undefined}>
                <th scope="row">
                  {line.id === 'now' ? (
                    'As it is now'
                  ) : (
                    <button type="button" aria-pressed={line.id === shown.id} onClick={() => setChosen(line.id)}>
                      {names.get(line.id)}
                    </button>
                  )}
                  <small>{countTitle(line.subwoofers)}</small>
                </th>
                <Cell value={line.figures?.nominal.spreadDb} now={before?.figures?.nominal.spreadDb} />
                <Cell value={line.figures?.nominal.flatnessDb} now={before?.figures?.nominal.flatnessDb} />
                <Cell value={line.figures?.nominal.levelDb} now={before?.figures?.nominal.levelDb} />
                <Cell value={line.leastMargin?.db} now={before?.leastMargin?.db} />
              </tr>
            );
          })}
        </tbody>
      </table>
      {nowCurve && shownCurve && (
        <Sketch
          label={`${seatTitle(project, seatId)}: level now and with ${names.get(shown.id)}`}
          frequenciesHz={CHAIN_FREQUENCIES_HZ}
          lines={[
            { name: 'now', tone: 'before', levelDb: nowCurve },
            { name: names.get(shown.id) ?? '', tone: 'after', levelDb: shownCurve },
          ]}
        />
      )}
      <OverCurves beside={`kept:${shown.id}`} what={names.get(shown.id) ?? ''} />
      <BySeat now={now} shown={shown} name={names.get(shown.id) ?? ''} />
    </>
  );
};

/** Arrangements stored beside the room: kept, compared in numbers, put in its place, renamed, taken away. */
export const Alternatives = () => {
  const project = useDocument((state) => state.project);
  const compared = useResults((state) => state.choice.compared);
  const key = useResults((state) => state.choice.keys.compared);
  const edit = useChoiceDocument();
  const [name, setName] = useState('');
  const stored = alternativesOf(project);
  const keep = () => {
    const wanted = name.trim() || `${countTitle(project.subwoofers.length)}, ${stored.length + 1}`;
    if (edit.run('Keep as an alternative', `Kept as “${wanted}”.`, (now) => storeAlternative(now, { name: wanted })))
      setName('');
  };
  return (
    <>
      <form
        className="choice-keep"
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <label>
          <span className="unseen">Name</span>
          <input
            type="text"
            value={name}
            maxLength={200}
            placeholder="Name"
            onChange={(event) => setName(event.target.value)}
          />
        </label>
        <button type="submit" className="word-button is-brass">
          Keep as it is now
        </button>
      </form>
      {stored.length === 0 && (
        <p className="fact-note">Nothing kept yet. What you keep can be compared and put back.</p>
      )}
      <ul className="kept">
        {stored.map((one) => (
          <li key={one.id} data-alternative={one.id}>
            <input
              type="text"
              aria-label={`Name of ${one.name}`}
              defaultValue={one.name}
              key={one.name}
              maxLength={200}
              onBlur={(event) => {
                const wanted = event.target.value.trim();
                if (wanted !== '' && wanted !== one.name)
                  edit.run('Rename the alternative', `Now “${wanted}”.`, (now) =>
                    renameAlternative(now, one.id, wanted),
                  );
              }}
            />
            <div className="proposal-foot">
              <button
                type="button"
                className="word-button is-brass"
                onClick={() =>
                  edit.run('Swap', `“${one.name}” is in place; what was is kept.`, (now) =>
                    swapAlternative(now, one.id, PRESENT),
                  )
                }
              >
                Swap in<span className="unseen"> {one.name}</span>
              </button>
              <button
                type="button"
                className="word-button"
                onClick={() =>
                  edit.run('Take the alternative away', `“${one.name}” is gone.`, (now) =>
                    removeAlternative(now, one.id),
                  )
                }
              >
                Take away<span className="unseen"> {one.name}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
      {stored.length > 0 && compared && (
        <div className={compared.key === key ? undefined : 'is-stale'} aria-busy={compared.key !== key}>
          <Compared lines={compared.value} names={new Map(stored.map((one) => [one.id, one.name]))} />
        </div>
      )}
    </>
  );
};
