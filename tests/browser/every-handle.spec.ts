import type { Page } from '@playwright/test';
import type { Handle } from '../../src/model/handles/handle.ts';
import type { ItemRef, Project } from '../../src/model/project.ts';
import { changedPaths, demos, everyHandle, mayChange, waysOf } from '../handles/every-handle.ts';
import { type Drag, drawn, mouseDrag, projectNow, seenAt, spotOf, touchDrag } from './hand.ts';
import { expect, probe, settled, test } from './support.ts';

/**
 * Every handle the model offers, taken hold of where it stands on the page and moved by mouse and by finger: the document
 * changes where the handle says and nowhere else, what was chosen stays chosen, and one undo takes it back. `npm test` takes
 * each kind of handle of each kind of thing once, over all demos; with PARTERRE_EVERY_HANDLE=1 all of them, which takes hours
 * where a processor draws: the property test pulls every one without a page. One page does for all rooms of a way.
 */
const everything = process.env.PARTERRE_EVERY_HANDLE === '1';

const covered = new Set<string>();
const rooms: readonly (readonly [file: string, demo: Project, handles: readonly Handle[]])[] = demos().map(
  ([file, demo]) => {
    const fresh = everyHandle(demo).filter(({ ref, kind, part = '' }) => {
      const plan = kind === 'wall' ? demo.room.plan.shape : kind === 'corner' || kind === 'bend' ? '' : part;
      const name = `${ref.kind} ${kind} ${plan}`;
      return everything || (!covered.has(name) && covered.add(name));
    });
    return [file, demo, fresh];
  },
);

const BY_PX = 34;

/** Some way along what the handle can be moved along, as the page shows it, or the other way. */
const byOnPage = async (page: Page, handle: Handle, sign: 1 | -1) => {
  const ways = waysOf(handle);
  const { part = '' } = handle;
  // A picture's corner goes out along its own diagonal: across it the picture keeps its size.
  const signs =
    handle.kind === 'pictureCorner' ? [part.endsWith('right') ? 1 : -1, part.startsWith('upper') ? 1 : -1] : [1, 1];
  const along = handle.atM.map(
    (value, axis) => value + 0.2 * ways.reduce((sum, way, i) => sum + signs[i] * way[axis], 0),
  );
  const [from, to] = [await seenAt(page, handle.atM), await seenAt(page, along)];
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: ((to.x - from.x) / long) * BY_PX * sign, y: ((to.y - from.y) / long) * BY_PX * sign };
};

/** Chooses a thing afresh, so that its handles are drawn for the document as it is now, and waits for them. */
const chooseAfresh = async (page: Page, ref: ItemRef): Promise<void> => {
  const choose = (selection: ItemRef | null) =>
    probe(
      page,
      ({ view }, chosen) => view.session.setState({ selection: chosen, alsoSelected: [], notices: [] }),
      selection,
    );
  const marks = (there: boolean) =>
    page.waitForFunction((wanted) => {
      const all = [...document.querySelectorAll<SVGGElement>('[data-handle]')];
      // A mark that has been laid out says whether it is to be seen.
      return wanted ? all.length > 0 && all.every((mark) => mark.style.visibility !== '') : all.length === 0;
    }, there);
  await choose(null);
  await marks(false);
  await choose(ref);
  await marks(true);
};

/** From where the view begins, then from farther up and round: a handle that a view looks along is not offered in it. */
const shownFrom = async (page: Page, id: string) => {
  const canvas = page.locator('canvas').first();
  for (const key of ['ArrowUp', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft']) {
    await canvas.press(key);
    await canvas.press(key);
    await drawn(page);
    const spot = await spotOf(page, id);
    if (spot) return spot;
  }
  return null;
};

const homeAgain = async (page: Page): Promise<void> => {
  await page.locator('canvas').first().press('Home');
  await drawn(page);
};

const openRoom = async (page: Page, demo: Project): Promise<void> => {
  await probe(
    page,
    ({ view }, project) => {
      view.document.actions.load(project);
      view.session.setState(({ slice, overlays }) => ({
        slice: { ...slice, shown: false },
        overlays: { ...overlays, sightlines: false, cones: false },
        selection: null,
        alsoSelected: [],
        pairsReleased: true,
      }));
    },
    demo,
  );
  await settled(page);
};

/** One handle moved and put back; says what went otherwise. */
const throughHandle = async (page: Page, demo: Project, handle: Handle, drag: Drag): Promise<string[]> => {
  const { ref, id } = handle;
  await chooseAfresh(page, ref);
  const atHome = await spotOf(page, id);
  const spot = atHome ?? (await shownFrom(page, id));
  if (!spot) return [`${id}: not shown from any side`];
  const told: string[] = [];
  let next = demo;
  // What stands at a wall goes only the other way.
  for (const sign of [1, -1] as const) {
    if (next !== demo) break;
    await drag(page, spot, await byOnPage(page, handle, sign), 4, async () => undefined);
    const now = await projectNow(page);
    if (changedPaths(demo, now).length > 0) next = now;
  }
  const changed = changedPaths(demo, next);
  if (changed.length === 0) told.push(`${id}: moved nothing`);
  const allowed = mayChange(demo, handle);
  told.push(...changed.filter((path) => !allowed.test(path)).map((path) => `${id}: changed ${path}`));
  const chosen = await probe(page, ({ view }) => view.session.getState().selection);
  if (JSON.stringify(chosen) !== JSON.stringify(ref)) told.push(`${id}: chosen is ${JSON.stringify(chosen)}`);
  if (changed.length > 0) await page.keyboard.press('Control+z');
  const left = await probe(page, ({ view }) => view.document.getState().canUndo);
  const back = changedPaths(demo, await projectNow(page));
  if (back.length > 0 || left) {
    told.push(`${id}: one undo leaves ${back.join(' ')}`);
    await openRoom(page, demo);
  }
  // A wall leaves the view where it went along to; a view chosen by hand is given back.
  if (!atHome || handle.kind === 'wall') await homeAgain(page);
  return told;
};

const walk = async (page: Page, drag: Drag): Promise<void> => {
  const told: string[] = [];
  for (const [file, demo, handles] of rooms) {
    if (handles.length === 0) continue;
    await openRoom(page, demo);
    for (const handle of handles)
      told.push(...(await throughHandle(page, demo, handle, drag)).map((trouble) => `${file} ${trouble}`));
  }
  expect(told).toEqual([]);
};

test('the walk meets every kind of handle of every kind of thing', () => {
  const kinds = new Set(rooms.flatMap(([, , handles]) => handles.map(({ kind }) => kind)));
  expect([...kinds].sort()).toEqual(
    [
      ...['aim', 'bend', 'ceiling', 'corner', 'edge', 'facing', 'height', 'objectSide', 'pictureAcross'],
      ...['pictureCorner', 'pictureHeight', 'pictureOff', 'place', 'projectorHeight', 'projectorPlace', 'recline'],
      ...['riserBack', 'riserFront', 'riserHeight', 'rowDistance', 'rowPlace', 'slide', 'wall'],
    ].sort(),
  );
  expect(rooms.flatMap(([, , handles]) => handles).length).toBeGreaterThan(everything ? 400 : 40);
});

test('every handle by mouse moves its own and one undo takes it back', async ({ app }) => {
  test.setTimeout(everything ? 3_600_000 : 1_200_000);
  await walk(app, mouseDrag);
});

test.describe('by touch', () => {
  test.use({ hasTouch: true });

  test('every handle by one finger moves its own and one undo takes it back', async ({ app }) => {
    test.setTimeout(everything ? 3_600_000 : 1_200_000);
    await walk(app, touchDrag);
  });
});
