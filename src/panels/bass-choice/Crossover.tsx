import { CHAIN_FREQUENCIES_HZ, type CrossoverReadout, type Dip } from '../../proposals/chain.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { driveText } from '../../words/subwoofers.ts';
import { useUnits } from '../hooks.ts';
import { seatTitle } from '../naming.ts';
import { dB } from './figures.tsx';
import { OverCurves } from './OverCurves.tsx';
import { Sketch } from './Sketch.tsx';
import { useChoiceDocument } from './useChoiceDocument.ts';

/** A cure that gains less than this is none: nobody hears it. */
const WORTH_DB = 0.3;
const SHOWN_FROM_HZ = 40;
const SHOWN_TO_HZ = 162;

const shownPart = (levels: Float64Array): number[] =>
  Array.from(levels).filter(
    (_, f) => CHAIN_FREQUENCIES_HZ[f] >= SHOWN_FROM_HZ && CHAIN_FREQUENCIES_HZ[f] <= SHOWN_TO_HZ,
  );

const Cure = ({ crossover, revision }: { crossover: CrossoverReadout; revision: number }) => {
  const project = useDocument((state) => state.project);
  const now = useDocument((state) => state.revision);
  const units = useUnits();
  const edit = useChoiceDocument();
  const { cure } = crossover;
  const gain = cure.afterDb - cure.beforeDb;
  if (gain < WORTH_DB) return <p>No common delay or polarity would do noticeably better. Nothing to change.</p>;
  const { delayMs, inverted } = cure;
  const apply = () =>
    edit.apply({
      id: 'crossover',
      kind: 'crossover',
      revision,
      subwoofers: project.subwoofers.map((one) => ({
        ...one,
        delayMs: Math.round((one.delayMs + delayMs) * 10) / 10,
        inverted: one.inverted !== inverted,
      })),
    });
  const turned = inverted ? ' and reversed in polarity' : '';
  return (
    <>
      <p>
        With all subwoofers{' '}
        {Math.abs(delayMs) < 0.05 ? 'as they are' : `${dB(Math.abs(delayMs))} ms ${delayMs > 0 ? 'later' : 'earlier'}`}
        {turned}, only {dB(-cure.afterDb)} dB is lost. <b>Verify by measurement.</b>
      </p>
      <button type="button" className="word-button is-brass" disabled={now !== revision} onClick={apply}>
        Fill the dip
        <span className="unseen">: {driveText(0, delayMs, inverted, units)} for all subwoofers</span>
      </button>
    </>
  );
};

const DipCell = ({ dip }: { dip: Dip }) => (
  <td>
    {dB(dip.db)}
    <small>{Math.round(dip.hz)} Hz</small>
  </td>
);

/** Centre and subwoofers together at every seat, the dip where they meet, and what fills it. */
export const Crossover = ({ crossover, revision }: { crossover: CrossoverReadout; revision: number }) => {
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const { seats, cure, crossoverHz, loudspeaker } = crossover;
  const shown = seats.find(({ id }) => id === seatId) ?? seats[0];
  return (
    <>
      <p>
        Around {Math.round(crossoverHz)} Hz {loudspeaker} and the subwoofers lose {dB(-cure.beforeDb)} dB of what they
        could add up to, as a mean over the seats.
      </p>
      <Cure crossover={crossover} revision={revision} />
      <Sketch
        label={`${seatTitle(project, shown.id)}: centre and subwoofers through the crossover, now and with the dip filled`}
        frequenciesHz={shownPart(CHAIN_FREQUENCIES_HZ)}
        lines={[
          { name: 'now', tone: 'before', levelDb: shownPart(shown.beforeDb) },
          { name: 'filled', tone: 'after', levelDb: shownPart(shown.afterDb) },
        ]}
      />
      <OverCurves beside="centre" what="centre and subwoofers through the crossover" />
      <table className="choice-table">
        <caption className="unseen">What is lost, and the deepest dip near the crossover, by seat</caption>
        <thead>
          <tr>
            <th scope="col">Seat</th>
            <th scope="col">Lost now</th>
            <th scope="col">Filled</th>
            <th scope="col">Dip now</th>
            <th scope="col">Filled</th>
          </tr>
        </thead>
        <tbody>
          {seats.map(({ id, lossDb, lossAfterDb, dip, dipAfter }) => (
            <tr key={id} className={id === shown.id ? 'is-now' : undefined}>
              <th scope="row">{seatTitle(project, id)}</th>
              <td>{dB(-lossDb)}</td>
              <td>{dB(-lossAfterDb)}</td>
              <DipCell dip={dip} />
              <DipCell dip={dipAfter} />
            </tr>
          ))}
        </tbody>
      </table>
      <p className="fact-note">
        Dips against each seat’s own mean from 40 to 160 Hz. What is filled is the loss over the octave round the
        crossover: a narrow dip may stay, or move. Below the crossover the bass of every channel comes from the
        subwoofers. Fourth-order crossover, the subwoofers at the centre’s level ({dB(crossover.trimDb)} dB of trim).
      </p>
    </>
  );
};

/** What the chain of the document says, dimmed while a newer one is worked out. */
export const useChain = () => {
  const answered = useResults((state) => state.choice.chain);
  const key = useResults((state) => state.choice.keys.chain);
  return { chain: answered?.value ?? null, current: answered?.key === key };
};
