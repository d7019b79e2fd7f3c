import { describe, expect, it } from 'vitest';
import { feedBass } from '../../../../src/app/feed/bass.ts';
import { createLane, type Hand, type Lane } from '../../../../src/compute/lane.ts';
import type { Answers, Job, WorkRequest } from '../../../../src/compute/protocol.ts';
import { setField } from '../../../../src/model/commands/set-field.ts';
import type { Project } from '../../../../src/model/project.ts';
import { createDocumentStore } from '../../../../src/state/document.ts';
import { createResultsStore } from '../../../../src/state/results.ts';
import { createSessionStore } from '../../../../src/state/session.ts';
import type { View } from '../../../../src/state/view.tsx';
import { demo } from '../../analysis/rooms.ts';

/** An answer of the right size without any engine: the feed is tested, not the field. */
const answerTo = (job: Job): Answers[Job['kind']] => {
  if (job.kind === 'slices') {
    const count = job.plane.uM.length * job.plane.vM.length;
    const field = { re: new Float32Array(count).fill(1), im: new Float32Array(count) };
    return { frequencyHz: job.frequencyHz, fields: Array.from({ length: job.sourcesM.length / 3 }, () => field) };
  }
  if (job.kind === 'responses') {
    const [sources, receivers] = [job.sourcesM.length / 3, job.receiversM.length / 3];
    const frequencies = job.frequenciesHz.length;
    const re = new Float64Array(sources * receivers * frequencies).fill(job.detail === 'first' ? 2 : 1);
    const moved = new Uint8Array(sources * receivers);
    return { sources, receivers, frequencies, re, im: new Float64Array(re.length), moved };
  }
  if (job.kind === 'modes') return [{ hz: 30, order: null, dampedHz: 30, decayS: 0.4 }];
  if (job.kind === 'decay')
    return { frequenciesHz: Float64Array.of(20, 40), timesS: Float64Array.of(0, 1), levelDb: new Float32Array(4) };
  if (job.kind === 'shapes') return new Float64Array(job.pointsM.length / 3).fill(0.1);
  return true;
};

/** A lane that notes what it is asked and answers at the next turn. */
const noting = (): { lane: Lane; asked: Job[] } => {
  const asked: Job[] = [];
  const lane = createLane(
    (onReply): Hand => ({
      post(request) {
        const { id, jobs } = request as WorkRequest;
        asked.push(...jobs);
        setTimeout(() => onReply({ id, ok: true, answers: jobs.map(answerTo) }));
      },
      terminate: () => undefined,
    }),
  );
  return { lane, asked };
};

const start = (project: Project) => {
  const view: View = {
    document: createDocumentStore(project),
    session: createSessionStore(),
    results: createResultsStore(),
  };
  view.session.setState({ seatId: 'front-2' });
  const [interactive, background] = [noting(), noting()];
  const stop = feedBass(view, { interactive: interactive.lane, background: background.lane });
  const rest = async () => {
    for (let calm = 0; calm < 5; calm = interactive.lane.busy || background.lane.busy ? 0 : calm + 1)
      await new Promise((resolve) => setTimeout(resolve));
  };
  return { view, interactive, background, stop, rest };
};

/** The demo without anything on its walls: a box, exact at once. */
const plainBox = (): Project => {
  const project = demo();
  return { ...project, room: { ...project.room, patches: [], openings: [] } };
};

const detailOf = (job: Job) => ('detail' in job ? job.detail : undefined);
const details = (jobs: readonly Job[], kind: Job['kind']) => jobs.filter((job) => job.kind === kind).map(detailOf);

describe('what the engine is asked', () => {
  it('in a box without patches is asked finely at once, seats and slice together', async () => {
    const { view, interactive, background, rest, stop } = start(plainBox());
    await rest();
    expect(interactive.asked.map((job) => [job.kind, detailOf(job)])).toEqual([
      ['slices', 'fine'],
      ['responses', 'fine'],
    ]);
    const { bass, slice, modes, curves, refining } = view.results.getState();
    expect([bass?.revision, slice?.revision, modes?.value.length, curves?.value.fine]).toEqual([0, 0, 1, true]);
    expect(bass?.value.seats[0].lowDb).not.toBeNull();
    expect(refining).toBe(false);
    expect(new Set(background.asked.map(({ kind }) => kind))).toEqual(new Set(['modes', 'shapes', 'responses']));
    stop();
  });

  it('gain, delay, polarity and what the colours say are shown without the engine', async () => {
    const { view, interactive, background, rest, stop } = start(plainBox());
    await rest();
    const before = [interactive.asked.length, background.asked.length];
    const shown = view.results.getState().bass?.value.seats[0].levelDb[0] ?? Number.NaN;
    const { id } = view.document.getState().project.subwoofers[0];
    for (const [field, value] of [
      ['gainDb', -6],
      ['delayMs', 4],
      ['inverted', true],
    ] as const)
      view.document.actions.apply(field, (project) => ({
        ok: true,
        project: {
          ...project,
          subwoofers: project.subwoofers.map((one) => (one.id === id ? { ...one, [field]: value } : one)),
        },
      }));
    view.session.setState(({ slice }) => ({ slice: { ...slice, as: 'pressure' } }));
    await rest();
    expect([interactive.asked.length, background.asked.length]).toEqual(before);
    const { bass, slice } = view.results.getState();
    expect(bass?.revision).toBe(3);
    expect(Math.abs((bass?.value.seats[0].levelDb[0] ?? shown) - shown)).toBeGreaterThan(0.5);
    expect(slice?.value.as).toBe('pressure');
    stop();
  });

  it('a room that takes a while is shown at first quickly, prepared in portions, then asked finely', async () => {
    const project = demo();
    const subwoofers = project.subwoofers.map((one) => ({ ...one, gainDb: 0, delayMs: 0, inverted: false }));
    const { view, interactive, rest, stop } = start({ ...project, subwoofers });
    await rest();
    // Each subwoofer by itself before all together, which then come from what the lane's desk keeps.
    const responses = interactive.asked.filter((job) => job.kind === 'responses');
    expect(responses.map(({ detail, sourcesM }) => [detail, sourcesM.length / 3])).toEqual([
      ['first', 4],
      ['fine', 1],
      ['fine', 1],
      ['fine', 1],
      ['fine', 1],
      ['fine', 4],
    ]);
    expect(details(interactive.asked, 'slices')).toEqual(['first', 'fine']);
    const kinds = interactive.asked.map(({ kind }) => kind);
    expect(kinds.indexOf('warm')).toBeGreaterThan(kinds.indexOf('responses'));
    expect(kinds.filter((kind) => kind === 'warm').length).toBeGreaterThan(5);
    // The fine answer took the first one's place: a pressure of 1 for each subwoofer instead of 2.
    const { bass } = view.results.getState();
    expect(bass?.value.seats[0].levelDb[0]).toBeCloseTo(20 * Math.log10(4), 6);
    stop();
  });

  it('while the hand holds a wall only first pictures are asked; finer ones when it lets go', async () => {
    const { view, interactive, rest, stop } = start(demo());
    await rest();
    interactive.asked.length = 0;
    view.document.actions.mark('Widen');
    const widen = (widthM: number) =>
      view.document.actions.apply('Widen', (project) => setField(project, 'room.plan.widthM', widthM));
    expect(widen(4.4)).toBeNull();
    await rest();
    expect(widen(4.5)).toBeNull();
    await rest();
    expect(details(interactive.asked, 'responses')).toEqual(['first', 'first']);
    expect(details(interactive.asked, 'warm')).toEqual([]);
    view.document.actions.commit();
    await rest();
    expect(details(interactive.asked, 'responses')).toEqual(['first', 'first', 'fine', 'fine', 'fine', 'fine', 'fine']);
    stop();
  });

  it('a moved subwoofer in a room that is prepared is asked finely at once', async () => {
    const { view, interactive, rest, stop } = start(demo());
    await rest();
    interactive.asked.length = 0;
    view.document.actions.mark('Move');
    view.document.actions.apply('Move', (project) => ({
      ok: true,
      project: {
        ...project,
        subwoofers: project.subwoofers.map((one, i) => (i === 0 ? { ...one, atM: [-1, 0.25, 0.4] } : one)),
      },
    }));
    await rest();
    expect(interactive.asked.map((job) => [job.kind, detailOf(job)])).toEqual([
      ['slices', 'fine'],
      ['responses', 'fine'],
    ]);
    view.document.actions.commit();
    stop();
  });

  it('the difference asks for the seats at the slice’s own frequency, a band for twelve slices', async () => {
    const { view, interactive, rest, stop } = start(plainBox());
    await rest();
    interactive.asked.length = 0;
    view.session.setState(({ slice }) => ({ slice: { ...slice, as: 'difference' } }));
    await rest();
    expect(interactive.asked.map((job) => (job.kind === 'responses' ? job.frequenciesHz.length : job.kind))).toEqual([
      1,
    ]);
    expect(view.results.getState().slice?.value.meanDb).not.toBeNull();
    view.session.setState(({ slice }) => ({ slice: { ...slice, span: 'band' } }));
    await rest();
    expect(details(interactive.asked, 'slices').length).toBe(12);
    stop();
  });

  it('a decay is worked out while it is looked at, for the chosen seat', async () => {
    const { view, background, rest, stop } = start(plainBox());
    await rest();
    const isDecay = (job: Job) => job.kind === 'responses' && job.growthPerS !== undefined;
    expect(background.asked.filter(isDecay).length).toBe(0);
    view.session.setState({ bassSheet: 'decay' });
    await rest();
    expect(background.asked.filter(isDecay).length).toBe(1);
    expect(view.results.getState().decay?.value.seatId).toBe('front-2');
    view.session.setState({ seatId: 'back-1' });
    await rest();
    expect(background.asked.filter(isDecay).length).toBe(2);
    expect(view.results.getState().decay?.value.seatId).toBe('back-1');

    // A gain makes the picture anew, in the worker, from responses that are kept.
    const pictures = () => background.asked.filter(({ kind }) => kind === 'decay').length;
    expect(pictures()).toBe(2);
    view.document.actions.apply('Gain', (project) => ({
      ok: true,
      project: { ...project, subwoofers: project.subwoofers.map((one) => ({ ...one, gainDb: one.gainDb - 3 })) },
    }));
    const fresh = () => view.results.getState().decay?.revision === view.document.getState().revision;
    expect(fresh()).toBe(false);
    await rest();
    expect(pictures()).toBe(3);
    expect(background.asked.filter(isDecay).length).toBe(2);
    expect(fresh()).toBe(true);
    stop();
  });
});
