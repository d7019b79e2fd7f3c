import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { count, decibels, hertz } from '../figures.ts';
import { useCurrent } from '../hooks.ts';
import { Figure } from '../marks/Figure.tsx';
import { levelAt } from '../ribbon/levels.ts';
import { Fact } from './Fact.tsx';

/** The chosen seat's bass at the ribbon's cursor, and how far the seats are apart. */
export const BassLines = ({ seatIndex }: { seatIndex: number }) => {
  const bass = useResults((state) => state.bass?.value);
  const current = useCurrent('bass');
  const frequencyHz = useSession((state) => state.frequencyHz);
  const seats = useDocument((state) => state.project.rows.reduce((sum, row) => sum + row.seats.length, 0));
  const seat = bass?.seats[seatIndex];
  if (!bass || !seat) return <p className="waiting">Computing the bass …</p>;
  const at = (levels: Float64Array) => levelAt(bass.frequenciesHz, levels, frequencyHz);
  const place = `seats[${seatIndex}].bass`;
  return (
    <div className={current ? undefined : 'is-stale'} aria-busy={!current}>
      <p className="fact-note">Levels against the free field of one subwoofer at 1 m.</p>
      <dl className="facts">
        <Fact word={`Level at ${hertz(frequencyHz).text} Hz`}>
          <Figure field={`${place}.levelDb`} shown={decibels(at(seat.levelDb))} />
        </Fact>
        {seat.lowDb && seat.highDb && (
          <Fact word="with damping in doubt">
            <Figure field={`${place}.lowDb`} shown={decibels(at(seat.lowDb))} unit={false} />
            <span className="to"> to </span>
            <Figure field={`${place}.highDb`} shown={decibels(at(seat.highDb))} />
          </Fact>
        )}
        {bass.spreadDb && (
          <Fact word={`Spread over ${seats} seats, here`}>
            <Figure field="bass.spreadDb" shown={decibels(at(bass.spreadDb))} />
          </Fact>
        )}
        {bass.meanSpreadDb !== null && (
          <Fact word="Mean spread, 20 to 80 Hz">
            <Figure field="bass.meanSpreadDb" shown={count(bass.meanSpreadDb, 1, 'dB')} />
          </Fact>
        )}
      </dl>
    </div>
  );
};
