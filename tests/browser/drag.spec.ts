import { bassReadout } from '../../src/analysis/bass.ts';
import { defaultFrequenciesHz, earTriples, roomSpec, sourceTriples } from '../../src/analysis/inputs.ts';
import { bassSlice } from '../../src/analysis/slice/field.ts';
import { enginePlane } from '../../src/analysis/slice/grid.ts';
import { createRoomField } from '../../src/engines/bass/create-room-field.ts';
import type { Project } from '../../src/model/project.ts';
import { initialSlice } from '../../src/state/slice.ts';
import { demoProject, expect, idle, probe, settled, test } from './support.ts';

interface Sight {
  readonly document: number;
  readonly floor: number;
  readonly bass: number;
  readonly frequencyHz: number;
  readonly heightM: number;
  readonly floorDb: readonly number[];
  readonly seatDb: readonly number[];
}

/** Places on the floor's grid and along the seats' curves where shown values are held against the engine. */
const FLOOR_SHARES = [0.11, 0.32, 0.5, 0.71, 0.93];
const CURVE_POINTS = [3, 20, 37, 55, 76];
/** Different floors that have to be seen while the hand moves. */
const FLOORS = 10;

const engineFor = (project: Project, heightM: number, frequencyHz: number) => {
  const field = createRoomField(roomSpec(project), 'fine');
  const sources = sourceTriples(project);
  const one = Float64Array.of(1, 0);
  const cut = { normal: 'y', atM: heightM } as const;
  const plane = enginePlane(project, cut);
  const fields = project.subwoofers.map((_, s) =>
    field.slice(plane, sources.slice(3 * s, 3 * s + 3), one, frequencyHz),
  );
  const question = { wish: initialSlice, cut, frequencyHz, frequenciesHz: Float64Array.of(frequencyHz) };
  const frequenciesHz = defaultFrequenciesHz();
  const nominal = field.unitResponses(sources, earTriples(project), frequenciesHz);
  return {
    floor: bassSlice(project, question, [fields], null),
    bass: bassReadout(project, { frequenciesHz, nominal, low: null, high: null }),
  };
};

test('dragging a subwoofer shows new floors and responses before it is let go', async ({ app }) => {
  // The hand is measured, not what is worked out at rest: on two processors that would take its share of the drawing.
  test.slow();
  await idle(app);
  const start = await probe(app, ({ view, stage }) => {
    const { project } = view.document.getState();
    const [x, , z] = project.subwoofers[1].atM;
    const heightM = view.results.getState().slice?.value.cut.atM ?? 0;
    return { from: stage()?.project([x, heightM, z]), to: stage()?.project([x - 1.6, heightM, z + 1.9]) };
  });
  if (!start.from || !start.to) throw new Error('the subwoofer is not in view');
  const { from, to } = start;

  await app.evaluate(
    ([shares, points]) => {
      const seen: unknown[] = [];
      Object.assign(window, { seen });
      let drawn = -1;
      const look = () => {
        requestAnimationFrame(look);
        const probe = window.parterre;
        const frames = probe?.frames() ?? 0;
        const { slice: floor, bass } = probe?.view.results.getState() ?? {};
        const document = probe?.view.document.getState();
        if (frames === drawn || !floor || !bass || !document?.gestureOpen) return;
        drawn = frames;
        seen.push({
          document: document.revision,
          floor: floor.revision,
          bass: bass.revision,
          frequencyHz: floor.value.frequencyHz,
          heightM: floor.value.cut.atM,
          floorDb: shares.map((share) => floor.value.levelDb[Math.floor(share * floor.value.levelDb.length)]),
          seatDb: points.map((point) => bass.value.seats[4].levelDb[point]),
        });
      };
      look();
    },
    [FLOOR_SHARES, CURVE_POINTS] as const,
  );
  const documents = new Map<number, string>();
  await app.exposeFunction('noteDocument', (revision: number, project: string) => documents.set(revision, project));
  await app.evaluate(() => {
    const note = (window as unknown as { noteDocument(revision: number, project: string): void }).noteDocument;
    window.parterre?.view.document.subscribe(({ revision, project }) => note(revision, JSON.stringify(project)));
  });

  await app.mouse.move(from.x, from.y);
  await app.mouse.down();
  const began = Date.now();
  const floorsSeen = () =>
    app.evaluate(() => new Set((window as unknown as { seen: Sight[] }).seen.map(({ floor }) => floor)).size);
  // A hand does not wait for the page: moves are sent on time and the page takes them as it can. Here a processor draws, and
  // how fast is its affair: the hand goes to and fro, two seconds each way, until enough has been shown.
  const moves: Promise<void>[] = [];
  for (let step = 1; step <= 600; step += 1) {
    const share = 1 - Math.abs(1 - ((step / 60) % 2));
    moves.push(app.mouse.move(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share));
    const ahead = (2000 * step) / 60 - (Date.now() - began);
    if (ahead > 0) await new Promise((resolve) => setTimeout(resolve, ahead));
    if (step % 60 === 0 && step % 120 !== 0 && (await floorsSeen()) >= FLOORS) break;
  }
  const took = Date.now() - began;
  await Promise.all(moves);
  const seen = (await app.evaluate(() => (window as unknown as { seen: unknown[] }).seen)) as Sight[];
  await app.mouse.up();
  await settled(app);

  const floors = new Map(seen.map((sight) => [sight.floor, sight]));
  const responses = new Map(seen.map((sight) => [sight.bass, sight]));
  const behind = seen.map((sight) => sight.document - Math.min(sight.floor, sight.bass));
  console.log(
    `${seen.length} frames in ${took} ms, ${floors.size} floors, ${responses.size} responses, at most ${Math.max(...behind)} revisions behind`,
  );
  expect(floors.size).toBeGreaterThanOrEqual(FLOORS);
  expect(responses.size).toBeGreaterThanOrEqual(FLOORS);
  // The latest wins: what is asked for next is never older than the document stood when the last answer came.
  const fresh = seen.flatMap((sight, i) => (i > 0 && sight.floor !== seen[i - 1].floor ? [i] : []));
  fresh.slice(1).forEach((i, n) => {
    expect(seen[i].floor).toBeGreaterThanOrEqual(seen[fresh[n] - 1].document);
    expect(seen[i].bass).toBe(seen[i].floor);
  });

  const demo = demoProject();
  let held = 0;
  for (const sight of [...floors.values()].slice(0, FLOORS)) {
    const at = (revision: number): Project => {
      const noted = documents.get(revision);
      return noted === undefined ? demo : JSON.parse(noted);
    };
    const floorOf = engineFor(at(sight.floor), sight.heightM, sight.frequencyHz).floor;
    const bassOf = engineFor(at(sight.bass), sight.heightM, sight.frequencyHz).bass;
    FLOOR_SHARES.forEach((share, n) => {
      const exact = floorOf.levelDb[Math.floor(share * floorOf.levelDb.length)];
      expect(Math.abs(sight.floorDb[n] - exact)).toBeLessThanOrEqual(0.05);
    });
    CURVE_POINTS.forEach((point, n) => {
      expect(Math.abs(sight.seatDb[n] - bassOf.seats[4].levelDb[point])).toBeLessThanOrEqual(0.05);
    });
    held += 1;
  }
  expect(held).toBe(FLOORS);

  const after = await probe(app, ({ view }) => {
    const { project, revision, canUndo } = view.document.getState();
    const { slice, bass, geometry } = view.results.getState();
    return {
      atM: project.subwoofers[1].atM,
      canUndo,
      late: [slice, bass, geometry].map((r) => revision - (r?.revision ?? -1)),
    };
  });
  expect(after.late).toEqual([0, 0, 0]);
  expect(after.canUndo).toBe(true);
  expect(
    Math.hypot(after.atM[0] - demo.subwoofers[1].atM[0], after.atM[2] - demo.subwoofers[1].atM[2]),
  ).toBeGreaterThan(1);
  await app.keyboard.press('Control+z');
  const undone = await probe(app, ({ view }) => view.document.getState().project.subwoofers[1].atM);
  expect(undone).toEqual(demo.subwoofers[1].atM);
});

test('Escape during a drag goes back to where it began', async ({ app }) => {
  const from = await probe(app, ({ view, stage }) => {
    const [x, , z] = view.document.getState().project.subwoofers[1].atM;
    return stage()?.project([x, view.results.getState().slice?.value.cut.atM ?? 0, z]);
  });
  if (!from) throw new Error('the subwoofer is not in view');
  await app.mouse.move(from.x, from.y);
  await app.mouse.down();
  for (let step = 1; step <= 8; step += 1) await app.mouse.move(from.x - step * 8, from.y + step * 4);
  await settled(app);
  await app.keyboard.press('Escape');
  await app.mouse.up();
  await settled(app);
  const state = await probe(app, ({ view }) => {
    const { project, canUndo } = view.document.getState();
    return { atM: project.subwoofers[1].atM, canUndo };
  });
  expect(state.atM).toEqual(demoProject().subwoofers[1].atM);
  expect(state.canUndo).toBe(false);
});
