import { bassReadout } from '../../analysis/bass.ts';
import { bassFloor, floorHeightM, floorPlane } from '../../analysis/bass-floor.ts';
import {
  bassFieldKey,
  bassPlacesKey,
  boxSpec,
  defaultFrequenciesHz,
  driveKey,
  earTriples,
  sourceTriples,
} from '../../analysis/inputs.ts';
import { modeReadouts } from '../../analysis/modes.ts';
import type { Lane } from '../../compute/lane.ts';
import type { Answers, Job, UnitSlices } from '../../compute/protocol.ts';
import type { UnitResponses } from '../../engines/bass/room-field.ts';
import type { Project } from '../../model/project.ts';
import { requestFrame } from '../../state/frames.ts';
import type { View } from '../../state/view.tsx';

export interface Lanes {
  readonly interactive: Lane;
  readonly background: Lane;
}

const MODES_TO_HZ = 250;
const NO_BAND = { low: null, high: null };

/** What one answer of the engine was asked for: enough to show it later as what it is. */
interface Asked {
  readonly project: Project;
  readonly revision: number;
  readonly responsesKey: string;
  readonly slicesKey: string;
  readonly frequencyHz: number;
  readonly heightM: number;
}

interface Kept<T> {
  readonly key: string;
  readonly value: T;
}

/**
 * Keeps the bass results up to date. The interactive lane answers seats and floor together, so that what is shown together
 * was computed together; when the hand rests, the background lane adds the damping band. Unit responses are kept apart from
 * gain, delay and polarity: an edit of those is shown from what is kept and calls no engine.
 */
export const feedBass = (view: View, lanes: Lanes): (() => void) => {
  const frequenciesHz = defaultFrequenciesHz();
  let responses: Kept<UnitResponses> | null = null;
  let band: Kept<{ low: UnitResponses; high: UnitResponses }> | null = null;
  let slices: Kept<UnitSlices> | null = null;
  let asked: Asked | null = null;
  let bandAsked = '';
  let modesKey = '';
  let stopped = false;

  const need = (): Asked => {
    const { project, revision } = view.document.getState();
    const session = view.session.getState();
    const heightM = floorHeightM(project, session.floor.height, session.seatId);
    const sources = project.subwoofers.map(({ id, atM }) => [id, atM]);
    return {
      project,
      revision,
      responsesKey: `${bassFieldKey(project)}|${bassPlacesKey(project)}`,
      slicesKey: `${bassFieldKey(project)}|${JSON.stringify(sources)}|${heightM}|${session.frequencyHz}`,
      frequencyHz: session.frequencyHz,
      heightM,
    };
  };

  /** Shows what is kept as the results of `for_`, with that project's own gains and delays. */
  const show = (wanted: Asked) => {
    const { project, revision } = wanted;
    const { variant } = view.document.getState();
    const drives = driveKey(project);
    const shown = view.results.getState();
    if (responses?.key === wanted.responsesKey) {
      const bounds = band?.key === wanted.responsesKey ? band.value : null;
      const inputsKey = `${wanted.responsesKey}|${drives}|${bounds ? 'band' : ''}`;
      const value =
        shown.bass?.inputsKey === inputsKey
          ? shown.bass.value
          : bassReadout(project, { frequenciesHz, nominal: responses.value, ...(bounds ?? NO_BAND) });
      view.results.setState({ bass: { variant, revision, inputsKey, value } });
    }
    if (slices?.key === wanted.slicesKey) {
      const inputsKey = `${wanted.slicesKey}|${drives}`;
      const value =
        shown.floor?.inputsKey === inputsKey
          ? shown.floor.value
          : bassFloor(project, wanted.heightM, wanted.frequencyHz, slices.value.fields);
      view.results.setState({ floor: { variant, revision, inputsKey, value }, trouble: null });
      requestFrame('floor-ready');
    }
  };

  const ask = async (wanted: Asked) => {
    const spec = boxSpec(wanted.project);
    const sourcesM = sourceTriples(wanted.project);
    const wantsResponses = responses?.key !== wanted.responsesKey;
    const jobs: Job[] = [
      {
        kind: 'slices',
        spec,
        sourcesM,
        plane: floorPlane(wanted.project, wanted.heightM),
        frequencyHz: wanted.frequencyHz,
      },
    ];
    if (wantsResponses) {
      jobs.push({ kind: 'responses', spec, sourcesM, receiversM: earTriples(wanted.project), frequenciesHz });
    }
    asked = wanted;
    const outcome = await lanes.interactive.ask(jobs);
    if (stopped || outcome.status === 'superseded') return;
    if (outcome.status === 'failed') {
      view.results.setState({ trouble: 'The bass could not be worked out just now. Change anything to try again.' });
      return;
    }
    slices = { key: wanted.slicesKey, value: outcome.answers[0] as Answers['slices'] };
    if (wantsResponses) responses = { key: wanted.responsesKey, value: outcome.answers[1] as Answers['responses'] };
    show(wanted);
    rest();
  };

  /** Once the hand rests and the answer is current: the damping band and the mode list, in the background. */
  const rest = () => {
    const wanted = need();
    if (view.document.getState().gestureOpen || responses?.key !== wanted.responsesKey) return;
    if (bandAsked === wanted.responsesKey) return;
    bandAsked = wanted.responsesKey;
    void askBand(wanted);
  };

  const askBand = async (wanted: Asked) => {
    const { project } = wanted;
    const common = { sourcesM: sourceTriples(project), receiversM: earTriples(project), frequenciesHz };
    const outcome = await lanes.background.ask([
      { kind: 'modes', spec: boxSpec(project), maxHz: MODES_TO_HZ },
      { kind: 'responses', spec: boxSpec(project, 'low'), ...common },
      { kind: 'responses', spec: boxSpec(project, 'high'), ...common },
    ]);
    if (stopped) return;
    if (outcome.status !== 'done') {
      bandAsked = '';
      return;
    }
    const [modes, lowest, highest] = outcome.answers;
    band = {
      key: wanted.responsesKey,
      value: { low: lowest as Answers['responses'], high: highest as Answers['responses'] },
    };
    const now = need();
    const inputsKey = bassFieldKey(project);
    if (inputsKey === bassFieldKey(now.project) && modesKey !== inputsKey) {
      modesKey = inputsKey;
      const { variant } = view.document.getState();
      const value = modeReadouts(modes as Answers['modes']);
      view.results.setState({ modes: { variant, revision: now.revision, inputsKey, value } });
    }
    if (now.responsesKey === wanted.responsesKey) show(now);
  };

  const update = () => {
    const wanted = need();
    show(wanted);
    const kept = responses?.key === wanted.responsesKey && slices?.key === wanted.slicesKey;
    const underWay = asked?.responsesKey === wanted.responsesKey && asked.slicesKey === wanted.slicesKey;
    if (kept) rest();
    else if (!underWay || !lanes.interactive.busy) void ask(wanted);
  };

  let seen = { revision: -1, gestureOpen: false };
  const stopDocument = view.document.subscribe(({ revision, gestureOpen }) => {
    if (revision === seen.revision && gestureOpen === seen.gestureOpen) return;
    seen = { revision, gestureOpen };
    update();
  });
  const stopSession = view.session.subscribe((now, before) => {
    const same =
      now.frequencyHz === before.frequencyHz &&
      now.seatId === before.seatId &&
      now.floor.height === before.floor.height;
    if (!same) update();
  });
  update();
  return () => {
    stopped = true;
    stopDocument();
    stopSession();
  };
};
