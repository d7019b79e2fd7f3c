import type { Page } from '@playwright/test';
import { raiseCeiling } from '../../src/model/commands/ceiling.ts';
import type { Edit } from '../../src/model/commands/edit.ts';
import { moveLoudspeaker, moveRow, moveSeat, moveSubwoofer } from '../../src/model/commands/move.ts';
import { moveRoomWall } from '../../src/model/commands/plan.ts';
import { shiftProjector, shiftRow } from '../../src/model/commands/shift.ts';
import {
  aimLoudspeaker,
  moveRiserEdge,
  raiseRow,
  reclineSeat,
  resizePicture,
  turnSeat,
} from '../../src/model/commands/stretch.ts';
import { handlesFor } from '../../src/model/handles/handles.ts';
import type { ItemRef, Project } from '../../src/model/project.ts';
import type { Spot } from './gestures.ts';
import { drawn, fingers, mouseDrag, projectNow, seenAt, spotOf, touchDrag } from './hand.ts';
import { demoProject, expect, probe, settled, test } from './support.ts';

const demo = demoProject();
const chooses = (page: Page, selection: ItemRef | null): Promise<void> =>
  probe(
    page,
    ({ view }, ref) => view.session.setState({ selection: ref, alsoSelected: [], pairsReleased: true }),
    selection,
  );
const undosLeft = (page: Page) => probe(page, ({ view }) => view.document.getState().canUndo);

/** The bass floor is put away, so that handles stand where the things do, and with it what takes long to draw. */
const begin = async (page: Page): Promise<void> => {
  await probe(page, ({ view }) =>
    view.session.setState(({ slice, overlays }) => ({
      slice: { ...slice, shown: false },
      overlays: { ...overlays, sightlines: false, cones: false },
    })),
  );
  await settled(page);
};

const shownSpot = async (page: Page, id: string): Promise<Spot> => {
  await drawn(page);
  const spot = await spotOf(page, id);
  if (!spot) throw new Error(`the handle ${id} is not shown`);
  return spot;
};

interface Pull {
  readonly ref: ItemRef;
  readonly id: string;
  /** Metres along the document's axes the hand tries to move it by. */
  readonly byM: readonly [number, number, number];
  /** The command, fed with what the drag came to: nothing else of the document may have changed. */
  readonly command: (next: Project) => Edit;
}

const at = <Item extends { readonly id: string }>(items: readonly Item[], id: string): Item => {
  const found = items.find((one) => one.id === id);
  if (!found) throw new Error(`${id} is gone`);
  return found;
};
const L: ItemRef = { kind: 'loudspeaker', id: 'L' };
const S1: ItemRef = { kind: 'subwoofer', id: 'S1' };
const back: ItemRef = { kind: 'row', id: 'back' };
const picture: ItemRef = { kind: 'picture', id: 'picture' };
const rowOf = (project: Project) => at(project.rows, 'back');
const seatIn = (project: Project, id: string) =>
  at(
    project.rows.flatMap(({ seats }) => seats),
    id,
  );

const PULLS: readonly Pull[] = [
  { ref: L, id: 'place', byM: [0.3, 0, 0.7], command: (p) => moveLoudspeaker(demo, 'L', at(p.loudspeakers, 'L').atM) },
  { ref: L, id: 'height', byM: [0, 0.3, 0], command: (p) => moveLoudspeaker(demo, 'L', at(p.loudspeakers, 'L').atM) },
  {
    ref: L,
    id: 'aim',
    byM: [0.5, 0, -0.6],
    command: (p) => aimLoudspeaker(demo, 'L', at(p.loudspeakers, 'L').aim ?? 'reference'),
  },
  { ref: S1, id: 'place', byM: [0.9, 0, 0.5], command: (p) => moveSubwoofer(demo, 'S1', at(p.subwoofers, 'S1').atM) },
  {
    ref: { kind: 'seat', id: 'front-1' },
    id: 'place',
    byM: [-0.2, 0, 0],
    command: (p) => moveSeat(demo, 'front-1', { xM: seatIn(p, 'front-1').xM }),
  },
  {
    ref: { kind: 'seat', id: 'front-1' },
    id: 'facing',
    byM: [0.5, 0, 0.2],
    command: (p) => turnSeat(demo, 'front-1', seatIn(p, 'front-1').facingDeg ?? 0),
  },
  {
    ref: { kind: 'seat', id: 'back-2' },
    id: 'recline',
    byM: [0, 0, 0.25],
    command: (p) => reclineSeat(demo, 'back-2', seatIn(p, 'back-2').reclineDeg ?? 0),
  },
  {
    ref: { kind: 'row', id: 'front' },
    id: 'rowPlace',
    byM: [0.2, 0, 0.15],
    command: (p) => {
      const [from, to] = [demo, p].map(({ rows }) => rows[0]);
      return shiftRow(demo, 'front', to.seats[0].xM - from.seats[0].xM, to.eyeZM - from.eyeZM);
    },
  },
  { ref: back, id: 'rowDistance', byM: [0, 0, 0.3], command: (p) => moveRow(demo, 'back', { eyeZM: rowOf(p).eyeZM }) },
  { ref: back, id: 'riserHeight', byM: [0, 0.15, 0], command: (p) => raiseRow(demo, 'back', rowOf(p).floorM) },
  {
    ref: back,
    id: 'riserFront:fromZM',
    byM: [0, 0, 0.2],
    command: (p) => moveRiserEdge(demo, 'back', 'fromZM', rowOf(p).riser?.fromZM ?? 0, rowOf(demo).riser!),
  },
  {
    ref: picture,
    id: 'pictureCorner:upper right',
    byM: [-0.2, -0.2, 0],
    command: (p) => resizePicture(demo, p.picture.widthM, 'bottom'),
  },
  {
    ref: picture,
    id: 'projectorPlace',
    byM: [0.4, 0, -0.5],
    command: (p) => {
      const [from, to] = [demo, p].map((one) => one.picture.projector?.atM ?? [0, 0, 0]);
      return shiftProjector(demo, [to[0] - from[0], 0, to[2] - from[2]]);
    },
  },
  {
    ref: { kind: 'surface', id: 'left' },
    id: 'wall:3',
    byM: [-0.5, 0, 0],
    command: (p) => moveRoomWall(demo, 'left', Number(((p.room.plan as { widthM: number }).widthM - 4.3).toFixed(6))),
  },
  {
    ref: { kind: 'surface', id: 'ceiling' },
    id: 'ceiling',
    byM: [0, 0.25, 0],
    command: (p) => raiseCeiling(demo, Number(((p.room.ceiling as { heightM: number }).heightM - 2.7).toFixed(6))),
  },
];

/** Drags a handle towards a place of the room and holds what came of it against the command. */
const holds = async (page: Page, pull: Pull): Promise<void> => {
  await chooses(page, pull.ref);
  const id = `${pull.ref.kind}:${pull.ref.id}/${pull.id}`;
  const handle = handlesFor(demo, [pull.ref]).find((one) => one.id === id);
  if (!handle) throw new Error(`the demo has no handle ${id}`);
  const spot = await shownSpot(page, id);
  const [from, to] = [
    await seenAt(page, handle.atM),
    await seenAt(
      page,
      handle.atM.map((v, i) => v + pull.byM[i]),
    ),
  ];
  await mouseDrag(page, spot, { x: to.x - from.x, y: to.y - from.y });
  const next = await projectNow(page);
  expect(next, `${id} changes something`).not.toEqual(demo);
  const command = pull.command(next);
  expect(command.ok && JSON.parse(JSON.stringify(command.project)), `${id} does what ${handle.command} says`).toEqual(
    next,
  );
  // The handle went where the hand took it, but for snapping, whole degrees and whole centimetres.
  const moved = handlesFor(next, [pull.ref]).find((one) => one.id === id);
  if (!moved) throw new Error(`${id} is gone`);
  const wanted = handle.atM.map((v, i) => v + pull.byM[i]);
  if (!['facing', 'recline'].includes(pull.id) && moved.kind !== 'wall')
    expect(Math.hypot(...moved.atM.map((v, i) => v - wanted[i])), `${id} arrives`).toBeLessThan(0.14);
  await page.keyboard.press('Control+z');
  expect(await projectNow(page), `${id} is one undo`).toEqual(demo);
  expect(await undosLeft(page)).toBe(false);
};

test('every kind of handle pulled by mouse does what its command says, as one undo', async ({ app }) => {
  test.slow();
  await begin(app);
  for (const pull of PULLS) await holds(app, pull);
});

test('200 moves of one drag are one undo', async ({ app }) => {
  await begin(app);
  await chooses(app, S1);
  await mouseDrag(app, await shownSpot(app, 'subwoofer:S1/place'), { x: 70, y: 60 }, 200);
  expect(await projectNow(app)).not.toEqual(demo);
  await app.keyboard.press('Control+z');
  expect(await projectNow(app)).toEqual(demo);
});

test('pairs move together until they are let go, and the bar says so', async ({ app }) => {
  await begin(app);
  await probe(app, ({ view }) => view.session.setState({ selection: { kind: 'loudspeaker', id: 'L' } }));
  await mouseDrag(app, await shownSpot(app, 'loudspeaker:L/place'), { x: 20, y: 30 });
  const together = await projectNow(app);
  const [l, r] = ['L', 'R'].map((id) => at(together.loudspeakers, id).atM);
  expect(l).not.toEqual(at(demo.loudspeakers, 'L').atM);
  expect(r).toEqual([-l[0], l[1], l[2]]);
  await app.getByRole('button', { name: 'L + R together' }).click();
  await mouseDrag(app, await shownSpot(app, 'loudspeaker:L/place'), { x: 15, y: 10 });
  expect(at((await projectNow(app)).loudspeakers, 'R').atM).toEqual(r);
});

test('Escape and a lost pointer go back to the mark', async ({ app }) => {
  await begin(app);
  await chooses(app, L);
  const spot = await shownSpot(app, 'loudspeaker:L/height');
  await app.mouse.move(spot.x, spot.y);
  await app.mouse.down();
  await app.mouse.move(spot.x, spot.y - 20, { steps: 5 });
  await expect.poll(async () => (await projectNow(app)).loudspeakers[0].atM[1]).toBeGreaterThan(1.2);
  await app.keyboard.press('Escape');
  await app.mouse.up();
  expect(await projectNow(app)).toEqual(demo);
  await app.mouse.move(spot.x, spot.y);
  await app.mouse.down();
  await app.mouse.move(spot.x, spot.y - 20, { steps: 5 });
  await expect.poll(async () => (await projectNow(app)).loudspeakers[0].atM[1]).toBeGreaterThan(1.2);
  await app.locator('canvas').first().dispatchEvent('pointercancel', { pointerId: 1 });
  await app.mouse.up();
  await drawn(app);
  expect(await projectNow(app)).toEqual(demo);
  expect(await undosLeft(app)).toBe(false);
});

test('several things chosen by a box are moved, copied, locked and removed together, one undo each', async ({
  app,
}) => {
  await begin(app);
  const spots = await Promise.all(demo.rows[0].seats.map(({ xM }) => seenAt(app, [xM, 0.4, 3.35])));
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  await app.keyboard.down('Shift');
  await mouseDrag(
    app,
    { x: Math.min(...xs) - 45, y: Math.min(...ys) - 28 },
    { x: Math.max(...xs) - Math.min(...xs) + 90, y: Math.max(...ys) - Math.min(...ys) + 56 },
  );
  await app.keyboard.up('Shift');
  const chosen = await probe(app, ({ view }) => {
    const { selection, alsoSelected } = view.session.getState();
    return [selection, ...alsoSelected].map((ref) => ref?.id);
  });
  expect(chosen).toEqual(expect.arrayContaining(['front-1', 'front-2', 'front-3']));
  await probe(app, ({ view }) =>
    view.session.setState({
      selection: { kind: 'seat', id: 'front-1' },
      alsoSelected: [
        { kind: 'seat', id: 'front-2' },
        { kind: 'subwoofer', id: 'S1' },
      ],
    }),
  );
  await mouseDrag(app, await shownSpot(app, 'seat:front-1/groupPlace'), { x: 24, y: 8 });
  const moved = await projectNow(app);
  const byX = seatIn(moved, 'front-1').xM - seatIn(demo, 'front-1').xM;
  expect(Math.abs(byX)).toBeGreaterThan(0.05);
  expect(seatIn(moved, 'front-2').xM - seatIn(demo, 'front-2').xM).toBeCloseTo(byX, 6);
  expect(at(moved.subwoofers, 'S1').atM[0] - at(demo.subwoofers, 'S1').atM[0]).toBeCloseTo(byX, 6);
  await app.keyboard.press('Control+z');
  expect(await projectNow(app)).toEqual(demo);

  await probe(app, ({ view }) =>
    view.session.setState({
      selection: { kind: 'loudspeaker', id: 'L' },
      alsoSelected: [{ kind: 'subwoofer', id: 'S1' }],
    }),
  );
  await app.keyboard.press('Control+d');
  const copied = await projectNow(app);
  expect(copied.loudspeakers.length).toBe(demo.loudspeakers.length + 1);
  expect(copied.subwoofers.length).toBe(demo.subwoofers.length + 1);
  await app.keyboard.press('Delete');
  expect(await projectNow(app)).toEqual(demo);
  await app.keyboard.press('Control+z');
  await app.keyboard.press('Control+z');
  expect(await projectNow(app)).toEqual(demo);
  await chooses(app, L);
  await app.keyboard.press('u');
  expect(at((await projectNow(app)).loudspeakers, 'L').locked).toBe(true);
  await drawn(app);
  expect(await spotOf(app, 'loudspeaker:L/place')).toBeNull();
  await app.keyboard.press('Control+z');
  expect(await projectNow(app)).toEqual(demo);
});

test('a touched wall is chosen, and a window is drawn on it as one undo', async ({ app }) => {
  await begin(app);
  const wall = await seenAt(app, [-2.15, 2.3, 3.9]);
  await app.mouse.click(wall.x, wall.y);
  expect(await probe(app, ({ view }) => view.session.getState().selection)).toEqual({ kind: 'surface', id: 'left' });
  await app.getByRole('toolbar').getByRole('button', { name: 'Window' }).click();
  // Between two panels, out of reach of their edges.
  const [from, to] = [await seenAt(app, [-2.15, 2.15, 3.85]), await seenAt(app, [-2.15, 1.2, 4.15])];
  await mouseDrag(app, from, { x: to.x - from.x, y: to.y - from.y });
  const window = (await projectNow(app)).room.openings.at(-1);
  expect(window).toMatchObject({ id: 'window-2', kind: 'window', surface: 'left' });
  expect(window?.fromM).toBeCloseTo(3.85, 1);
  expect(window?.widthM).toBeCloseTo(0.3, 1);
  expect(window?.bottomM).toBeCloseTo(1.2, 1);
  expect(await probe(app, ({ view }) => view.session.getState().selection?.id)).toBe('window-2');
  await app.keyboard.press('Control+z');
  expect(await projectNow(app)).toEqual(demo);
  await probe(app, ({ view }) => view.session.setState({ tool: { kind: 'patch', what: 'fibre-panel-50' } }));
  await app.keyboard.press('Escape');
  expect(await probe(app, ({ view }) => view.session.getState().tool)).toBeNull();
});

test('a collision is shown and said, and nothing forbids it', async ({ app }) => {
  await begin(app);
  await probe(app, ({ view }) =>
    view.document.actions.apply('into the table', (project) => ({
      ok: true,
      project: {
        ...project,
        subwoofers: project.subwoofers.map((one, i) => (i === 0 ? { ...one, atM: [1.7, 0.22, 3.4] } : one)),
      },
    })),
  );
  await chooses(app, S1);
  await drawn(app);
  const said = await probe(app, ({ view }) => view.session.getState().overlaps);
  expect(said).toEqual(['Subwoofer S1 and Side table stand in the same place.']);
  await expect(app.locator('.scene-labels')).toContainText('Subwoofer S1 and Side table stand in the same place.');
});

test('the plan is drawn by keyboard alone, and a crossing is refused in words', async ({ app }) => {
  await app.keyboard.press('e');
  const board = app.getByRole('dialog', { name: 'Plan' });
  await board.getByRole('button', { name: 'Draw anew' }).focus();
  await app.keyboard.press('Enter');
  await app.keyboard.press('Enter');
  for (const length of ['5.2', '6.4', '5.2']) {
    await app.keyboard.type(length);
    await app.keyboard.press('Enter');
  }
  await board.getByRole('button', { name: 'Close the plan' }).focus();
  await app.keyboard.press('Enter');
  await expect(board).toContainText('33.3 m²');
  await board.getByRole('button', { name: 'Use this rectangle' }).focus();
  await app.keyboard.press('Enter');
  await expect(board).toBeHidden();
  expect((await projectNow(app)).room.plan).toEqual({ shape: 'rectangle', widthM: 5.2, lengthM: 6.4 });
  await app.keyboard.press('Control+z');
  expect(await projectNow(app)).toEqual(demo);

  await app.keyboard.press('e');
  await board.getByRole('button', { name: 'Draw anew' }).click();
  const sheet = board.locator('.plan-paper svg');
  await expect.poll(async () => (await sheet.boundingBox())?.width ?? 0).toBeGreaterThan(200);
  const paper = await sheet.boundingBox();
  if (!paper) throw new Error('the board is not shown');
  for (const [x, y] of [
    [0.3, 0.3],
    [0.7, 0.7],
    [0.7, 0.3],
    [0.3, 0.72],
  ])
    await app.mouse.click(paper.x + paper.width * x, paper.y + paper.height * y);
  await board.getByRole('button', { name: 'Close the plan' }).click();
  await expect(board.getByRole('alert')).toContainText('cross or touch');
  await expect(board.getByRole('button', { name: /^Use/ })).toBeDisabled();
});

test.describe('by touch', () => {
  test.use({ hasTouch: true });

  test('anywhere else it looks, a second finger gives a drag back and moves the camera, a cancelled touch is Escape', async ({
    app,
  }) => {
    await begin(app);
    await chooses(app, L);
    const camera = () => probe(app, ({ stage }) => stage()?.camera().atM.join());
    const before = await camera();
    const seat = await seenAt(app, [0, 0.4, 3.35]);
    await touchDrag(app, seat, { x: 60, y: 10 });
    expect(await camera()).not.toBe(before);
    expect(await projectNow(app)).toEqual(demo);

    const spot = await shownSpot(app, 'loudspeaker:L/height');
    const session = await app.context().newCDPSession(app);
    const lifted = { x: spot.x, y: spot.y - 24 };
    await fingers(session, 'touchStart', [spot]);
    await fingers(session, 'touchMove', [{ x: spot.x, y: spot.y - 14 }]);
    await fingers(session, 'touchMove', [lifted]);
    await expect.poll(async () => (await projectNow(app)).loudspeakers[0].atM[1]).toBeGreaterThan(1.2);
    const eye = await camera();
    await fingers(session, 'touchStart', [lifted, { x: spot.x + 80, y: spot.y }]);
    await expect.poll(async () => (await projectNow(app)).loudspeakers[0].atM[1]).toBe(1.15);
    await fingers(session, 'touchMove', [
      { x: lifted.x - 20, y: lifted.y },
      { x: spot.x + 120, y: spot.y },
    ]);
    await fingers(session, 'touchEnd', []);
    await drawn(app);
    expect(await camera()).not.toBe(eye);
    expect(await projectNow(app)).toEqual(demo);

    const again = await shownSpot(app, 'loudspeaker:L/height');
    await fingers(session, 'touchStart', [again]);
    await fingers(session, 'touchMove', [{ x: again.x, y: again.y - 14 }]);
    await fingers(session, 'touchMove', [{ x: again.x, y: again.y - 30 }]);
    await expect.poll(async () => (await projectNow(app)).loudspeakers[0].atM[1]).toBeGreaterThan(1.2);
    await fingers(session, 'touchCancel', []);
    await drawn(app);
    expect(await projectNow(app)).toEqual(demo);
    expect(await undosLeft(app)).toBe(false);
  });

  test('a long press gathers, and taps add to it', async ({ app }) => {
    await begin(app);
    const session = await app.context().newCDPSession(app);
    const [first, second] = [await seenAt(app, [-1.2, 1.1, 5.1]), await seenAt(app, [0.4, 1.1, 5.1])];
    await fingers(session, 'touchStart', [first]);
    await expect.poll(() => probe(app, ({ view }) => view.session.getState().gathering)).toBe(true);
    await fingers(session, 'touchEnd', []);
    await fingers(session, 'touchStart', [second]);
    await fingers(session, 'touchEnd', []);
    const chosen = () =>
      probe(app, ({ view }) => {
        const { selection, alsoSelected } = view.session.getState();
        return [selection, ...alsoSelected].map((ref) => ref?.id);
      });
    await expect.poll(chosen).toEqual(['back-1', 'back-3']);
    await app.getByRole('toolbar').getByRole('button', { name: 'Done' }).click();
    expect(await probe(app, ({ view }) => view.session.getState().gathering)).toBe(false);
    expect(await chosen()).toEqual(['back-1', 'back-3']);
  });
});
