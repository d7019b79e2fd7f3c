import { type CSSProperties, type KeyboardEvent, useMemo, useRef } from 'react';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { worstAtSeat } from '../findings/order.ts';
import { useChoose } from '../hooks.ts';
import { VerdictMark } from '../marks/VerdictMark.tsx';
import { itemTitle, seatTitle } from '../naming.ts';
import { type Direction, drawSeatPlan, neighbour, type PlanRect, type PlanSeat, type PlanSpace } from './plan.ts';
import { placeNames } from './plan-names.ts';
import './seats.css';

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** A chair this wide has room for the verdict's word under its mark; a smaller one keeps it in its name. */
const WORD_PX = 48;
/** And this wide for its number in the row beside the mark. */
const NUMBER_PX = 24;

const place = ({ left, top, width, height }: PlanRect): CSSProperties => ({ left, top, width, height });

/** With how far beyond its edges it may be met. */
const chairPlace = (seat: PlanSeat): CSSProperties =>
  ({ ...place(seat), '--reach-x': `${-seat.reachX}px`, '--reach-y': `${-seat.reachY}px` }) as CSSProperties;

/** The chairs as buttons where they stand. One click chooses, Enter or a second click sits. */
export const SeatPlan = ({ maxWidth, maxHeight, leastPx = 0 }: PlanSpace) => {
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const chosenObject = useSession(({ selection }) => (selection?.kind === 'object' ? selection.id : null));
  const findings = useResults((state) => state.findings?.value);
  const choose = useChoose();
  const plan = useRef<HTMLDivElement>(null);
  const drawing = useMemo(
    () => drawSeatPlan(project, { maxWidth, maxHeight, leastPx }),
    [project, maxWidth, maxHeight, leastPx],
  );
  const names = useMemo(() => {
    const things = drawing.objects.map((one) => ({ ...one, name: itemTitle(project, { kind: 'object', id: one.id }) }));
    return placeNames(things, [...drawing.seats, ...drawing.subwoofers, drawing.picture], drawing);
  }, [project, drawing]);
  const stop = drawing.seats.some(({ id }) => id === seatId) ? seatId : drawing.seats[0]?.id;

  const onKeyDown = (event: KeyboardEvent<HTMLButtonElement>, id: string) => {
    if (event.key === 'Enter') {
      event.preventDefault();
      choose.sitAt(id);
      return;
    }
    const direction = ARROWS[event.key];
    if (!direction) return;
    event.preventDefault();
    event.stopPropagation();
    const next = neighbour(drawing.seats, id, direction);
    choose.seat(next);
    plan.current?.querySelector<HTMLElement>(`[data-seat="${CSS.escape(next)}"]`)?.focus();
  };

  return (
    <div className="plan-frame">
      <div
        className={`plan is-${drawing.turn}${drawing.outline ? ' is-shaped' : ''}`}
        ref={plan}
        role="toolbar"
        aria-label="Seat plan: arrows choose, Enter sits"
        aria-orientation={drawing.turn === 'across' ? 'horizontal' : 'vertical'}
        style={{ width: drawing.width, height: drawing.height }}
      >
        {drawing.outline && (
          <svg className="plan-walls" width={drawing.width} height={drawing.height} aria-hidden="true">
            <polygon points={drawing.outline.map((corner) => corner.join(',')).join(' ')} />
          </svg>
        )}
        {drawing.risers.map((riser) => (
          <i key={riser.id} className="plan-riser" style={place(riser)} />
        ))}
        {drawing.objects.map((object) => (
          <i
            key={object.id}
            className={object.id === chosenObject ? 'plan-object is-chosen' : 'plan-object'}
            style={place(object)}
          />
        ))}
        {names.map(({ id, name, ...rect }) => (
          <span key={id} className={id === chosenObject ? 'plan-name is-chosen' : 'plan-name'} style={place(rect)}>
            {name}
          </span>
        ))}
        <i className="plan-picture" style={place(drawing.picture)} />
        {drawing.subwoofers.map((sub) => (
          <i key={sub.id} className="plan-sub" style={place(sub)} />
        ))}
        {drawing.seats.map((seat) => {
          const verdict = findings ? worstAtSeat(findings, seat.id) : null;
          const chosen = seat.id === seatId;
          const name = `${seatTitle(project, seat.id)}${verdict ? `, ${verdict}` : ''}`;
          return (
            <button
              key={seat.id}
              type="button"
              className={chosen ? 'chair is-chosen' : 'chair'}
              data-seat={seat.id}
              data-verdict={verdict ?? ''}
              data-back={seat.back}
              aria-pressed={chosen}
              aria-label={name}
              title={name}
              tabIndex={seat.id === stop ? 0 : -1}
              style={chairPlace(seat)}
              onClick={() => choose.seat(seat.id)}
              onDoubleClick={() => choose.sitAt(seat.id)}
              onKeyDown={(event) => onKeyDown(event, seat.id)}
            >
              <span className="chair-face">
                {seat.width >= NUMBER_PX && seat.number}
                {verdict && <VerdictMark verdict={verdict} />}
              </span>
              {verdict && seat.width >= WORD_PX && seat.height >= WORD_PX / 2 && verdict}
            </button>
          );
        })}
      </div>
    </div>
  );
};
