import { useDocument, useSession } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { seatShort, seatTitle } from '../naming.ts';
import { useShownCurves } from './Curves.tsx';
import { SCROLLED_BY_KEYS } from './plot.ts';

/** Points of a curve between one row of the table and the next: every 12th of an octave. */
const EVERY = { fine: 8, coarse: 2 };

/** The curves as numbers: one row a twelfth of an octave, one column a seat. */
export const CurvesTable = () => {
  const curves = useShownCurves();
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  if (!curves) return null;
  const { frequenciesHz, seats, fine } = curves;
  const rows = Array.from(frequenciesHz.keys()).filter((i) => i % (fine ? EVERY.fine : EVERY.coarse) === 0);
  return (
    <section className="plot-table scrolls" aria-label="Table of the curves" {...SCROLLED_BY_KEYS}>
      <table>
        <caption className="unseen">
          Level at every seat in decibels, against the free field of one subwoofer at 1 m
        </caption>
        <thead>
          <tr>
            <th scope="col">Hz</th>
            {seats.map(({ id }) => (
              <th key={id} scope="col" className={id === seatId ? 'is-chosen' : undefined}>
                <abbr title={seatTitle(project, id)}>{seatShort(project, id)}</abbr>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((i) => (
            <tr key={i}>
              <th scope="row">{fixed(frequenciesHz[i], 1)}</th>
              {seats.map(({ id, levelDb }) => (
                <td key={id} className={id === seatId ? 'is-chosen' : undefined}>
                  {fixed(levelDb[i], 1)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};
