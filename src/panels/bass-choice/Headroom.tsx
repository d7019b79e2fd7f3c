import { judge, type Ranges } from '../../analysis/rules/rule.ts';
import { rules } from '../../analysis/rules/table.ts';
import type { HeadroomReadout } from '../../proposals/chain.ts';
import { useDocument, useSession } from '../../state/view.tsx';
import { SCROLLED_BY_KEYS } from '../bass/plot.ts';
import { seatShort, seatTitle } from '../naming.ts';
import { dB } from './figures.tsx';

const BASS_LEVEL_RANGES: Ranges = rules['bass-level-reached'].ranges.living;
const VERDICT_CLASS = { met: undefined, close: 'is-close', missed: 'is-missed' } as const;

/** Coloured as the finding of this judges it. */
const Margin = ({ db }: { db: number }) => (
  <td className={VERDICT_CLASS[judge(db, BASS_LEVEL_RANGES)]}>
    {dB(db)}
    {db < 0 && <small>short</small>}
  </td>
);

/** All margins: a seat a column, a band a row. */
const EverySeat = ({ headroom: { bandsHz, seats } }: { readonly headroom: HeadroomReadout }) => {
  const project = useDocument((state) => state.project);
  return (
    <section className="is-wide scrolls" aria-label="Headroom at every seat" {...SCROLLED_BY_KEYS}>
      <table className="choice-table">
        <caption className="unseen">Greatest peak less the one asked for, dB, by band and seat</caption>
        <thead>
          <tr>
            <th scope="col">Hz</th>
            {seats.map(({ id }) => (
              <th key={id} scope="col">
                <abbr title={seatTitle(project, id)}>{seatShort(project, id)}</abbr>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {bandsHz.map((hz, b) => (
            <tr key={hz}>
              <th scope="row">{hz}</th>
              {seats.map(({ id, marginDb }) => (
                <Margin key={id} db={marginDb[b]} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

/** Greatest peaks over the level asked for, by band, at the chosen seat and at the weakest; less than nothing is marked by a word, not by colour alone. */
export const Headroom = ({ headroom }: { headroom: HeadroomReadout | null }) => {
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  if (!headroom)
    return (
      <p className="waiting">
        Say what each subwoofer can put out (greatest output by band, among its parameters), and this shows how much is
        left.
      </p>
    );
  const { askedDb, bandsHz, seats } = headroom;
  const here = seats.find(({ id }) => id === seatId) ?? seats[0];
  const short = seats.flatMap(({ id, marginDb }) =>
    marginDb.flatMap((margin, b) => (margin < 0 ? [{ id, margin, hz: bandsHz[b] }] : [])),
  );
  const worst = short.sort((a, b) => a.margin - b.margin)[0];
  return (
    <>
      <p>
        Peaks of {Math.round(askedDb)} dB are asked for.{' '}
        {worst
          ? `${seatTitle(project, worst.id)} falls ${dB(-worst.margin)} dB short at ${worst.hz} Hz.`
          : 'Every seat gets them in every band stated.'}
      </p>
      <table className="choice-table is-headroom">
        <caption className="unseen">
          Greatest peak less the one asked for, by band: at the chosen seat and at the weakest
        </caption>
        <thead>
          <tr>
            <th scope="col">
              Band <small>Hz</small>
            </th>
            <th scope="col">
              {seatTitle(project, here.id)} <small>dB left</small>
            </th>
            <th scope="col">
              Weakest <small>dB left</small>
            </th>
            <th scope="col">There</th>
          </tr>
        </thead>
        <tbody>
          {bandsHz.map((hz, b) => {
            const weakest = seats.reduce(
              (least, seat) => (seat.marginDb[b] < least.marginDb[b] ? seat : least),
              seats[0],
            );
            return (
              <tr key={hz}>
                <th scope="row">{hz}</th>
                <Margin db={here.marginDb[b]} />
                <Margin db={weakest.marginDb[b]} />
                <td>{seatTitle(project, weakest.id)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <details>
        <summary>Every seat</summary>
        <EverySeat headroom={headroom} />
      </details>
      <p className="fact-note is-caution">
        Peak against peak, the first subwoofer to reach its limit counting for all. Such levels harm hearing with time,
        and bass crosses party walls.
      </p>
    </>
  );
};
