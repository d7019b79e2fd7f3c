import { bassFieldKey, bassPlacesKey, driveKey, geometryKey } from '../../analysis/inputs.ts';
import type { Lane } from '../../compute/lane.ts';
import { alternativesOf, equaliserOf, variantOf } from '../../model/alternatives.ts';
import type { Project } from '../../model/project.ts';
import type { Compared } from '../../proposals/alternatives.ts';
import { keptId } from '../../proposals/beside.ts';
import { centreOf } from '../../proposals/chain.ts';
import type { ImproveGoal } from '../../proposals/subwoofers/improve.ts';
import { type ChoiceState, initialChoice } from '../../state/choice.ts';
import type { SessionState } from '../../state/session.ts';
import type { View } from '../../state/view.tsx';

/** The hand has to rest this long before the tables are worked out anew. */
const REST_MS = 400;
/** One seed for all searches: the same room gives the same answer. */
const SEED = 1;

const boxes = ({ subwoofers }: Project): string =>
  JSON.stringify(subwoofers.map(({ sizeM, highPassHz, maxOutput, locked }) => [sizeM, highPassHz, maxOutput, locked]));

const keysOf = (project: Project): ChoiceState['keys'] => {
  const room = `${bassFieldKey(project)}|${bassPlacesKey(project)}|${driveKey(project)}|${boxes(project)}`;
  const { bass, listening } = project;
  const chain = `${room}|${JSON.stringify([bass, listening, equaliserOf(project), centreOf(project)?.atM])}`;
  return {
    arrangements: `${room}|${geometryKey(project)}`,
    chain,
    compared: `${chain}|${JSON.stringify(project.alternatives ?? null)}`,
  };
};

const NOTHING_FOUND = initialChoice.search;

type Kind = keyof ChoiceState['keys'];

/** What is looked at just now: everything in the choice of subwoofers, over the curves what lies over them. */
const looksAt = ({ choosing, beside }: SessionState): Readonly<Record<Kind, boolean>> => ({
  arrangements: choosing,
  chain: choosing || beside === 'proposed' || beside === 'centre' || beside === 'filled',
  compared: choosing || keptId(beside) !== null,
});

/** The document as it is, then every stored alternative that fits the room. */
const documentsOf = (project: Project): Compared[] => [
  { id: 'now', project },
  ...alternativesOf(project).flatMap((stored) => {
    const variant = variantOf(project, stored);
    return variant ? [{ id: stored.id, project: variant }] : [];
  }),
];

export interface Choice {
  improve(goal: ImproveGoal): void;
  stopImproving(): void;
}

/**
 * Works out what the choice of subwoofers shows, in the background and only while it is looked at there or over the curves:
 * arrangements, chain, alternatives when the hand has rested, the search for better places when it is asked for. A search goes on while the
 * document changes; its proposals carry the revision they belong to.
 */
export const feedChoice = (view: View, background: Lane): Choice => {
  const { studies } = background;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked: Partial<Record<Kind, string>> = {};

  const set = (next: Partial<ChoiceState>): void =>
    view.results.setState(({ choice }) => ({ choice: { ...choice, ...next } }));

  const ask = (): void => {
    const { project, revision, gestureOpen } = view.document.getState();
    if (gestureOpen) return;
    const looked = looksAt(view.session.getState());
    const keys = keysOf(project);
    const failed = (): void => {
      asked = {};
      set({ trouble: true });
    };
    const isDue = (kind: Kind): boolean => {
      if (!looked[kind] || asked[kind] === keys[kind]) return false;
      asked = { ...asked, [kind]: keys[kind] };
      return true;
    };
    if (isDue('chain')) {
      void studies.ask({ kind: 'chain', project, revision, stored: equaliserOf(project) }).then((outcome) => {
        if (outcome.status === 'done') set({ chain: { key: keys.chain, value: outcome.result }, trouble: false });
        else if (outcome.status === 'failed') failed();
      });
    }
    if (isDue('arrangements')) {
      void studies.ask({ kind: 'arrangements', project }).then((outcome) => {
        if (outcome.status === 'done') set({ arrangements: { key: keys.arrangements, value: outcome.result } });
        else if (outcome.status === 'failed') failed();
      });
    }
    if (isDue('compared')) {
      const documents = documentsOf(project);
      if (documents.length < 2) set({ compared: null });
      else {
        void studies.ask({ kind: 'alternatives', documents }).then((outcome) => {
          if (outcome.status === 'done') set({ compared: { key: keys.compared, value: outcome.result } });
          else if (outcome.status === 'failed') failed();
        });
      }
    }
  };

  const rest = (waitMs: number): void => {
    if (!Object.values(looksAt(view.session.getState())).some(Boolean)) return;
    const keys = keysOf(view.document.getState().project);
    set({ keys });
    clearTimeout(timer);
    timer = setTimeout(ask, waitMs);
  };
  view.document.subscribe((now, before) => {
    if (now.project !== before.project || now.gestureOpen !== before.gestureOpen) rest(REST_MS);
  });
  view.session.subscribe((now, before) => {
    if (now.choosing !== before.choosing || now.beside !== before.beside) rest(0);
  });
  rest(0);

  return {
    improve: (goal) => {
      const { project, revision } = view.document.getState();
      set({ search: { ...NOTHING_FOUND, status: 'running', progress: { share: 0, doing: 'places' } } });
      void studies
        .ask({ kind: 'improve', project, revision, goal, seed: SEED }, (progress) =>
          set({ search: { ...NOTHING_FOUND, status: 'running', progress } }),
        )
        .then((outcome) => {
          // A superseded search was stopped by hand, or a newer one shows itself already.
          if (outcome.status === 'done') {
            set({ search: { status: 'done', progress: null, result: outcome.result, searched: project } });
          } else if (outcome.status === 'failed') set({ search: { ...NOTHING_FOUND, status: 'failed' } });
        });
    },
    stopImproving: () => {
      studies.stop('improve');
      set({ search: NOTHING_FOUND });
    },
  };
};
