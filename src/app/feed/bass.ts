import type { Lane } from '../../compute/lane.ts';
import type { Detail } from '../../engines/bass/room-field.ts';
import type { SessionState } from '../../state/session.ts';
import type { View } from '../../state/view.tsx';
import { createBackground } from './bass/background.ts';
import { emptyKept } from './bass/kept.ts';
import { createRefining } from './bass/refining.ts';
import { show } from './bass/showing.ts';
import { answered, errandFor, type Wanted, wantedOf } from './bass/wanted.ts';
import { createWarming } from './bass/warming.ts';

export interface Lanes {
  readonly interactive: Lane;
  readonly background: Lane;
}

/** What of the session the engine is asked for. */
const sameQuestion = (now: SessionState, before: SessionState): boolean =>
  now.frequencyHz === before.frequencyHz &&
  now.seatId === before.seatId &&
  now.slice === before.slice &&
  now.bassSheet === before.bassSheet;

const sameWanted = (a: Wanted, b: Wanted): boolean =>
  a.responsesKey === b.responsesKey && a.slicesKey === b.slicesKey && a.meanKey === b.meanKey;

/**
 * Keeps the bass results up to date. A room that takes a while is shown by a first picture at once and refined when the hand
 * rests, in portions, so that a hand that moves again waits for none of it. The interactive lane answers seats and slice
 * together, so that what is shown together was computed together; when the hand rests, the background lane adds what takes
 * longer: modes, damping band, curves to be drawn, and a decay where one is looked at. Unit responses are kept apart from
 * gain, delay and polarity: an edit of those is shown from what is kept and calls no engine.
 */
export const feedBass = (view: View, lanes: Lanes): (() => void) => {
  const kept = emptyKept();
  const refining = createRefining(view);
  const warming = createWarming(lanes.interactive);
  let asked: { readonly wanted: Wanted; readonly detail: Detail } | null = null;
  let warmingUp = false;
  let stopped = false;

  /** What the background may work for: the hand rests and what is wanted is shown. */
  const atRest = (): Wanted | null => {
    if (stopped || view.document.getState().gestureOpen) return null;
    const wanted = wantedOf(view);
    return answered(wanted, kept, 'first') ? wanted : null;
  };
  const background = createBackground(lanes.background, kept, atRest, () => {
    if (!stopped) show(view, kept, wantedOf(view));
  });

  const fail = () => {
    refining.end();
    view.results.setState({ trouble: 'The bass could not be worked out just now. Change anything to try again.' });
  };

  const ask = async (wanted: Wanted, detail: Detail) => {
    const errand = errandFor(wanted, kept, detail);
    asked = { wanted, detail };
    refining.begin();
    const outcome = await lanes.interactive.ask(errand.jobs);
    if (stopped || outcome.status === 'superseded') return;
    if (outcome.status === 'failed') {
      fail();
      return;
    }
    errand.take(outcome.answers);
    show(view, kept, wanted);
    rest();
  };

  /** What is shown is what is wanted: what takes longer may be worked out, the first picture's finer one before all else. */
  const rest = () => {
    const wanted = wantedOf(view);
    if (!answered(wanted, kept, 'first')) return;
    if (!answered(wanted, kept, 'fine')) void refine(wanted);
    else if (!lanes.interactive.busy) refining.end();
    background.rest();
  };

  const refine = async (wanted: Wanted) => {
    if (warmingUp || view.document.getState().gestureOpen) return;
    warmingUp = true;
    refining.begin();
    const { fieldKey } = wanted;
    const goOn = () => !stopped && !view.document.getState().gestureOpen && wantedOf(view).fieldKey === fieldKey;
    const outcome = await warming.warm(wanted, goOn);
    warmingUp = false;
    // Whatever interrupted it comes back here when it has been answered.
    if (outcome === 'ready') update();
    if (outcome === 'failed') fail();
  };

  const update = () => {
    const wanted = wantedOf(view);
    show(view, kept, wanted);
    const detail = warming.detailFor(wanted);
    if (answered(wanted, kept, detail)) rest();
    else if (!asked || asked.detail !== detail || !sameWanted(wanted, asked.wanted) || !lanes.interactive.busy)
      void ask(wanted, detail);
  };

  let seen = { revision: -1, gestureOpen: false };
  const stopDocument = view.document.subscribe(({ revision, gestureOpen }) => {
    if (revision === seen.revision && gestureOpen === seen.gestureOpen) return;
    seen = { revision, gestureOpen };
    update();
  });
  const stopSession = view.session.subscribe((now, before) => {
    if (!sameQuestion(now, before)) update();
  });
  update();
  return () => {
    stopped = true;
    refining.end();
    stopDocument();
    stopSession();
  };
};
