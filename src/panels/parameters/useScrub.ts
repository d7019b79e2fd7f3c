import { type MouseEvent, type PointerEvent, useEffect, useRef } from 'react';
import { useView } from '../../state/view.tsx';
import type { Handled } from './useControl.ts';

/** So far a hand goes for one step. */
const PX_PER_STEP = 4;
/** A press that moves less is a click. */
const CLICK_PX = 4;

interface Scrub {
  readonly pointerId: number;
  readonly fromX: number;
  readonly start: number;
  moved: boolean;
}

/** Dragging a label sideways turns its number: one mark, one commit, Escape gives back what was. */
export const useScrub = ({ control, number, stepFrom }: Handled) => {
  const { document } = useView();
  const scrub = useRef<Scrub | null>(null);
  const wasScrub = useRef(false);

  useEffect(() => {
    const drop = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !scrub.current) return;
      event.stopPropagation();
      event.preventDefault();
      if (scrub.current.moved) document.actions.cancel();
      scrub.current = null;
    };
    window.addEventListener('keydown', drop, { capture: true });
    return () => {
      window.removeEventListener('keydown', drop, { capture: true });
      if (scrub.current?.moved) document.actions.commit();
      scrub.current = null;
    };
  }, [document]);

  const onPointerDown = (event: PointerEvent) => {
    wasScrub.current = false;
    if (event.button !== 0 || number === undefined) return;
    scrub.current = { pointerId: event.pointerId, fromX: event.clientX, start: number, moved: false };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const onPointerMove = (event: PointerEvent) => {
    const held = scrub.current;
    if (held?.pointerId !== event.pointerId) return;
    const dx = event.clientX - held.fromX;
    if (!held.moved) {
      if (Math.abs(dx) < CLICK_PX) return;
      held.moved = true;
      document.actions.mark(`Change ${control.field.label.charAt(0).toLowerCase()}${control.field.label.slice(1)}`);
    }
    stepFrom(held.start, Math.round(dx / PX_PER_STEP) * (event.shiftKey ? 10 : 1));
  };
  const end = (done: boolean) => (event: PointerEvent) => {
    const held = scrub.current;
    if (held?.pointerId !== event.pointerId) return;
    scrub.current = null;
    wasScrub.current = held.moved;
    if (!held.moved) return;
    if (done) document.actions.commit();
    else document.actions.cancel();
  };
  // The label's own click would take the hand to the field after every turn.
  const onClick = (event: MouseEvent) => wasScrub.current && event.preventDefault();
  return { onPointerDown, onPointerMove, onPointerUp: end(true), onPointerCancel: end(false), onClick };
};
