import type { ReactNode } from 'react';
import type { BassCurves } from '../../analysis/types.ts';
import type { Project } from '../../model/project.ts';
import { useDocument, useSession } from '../../state/view.tsx';
import { fixed, NO_NUMBER } from '../../words/quantities-length.ts';
import { signed } from '../figures.ts';
import { seatShort, seatTitle } from '../naming.ts';
import { levelAt } from '../ribbon/levels.ts';
import { useShownCurves } from './Curves.tsx';
import { SCROLLED_BY_KEYS } from './plot.ts';
import { type BesideShown, useBeside } from './useBeside.ts';

/** Points of a curve between one row of the table and the next: every 12th of an octave. */
const EVERY = { fine: 8, coarse: 2 };

/** One column of the table: a heading, and what stands under it at a frequency. */
interface Column {
  readonly key: string;
  readonly head: ReactNode;
  readonly chosen: boolean;
  cell(hz: number): string;
}

const levelsOf =
  ({ frequenciesHz }: BassCurves, levelDb: Float64Array) =>
  (hz: number) =>
    fixed(levelAt(frequenciesHz, levelDb, hz), 1);

/**
 * Without anything laid over the curves a seat a column; else, of the chosen seat its own level and the other, and at every
 * seat the change.
 */
const columnsOf = (project: Project, curves: BassCurves, beside: BesideShown, chosen: string): readonly Column[] => {
  const over = beside.curves;
  return curves.seats.flatMap(({ id, levelDb }): Column[] => {
    const column = (key: string, what: string | null, cell: Column['cell']): Column => ({
      key: `${id} ${key}`,
      head: (
        <>
          <abbr title={seatTitle(project, id)}>{seatShort(project, id)}</abbr>
          {what && <small> {what}</small>}
        </>
      ),
      chosen: id === chosen,
      cell,
    });
    const own = levelsOf(curves, levelDb);
    if (!over) return [column('own', null, own)];
    const other = over.seats.find((seat) => seat.id === id);
    if (!other) return [column('change', 'change', () => NO_NUMBER)];
    const change = column('change', 'change', (hz) =>
      signed(levelAt(over.frequenciesHz, other.levelDb, hz) - levelAt(curves.frequenciesHz, levelDb, hz)),
    );
    if (id !== chosen) return [change];
    return [column('own', 'as it is', own), column('over', 'with it', levelsOf(over, other.levelDb)), change];
  });
};

/** The curves as numbers, one row a twelfth of an octave. */
export const CurvesTable = () => {
  const curves = useShownCurves();
  const beside = useBeside();
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  if (!curves) return null;
  const { frequenciesHz, fine } = curves;
  const rows = Array.from(frequenciesHz.keys()).filter((i) => i % (fine ? EVERY.fine : EVERY.coarse) === 0);
  const columns = columnsOf(project, curves, beside, seatId);
  const classOf = ({ chosen }: Column) => (chosen ? 'is-chosen' : undefined);
  return (
    <section className="plot-table scrolls" aria-label="Table of the curves" {...SCROLLED_BY_KEYS}>
      <table>
        <caption className="unseen">
          Level at every seat in decibels, against the free field of one subwoofer at 1 m
          {beside.curves && `; what ${beside.word} changes`}
        </caption>
        <thead>
          <tr>
            <th scope="col">Hz</th>
            {columns.map((column) => (
              <th key={column.key} scope="col" className={classOf(column)}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((i) => (
            <tr key={i}>
              <th scope="row">{fixed(frequenciesHz[i], 1)}</th>
              {columns.map((column) => (
                <td key={column.key} className={classOf(column)}>
                  {column.cell(frequenciesHz[i])}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};
