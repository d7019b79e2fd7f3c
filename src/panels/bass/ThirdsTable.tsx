import { useResults } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';

const LONGEST_S = 1.2;

/** Decay time by third octave at the chosen seat, from the modes in each. */
export const ThirdsTable = () => {
  const heard = useResults((state) => state.heard?.value);
  if (!heard) return null;
  const longest = Math.max(LONGEST_S, ...heard.thirds.map(({ decayS }) => decayS ?? 0));
  return (
    <section className="thirds">
      <h3>Decay here, by third octave</h3>
      <table className="bass-list">
        <thead className="unseen">
          <tr>
            <th scope="col">Hz</th>
            <th scope="col">Time to fall by 60 dB</th>
          </tr>
        </thead>
        <tbody>
          {heard.thirds.map(({ hz, decayS }) => (
            <tr key={hz}>
              <th scope="row" className="is-quiet">
                {hz}
              </th>
              <td className="has-bar is-wide">
                {decayS !== null && <i style={{ width: `${(70 * decayS) / longest}%` }} aria-hidden="true" />}
                {decayS === null ? 'no mode heard' : `${fixed(decayS, 2)} s`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};
