import type { Page } from '@playwright/test';
import { cividis } from '../../src/math/cividis.ts';
import { diverging } from '../../src/math/diverging.ts';
import type { SliceState } from '../../src/state/slice.ts';
import { expect, probe, settled, test } from './support.ts';

/** The demo without anything on its walls: exact at once, so that the tests wait for drawing and not for walls. */
const asBox = async (app: Page): Promise<void> => {
  await probe(app, ({ view }) => {
    const { project } = view.document.getState();
    view.document.actions.load({ ...project, room: { ...project.room, patches: [], openings: [] } });
    view.session.setState({ overlays: { sightlines: false, cones: false, people: false, labels: false } });
  });
  await settled(app);
};

const slice = async (app: Page, part: Partial<SliceState>): Promise<void> => {
  await probe(
    app,
    ({ view }, given) => view.session.setState((state) => ({ slice: { ...state.slice, ...given } })),
    part,
  );
  await settled(app);
};

interface Sample {
  readonly share: number;
  readonly kind: string;
  readonly colour: readonly [number, number, number];
}

/** Colours where the map is even, away from contours, chairs and subwoofers, with the share of the legend they stand for. */
const samples = (app: Page): Promise<Sample[]> =>
  probe(app, ({ view, stage }) => {
    const drawn = stage();
    const found = view.results.getState().slice?.value;
    const legend = document.querySelector<HTMLElement>('.legend[data-kind]')?.dataset;
    if (!drawn || !found || !legend) return [];
    const { uM, vM, levelDb, pressure, cut, as, meanDb } = found;
    const [low, high] = [Number(legend.low), Number(legend.high)];
    const step = legend.kind === 'pressure' ? high / 4 : 3;
    let turn = 0;
    if (as === 'pressure' && pressure) {
      let [a, b] = [0, 0];
      pressure.re.forEach((re, i) => {
        a += re * re - pressure.im[i] ** 2;
        b += 2 * re * pressure.im[i];
      });
      turn = -0.5 * Math.atan2(b, a);
    }
    const value = (i: number) =>
      as === 'pressure' && pressure
        ? pressure.re[i] * Math.cos(turn) - pressure.im[i] * Math.sin(turn)
        : levelDb[i] - (as === 'difference' ? (meanDb ?? 0) : 0);
    const { project } = view.document.getState();
    const things = [
      ...project.subwoofers.map(({ atM }) => atM),
      ...(view.results.getState().geometry?.value.seats ?? []).map(({ earM }) => earM),
    ];
    const flat: { x: number; y: number; share: number }[] = [];
    for (let j = 4; j < vM.length - 4; j += 3)
      for (let i = 4; i < uM.length - 4; i += 3) {
        const n = j * uM.length + i;
        const here = value(n);
        const at =
          cut.normal === 'y'
            ? ([uM[i], cut.atM, vM[j]] as const)
            : cut.normal === 'z'
              ? ([uM[i], vM[j], cut.atM] as const)
              : ([cut.atM, vM[j], uM[i]] as const);
        const spot = drawn.project(at);
        const toContour = Math.abs(here / step - Math.round(here / step)) * step;
        const beside = [1, -1, uM.length, -uM.length].map((d) => Math.abs(value(n + d) - here));
        const marked = things.some(([x, , z]) => Math.hypot(x - at[0], z - at[2]) < (cut.normal === 'y' ? 0.85 : 0.5));
        // A contour lies four steps of the grid away or more.
        const slope = Math.max(...beside);
        if (!spot || marked || toContour < Math.max(0.12 * step, 4 * slope) || slope > 0.2 * step) continue;
        flat.push({ x: spot.x, y: spot.y, share: (here - low) / (high - low) });
      }
    const around = [-2, 0, 2].flatMap((dx) => [-2, 0, 2].map((dy) => [dx, dy] as const));
    const seen = drawn.thingsAt(flat.flatMap(({ x, y }) => around.map(([dx, dy]) => [x + dx, y + dy] as const)));
    return flat
      .filter((_, k) => seen.slice(k * 9, k * 9 + 9).every((thing) => thing === 'floor:floor'))
      .filter((_, k, all) => k % Math.max(1, Math.floor(all.length / 25)) === 0)
      .map(({ x, y, share }) => ({ share, kind: legend.kind ?? '', colour: drawn.colourAt(x, y) }));
  });

const compare = (found: readonly Sample[], kind: string, name: string): void => {
  expect(found.length, name).toBeGreaterThan(8);
  for (const { share, colour, kind: shown } of found) {
    expect(shown).toBe(kind);
    const wanted = (kind === 'level' ? cividis : diverging)(Math.min(1, Math.max(0, share)));
    // Two entries of the table either way, up to three steps of a channel each: a pixel of a slanting map covers as much.
    wanted.forEach((channel, k) => {
      expect(Math.abs(colour[k] - channel), `${name}: share ${share}, drawn ${colour}`).toBeLessThanOrEqual(6);
    });
  }
};

test.describe('with less motion', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('every kind of slice has the colours of its legend, lying and standing', async ({ app }) => {
    await asBox(app);
    await slice(app, { as: 'level' });
    compare(await samples(app), 'level', 'level');
    await slice(app, { as: 'difference' });
    compare(await samples(app), 'difference', 'difference from the seats’ mean');
    await slice(app, { as: 'level', span: 'band' });
    compare(await samples(app), 'level', 'mean of a band');
    await slice(app, { as: 'pressure', span: 'one' });
    compare(await samples(app), 'pressure', 'pressure');
    await slice(app, { as: 'level', plane: 'along', alongXM: 0.35 });
    compare(await samples(app), 'level', 'along the room');
    await slice(app, { as: 'difference', plane: 'across', acrossZM: 5 });
    compare(await samples(app), 'difference', 'across the room');
  });

  test('a signed pressure stands still', async ({ app }) => {
    await asBox(app);
    await slice(app, { as: 'pressure' });
    const { frames, reasons, still } = await probe(app, async ({ frames, frameRequests, view }) => {
      const before = frames();
      const asked = { ...frameRequests() };
      await new Promise((resolve) => setTimeout(resolve, 1500));
      const reasons = Object.entries(frameRequests()).flatMap(([reason, count]) =>
        count !== asked[reason] ? [reason] : [],
      );
      return { frames: frames() - before, reasons, still: view.session.getState().reducedMotion };
    });
    expect(still).toBe(true);
    // Loading the box may still bring the camera to its place, which asks for frames of its own.
    expect(reasons.filter((reason) => reason === 'wave')).toEqual([]);
    if (reasons.length === 0) expect(frames).toBe(0);
  });
});

test('a signed pressure moves, and rests when it is put away', async ({ app }) => {
  await asBox(app);
  await slice(app, { as: 'pressure' });
  const moving = await probe(app, async ({ frames, stage, view }) => {
    const found = view.results.getState().slice?.value;
    if (!found) return null;
    const at = stage()?.project([0.9, found.cut.atM, 1.6]);
    if (!at) return null;
    const before = frames();
    const colours: string[] = [];
    for (let look = 0; look < 6; look += 1) {
      await new Promise((resolve) => setTimeout(resolve, 220));
      colours.push(stage()?.colourAt(at.x, at.y).join() ?? '');
    }
    return { frames: frames() - before, colours: new Set(colours).size };
  });
  expect(moving?.frames).toBeGreaterThan(3);
  expect(moving?.colours).toBeGreaterThan(2);
  await slice(app, { as: 'level' });
  const idle = await probe(app, async ({ frames }) => {
    const before = frames();
    await new Promise((resolve) => setTimeout(resolve, 1500));
    return frames() - before;
  });
  expect(idle).toBe(0);
});

test('the bass column: a mode puts the cursor on itself, curves and decay rise with their tables', async ({ app }) => {
  await asBox(app);
  await app.locator('.column-tabs').getByText('Bass', { exact: true }).click();
  const first = app.locator('.modes tbody button').first();
  const hz = Number(await first.textContent());
  await first.click();
  await expect.poll(() => probe(app, ({ view }) => view.session.getState().frequencyHz)).toBeCloseTo(hz, 1);

  await app.getByRole('button', { name: 'Curves of the seats' }).click();
  await expect(app.locator('.rise .plot-curves path.is-chosen')).toHaveCount(1);
  await expect(app.locator('.rise .plot-curves path.is-band')).toHaveCount(1);
  const slider = app.getByRole('slider', { name: 'Frequency on the curves' });
  await slider.press('ArrowRight');
  const stepped = await probe(app, ({ view }) => view.session.getState().frequencyHz);
  expect(stepped).toBeGreaterThan(hz);
  await app.getByRole('button', { name: 'Table', exact: true }).click();
  await expect(app.locator('.rise table thead th')).toHaveCount(8);
  await app.getByRole('button', { name: 'Table', exact: true }).click();

  await app.locator('.rise').getByText('Decay', { exact: true }).click();
  await settled(app);
  const canvas = app.locator('.rise canvas');
  await expect(canvas).toBeVisible();
  const colours = await canvas.evaluate((element) => {
    const sheet = element as HTMLCanvasElement;
    const { data } = sheet.getContext('2d')?.getImageData(0, 0, sheet.width, sheet.height) ?? { data: [] };
    const seen = new Set<number>();
    for (let i = 0; i < data.length; i += 4) seen.add((data[i] << 16) | (data[i + 1] << 8) | data[i + 2]);
    return seen.size;
  });
  expect(colours).toBeGreaterThan(50);
  await app.keyboard.press('d');
  await expect(app.locator('.rise')).toHaveCount(0);
});
