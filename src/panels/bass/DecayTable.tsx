import { useResults } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { TICKS_HZ } from '../ribbon/levels.ts';
import { decayAt } from './decay-draw.ts';
import { SCROLLED_BY_KEYS } from './plot.ts';

const ROWS = 10;

/** The decay as numbers: one row a tenth of the time, one column a third of an octave. */
export const DecayTable = () => {
  const decay = useResults((state) => state.decay?.value);
  if (!decay) return <p className="waiting">Working out the decay …</p>;
  const lastS = decay.timesS[decay.timesS.length - 1];
  const times = Array.from({ length: ROWS + 1 }, (_, i) => (lastS * i) / ROWS);
  return (
    <section className="plot-table scrolls" aria-label="Table of the decay" {...SCROLLED_BY_KEYS}>
      <table>
        <caption className="unseen">Level in decibels some time after a tone was switched off</caption>
        <thead>
          <tr>
            <th scope="col">s</th>
            {TICKS_HZ.map((hz) => (
              <th key={hz} scope="col">
                {hz}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {times.map((time) => (
            <tr key={time}>
              <th scope="row">{fixed(time, 1)}</th>
              {TICKS_HZ.map((hz) => (
                <td key={hz}>{fixed(decayAt(decay, hz, time), 1)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};
