import { useState } from 'react';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { decibels, hertz } from '../figures.ts';
import { useChoose, useCurrent } from '../hooks.ts';
import { seatTitle } from '../naming.ts';
import { HIGHEST_HZ } from '../ribbon/levels.ts';
import { orderWords } from './words.ts';

const SHORT = 8;
/** A bar is empty this far under the loudest mode. */
const BAR_DB = 30;

/** The modes by what the chosen seat hears of each, loudest first; a touch puts the cursor on one. */
export const ModeList = () => {
  const heard = useResults((state) => state.heard?.value);
  const current = useCurrent('heard');
  const project = useDocument((state) => state.project);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const choose = useChoose();
  const [all, setAll] = useState(false);
  if (!heard) return <p className="waiting">Working out the modes …</p>;
  const within = heard.modes.filter(({ hz }) => hz <= HIGHEST_HZ);
  const listed = all ? within : within.slice(0, SHORT);
  const loudest = within[0]?.levelDb ?? 0;
  return (
    <section className={current ? 'modes' : 'modes is-stale'} aria-busy={!current}>
      <h3>Modes, as {seatTitle(project, heard.seatId)} hears them</h3>
      <table className="bass-list">
        <thead>
          <tr>
            <th scope="col">Hz</th>
            <th scope="col">Order</th>
            <th scope="col">Decay</th>
            <th scope="col">Alone, dB</th>
          </tr>
        </thead>
        <tbody>
          {listed.map(({ hz, order, decayS, levelDb }) => {
            const here = Math.abs(hz - frequencyHz) < 0.05;
            return (
              <tr key={`${hz}|${order?.join()}`} className={here ? 'is-chosen' : undefined}>
                <th scope="row">
                  <button
                    type="button"
                    aria-pressed={here}
                    aria-label={`Put the cursor on ${hertz(hz).text} Hz`}
                    onClick={() => choose.frequency(hz)}
                  >
                    {hertz(hz).text}
                  </button>
                </th>
                <td>{orderWords(order)}</td>
                <td>
                  {Number.isFinite(decayS) ? fixed(decayS, 2) : '∞'} <small>s</small>
                </td>
                <td className="has-bar">
                  <i style={{ width: `${60 * Math.max(0, 1 + (levelDb - loudest) / BAR_DB)}%` }} aria-hidden="true" />
                  {levelDb > -100 ? decibels(levelDb).text : 'none'}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="plot-note">
        Order: half waves across, along, up. Decay: time to fall by 60 dB. Alone: that mode’s own level at this seat.
      </p>
      {within.length > SHORT && (
        <button type="button" className="word-button" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'The loudest only' : `All ${within.length} to ${HIGHEST_HZ} Hz`}
        </button>
      )}
    </section>
  );
};
