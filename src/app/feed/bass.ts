import type { Lane } from '../../compute/lane.ts';
import type { SessionState } from '../../state/session.ts';
import type { View } from '../../state/view.tsx';
import { createBackground } from './bass/background.ts';
import { emptyKept } from './bass/kept.ts';
import { createRefining } from './bass/refining.ts';
import { show } from './bass/showing.ts';
import { answered, errandFor, type Wanted, wantedOf } from './bass/wanted.ts';

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

const sameWanted = (a: Wanted, b: Wanted | null): boolean =>
  a.responsesKey === b?.responsesKey && a.slicesKey === b.slicesKey && a.meanKey === b.meanKey;

/**
 * Keeps the bass results up to date. The interactive lane answers seats and slice together, so that what is shown together
 * was computed together; when the hand rests, the background lane adds what takes longer: modes,
 * damping band, curves to be drawn, and a decay where one is looked at. Unit responses are
 * kept apart from gain, delay and polarity: an edit of those is shown from what is kept and calls no engine.
 */
export const feedBass = (view: View, lanes: Lanes): (() => void) => {
  const kept = emptyKept();
  const refining = createRefining(view);
  let asked: Wanted | null = null;
  let stopped = false;

  /** What the background may work for: the hand rests and the seats are answered. */
  const atRest = (): Wanted | null => {
    if (stopped || view.document.getState().gestureOpen) return null;
    const wanted = wantedOf(view);
    return kept.responses.key === wanted.responsesKey ? wanted : null;
  };
  const background = createBackground(lanes.background, kept, atRest, () => {
    if (!stopped) show(view, kept, wantedOf(view));
  });

  const ask = async (wanted: Wanted) => {
    const errand = errandFor(wanted, kept);
    asked = wanted;
    refining.begin();
    const outcome = await lanes.interactive.ask(errand.jobs);
    if (!lanes.interactive.busy) refining.end();
    if (stopped || outcome.status === 'superseded') return;
    if (outcome.status === 'failed') {
      view.results.setState({ trouble: 'The bass could not be worked out just now. Change anything to try again.' });
      return;
    }
    errand.take(outcome.answers);
    show(view, kept, wanted);
    background.rest();
  };

  const update = () => {
    const wanted = wantedOf(view);
    show(view, kept, wanted);
    if (answered(wanted, kept)) background.rest();
    else if (!sameWanted(wanted, asked) || !lanes.interactive.busy) void ask(wanted);
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
