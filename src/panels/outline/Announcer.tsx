import { useEffect } from 'react';
import { useSession, useView, type View } from '../../state/view.tsx';
import { announce } from '../useItemActions.ts';
import { changeText, steppedText, verdictText } from './saying.ts';

/** Findings are told once they have rested this long. */
const FINDINGS_REST_MS = 1500;
/** What was done is told once the hand rests. */
const CHANGE_REST_MS = 150;

/** How long what changed among the findings stays in sight. */
const TOLD_MS = 8000;

const joined = (...texts: readonly (string | null)[]): string | null =>
  texts.filter((text) => text !== null).join(' ') || null;

/** Tells what moved where, whoever moved it, and which findings changed their verdict. */
const listen = (view: View): (() => void) => {
  const { document, results } = view;
  let told = document.getState().project;
  let findings = results.getState().findings?.value ?? null;
  let changeTimer = 0;
  let findingsTimer = 0;
  let toldTimer = 0;
  const showTold = (told: string) => {
    window.clearTimeout(toldTimer);
    view.session.setState({ told });
    toldTimer = window.setTimeout(() => view.session.setState({ told: null }), TOLD_MS);
  };
  /** Without a past or a future a room was just opened: nothing was changed that could be told of. */
  const justOpened = () => !document.getState().canUndo && !document.getState().canRedo;
  const tellChange = () => {
    const { project, gestureOpen } = document.getState();
    if (gestureOpen || project === told) return;
    const moved = justOpened() ? null : changeText(told, project);
    told = project;
    const text = joined(steppedText(document.getState()), moved);
    if (text !== null) announce(view, text);
  };
  const tellFindings = () => {
    const now = results.getState().findings;
    const { revision, gestureOpen, project } = document.getState();
    if (gestureOpen || !now || now.revision !== revision) return;
    const text = findings && !justOpened() ? verdictText(findings, now.value, project) : null;
    findings = now.value;
    if (text === null) return;
    announce(view, text);
    showTold(joined(steppedText(document.getState()), text) ?? text);
  };
  /** A step taken back or done again is named at once, whatever comes of it. */
  const tellStep = () => {
    const text = steppedText(document.getState());
    if (text !== null) showTold(text);
  };
  const offs = [
    document.subscribe((now, last) => {
      if (now.stepped !== last.stepped) tellStep();
      window.clearTimeout(changeTimer);
      changeTimer = window.setTimeout(tellChange, CHANGE_REST_MS);
    }),
    results.subscribe(() => {
      window.clearTimeout(findingsTimer);
      findingsTimer = window.setTimeout(tellFindings, FINDINGS_REST_MS);
    }),
  ];
  return () => {
    window.clearTimeout(changeTimer);
    window.clearTimeout(findingsTimer);
    window.clearTimeout(toldTimer);
    for (const off of offs) off();
  };
};

/** The page's one polite live region for what is done to the room. */
export const Announcer = () => {
  const view = useView();
  const { text, count } = useSession((state) => state.announcement);
  useEffect(() => listen(view), [view]);
  // A space more or less makes the same words news to a screen reader.
  return (
    <p className="unseen" role="log" aria-live="polite">
      {count % 2 === 0 ? text : `${text}\u00a0`}
    </p>
  );
};
