import { type FormEvent, useEffect, useRef, useState } from 'react';
import type { Point2 } from '../../math/polyline.ts';
import { drawPlan, isRectangle } from '../../model/commands/draw-plan.ts';
import {
  aimNext,
  crossing,
  draftAreaM2,
  EMPTY_DRAFT,
  lengthM,
  type PlanDraft,
  pointAlong,
  stepBack,
  withCorner,
} from '../../model/plan-draft.ts';
import { planCorners } from '../../model/plan-walls.ts';
import { useDocument, useView } from '../../state/view.tsx';
import { parseQuantity } from '../../words/quantities.ts';
import { refusalText } from '../../words/refusals.ts';
import { useMedia, useUnits } from '../hooks.ts';
import { Icon } from '../marks/Icon.tsx';
import { announce } from '../useItemActions.ts';
import { BoardCanvas } from './BoardCanvas.tsx';
import { WallList } from './WallList.tsx';
import './plan-board.css';

const DIRECTIONS = [
  { deg: 0, word: 'Right', sign: '→' },
  { deg: 90, word: 'Back', sign: '↓' },
  { deg: 180, word: 'Left', sign: '←' },
  { deg: 270, word: 'Front', sign: '↑' },
] as const;

/** The plan drawn corner by corner, by mouse, finger or keyboard alone; nothing of it touches the room until it is used. */
export const PlanBoard = () => {
  const view = useView();
  const { document, session } = view;
  const units = useUnits();
  const project = useDocument((state) => state.project);
  const [draft, setDraft] = useState<PlanDraft>(() => ({ corners: planCorners(project), closed: true }));
  const [length, setLength] = useState('');
  const [direction, setDirection] = useState(0);
  const [says, setSays] = useState<string | null>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal();
  }, []);
  // Whoever opens the plan can type at once; with a finger the keyboard stays away until it is asked for.
  const coarse = useMedia('(pointer: coarse)');
  useEffect(() => {
    if (!draft.closed && !coarse) input.current?.focus();
  }, [draft.closed, coarse]);
  const close = () => session.setState({ planBoard: false });

  const change = (next: PlanDraft) => {
    setDraft(next);
    setSays(null);
  };
  const crossed = crossing(draft);
  const typedM = length.trim() === '' ? undefined : parseQuantity(length, 'length', units);
  const add = (atM: Point2, closes: boolean) => {
    const from = draft.corners[draft.corners.length - 1];
    const next = withCorner(draft, { atM, closes });
    change(next);
    setLength('');
    if (!coarse) input.current?.focus();
    if (next.closed) return announce(view, `Closed: ${draftAreaM2(next).toFixed(1)} square metres.`);
    if (!from || next === draft) return;
    announce(view, `Corner ${next.corners.length}.`);
    // Walking round the room one turns right at the next corner more often than not.
    const turned = Math.round((Math.atan2(atM[1] - from[1], atM[0] - from[0]) * 180) / Math.PI / 90) * 90;
    setDirection((turned + 90 + 360) % 360);
  };
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    const last = draft.corners[draft.corners.length - 1];
    if (!last) return add([0, 0], false);
    if (typedM === undefined || typedM <= 0)
      return setSays(`This length cannot be read: ${units === 'metric' ? 'for example 3.2' : `for example 10' 6"`}.`);
    const atM = pointAlong(last, direction, typedM);
    add(atM, draft.corners.length > 2 && lengthM(atM, draft.corners[0]) < 0.02);
  };
  const use = () => {
    const refusal = document.actions.apply('Draw the plan', (from) => drawPlan(from, draft.corners));
    if (refusal) return setSays(refusalText(refusal, units, document.getState().project));
    announce(view, `The plan is drawn: ${draftAreaM2(draft).toFixed(1)} square metres.`);
    close();
  };
  const begin = () => {
    change(EMPTY_DRAFT);
    setDirection(0);
    if (!coarse) input.current?.focus();
  };
  const area =
    units === 'metric' ? `${draftAreaM2(draft).toFixed(1)} m²` : `${(draftAreaM2(draft) * 10.7639).toFixed(0)} sq ft`;

  return (
    <dialog className="plan-board" ref={dialog} aria-labelledby="plan-board-title" onClose={close}>
      <header>
        <h2 id="plan-board-title">Plan</h2>
        <p className="plan-area">{draft.corners.length > 2 ? area : ''}</p>
        <button type="button" className="icon-button" aria-label="Close without changing the room" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <BoardCanvas draft={draft} crossed={crossed} typedM={typedM} onChange={change} onAdd={add} aim={aimNext} />
      <div className="plan-side scrolls">
        {draft.closed ? (
          <p>Drag a corner, or change a wall's length below.</p>
        ) : (
          <form onSubmit={onSubmit}>
            <p>
              {draft.corners.length === 0
                ? 'Touch the board where the first corner is, or begin with the button.'
                : 'Point the way and touch for the next corner, or type how long the wall is. End on the first corner.'}
            </p>
            <fieldset className="plan-ways">
              <legend>Next wall goes to the</legend>
              {DIRECTIONS.map(({ deg, word, sign }) => (
                <label key={deg}>
                  <input type="radio" name="way" checked={direction === deg} onChange={() => setDirection(deg)} />
                  <span aria-hidden="true">{sign}</span> {word}
                </label>
              ))}
            </fieldset>
            <div className="plan-typed">
              <label>
                Angle
                <input
                  type="number"
                  min={0}
                  max={359}
                  value={direction}
                  aria-label="Direction in degrees: 0 to the right, 90 to the back"
                  onChange={(event) => setDirection(((Number(event.target.value) % 360) + 360) % 360)}
                />
                °
              </label>
              <label>
                Length
                <input
                  ref={input}
                  type="text"
                  autoComplete="off"
                  inputMode="decimal"
                  value={length}
                  placeholder={units === 'metric' ? '3.2' : `10' 6"`}
                  onChange={(event) => setLength(event.target.value)}
                />
              </label>
              <button type="submit" className="word-button is-brass">
                {draft.corners.length === 0 ? 'Begin here' : 'Add corner'}
              </button>
            </div>
          </form>
        )}
        <WallList draft={draft} onChange={change} />
      </div>
      <footer>
        {(crossed || says) && (
          <p role="alert">
            {crossed
              ? crossed[0] === crossed[1]
                ? `Wall ${crossed[0] + 1} has no length.`
                : `Walls ${crossed[0] + 1} and ${crossed[1] + 1} cross or touch: move a corner.`
              : says}
          </p>
        )}
        <button type="button" className="word-button" onClick={begin}>
          Draw anew
        </button>
        <button
          type="button"
          className="word-button"
          disabled={draft.corners.length === 0}
          onClick={() => change(stepBack(draft))}
        >
          {draft.closed ? 'Open it again' : 'Take back'}
        </button>
        {!draft.closed && (
          <button
            type="button"
            className="word-button"
            disabled={draft.corners.length < 3}
            onClick={() => add(draft.corners[0], true)}
          >
            Close the plan
          </button>
        )}
        <button
          type="button"
          className="word-button is-brass"
          disabled={!draft.closed || crossed !== null}
          onClick={use}
        >
          {draft.closed && isRectangle(draft.corners) ? 'Use this rectangle' : 'Use this plan'}
        </button>
      </footer>
    </dialog>
  );
};
