import { useMemo } from 'react';
import { referenceSeatId } from '../../model/seating.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { FindingItem } from '../findings/FindingItem.tsx';
import { MetList } from '../findings/MetList.tsx';
import { worseFirst, worstAtSeat } from '../findings/order.ts';
import { useChoose, useCurrent } from '../hooks.ts';
import { VerdictWord } from '../marks/VerdictMark.tsx';
import { seatTitle } from '../naming.ts';
import { BassLines } from './BassLines.tsx';
import { LoudspeakerTable } from './LoudspeakerTable.tsx';
import { PictureLines } from './PictureLines.tsx';
import './card.css';

const SeatHead = ({ seatId }: { seatId: string }) => {
  const project = useDocument((state) => state.project);
  const findings = useResults((state) => state.findings?.value);
  const mode = useSession((state) => state.mode);
  const choose = useChoose();
  const verdict = findings ? worstAtSeat(findings, seatId) : null;
  return (
    <header className="card-head">
      <h2>{seatTitle(project, seatId)}</h2>
      {verdict ? <VerdictWord verdict={verdict} /> : <span />}
      <p>
        {seatId}
        {referenceSeatId(project) === seatId && ', where the layout is judged'}
      </p>
      {mode !== 'sit' && (
        <button type="button" className="word-button is-brass" onClick={() => choose.sitAt(seatId)}>
          Sit here
        </button>
      )}
    </header>
  );
};

const SeatFindings = ({ seatId }: { seatId: string }) => {
  const findings = useResults((state) => state.findings?.value);
  const mine = useMemo(
    () => findings?.filter(({ seat }) => seat === seatId).sort(worseFirst) ?? [],
    [findings, seatId],
  );
  const open = mine.filter(({ verdict }) => verdict !== 'met');
  const met = mine.filter(({ verdict }) => verdict === 'met');
  return (
    <>
      {open.length > 0 && (
        <ul>
          {open.map((finding) => (
            <FindingItem key={finding.id} finding={finding} />
          ))}
        </ul>
      )}
      <MetList findings={met} where=" here" />
    </>
  );
};

/** Everything about the chosen seat. */
export const SeatCard = () => {
  const seatId = useSession((state) => state.seatId);
  const seats = useResults((state) => state.geometry?.value.seats);
  const current = useCurrent('geometry');
  const seatIndex = seats?.findIndex(({ id }) => id === seatId) ?? -1;
  if (!seats || seatIndex < 0) return <p className="waiting">Choose a chair in the seat plan.</p>;
  const seat = seats[seatIndex];
  return (
    <article className="card" data-seat-card={seatId}>
      <SeatHead seatId={seatId} />
      <SeatFindings seatId={seatId} />
      <div className={current ? undefined : 'is-stale'} aria-busy={!current}>
        <h3>Picture</h3>
        <PictureLines picture={seat.picture} seatIndex={seatIndex} />
        <h3>Loudspeakers, from the ears</h3>
        <LoudspeakerTable loudspeakers={seat.loudspeakers} />
      </div>
      <h3>Bass</h3>
      <BassLines seatIndex={seatIndex} />
    </article>
  );
};
