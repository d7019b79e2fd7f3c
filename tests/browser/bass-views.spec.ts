import type { Page } from '@playwright/test';
import { cividis } from '../../src/math/cividis.ts';
import { diverging } from '../../src/math/diverging.ts';
import type { SliceState } from '../../src/state/slice.ts';
import { expect, idle, probe, settled, test } from './support.ts';

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

/**
 * Colours away from contours, chairs and subwoofers, with the share of the legend they stand for: the value in the middle of
 * the very pixel that is read, for a standing map seen aslant has more than a step of the grid in a pixel.
 */
const samples = (app: Page): Promise<Sample[]> =>
  probe(app, ({ view, stage }) => {
    const drawn = stage();
    const found = view.results.getState().slice?.value;
    const legend = document.querySelector<HTMLElement>('.legend[data-kind]')?.dataset;
    if (!drawn || !found || !legend) return [];
    const { uM, vM, levelDb, pressure, cut, as, meanDb } = found;
    const [low, high] = [Number(legend.low), Number(legend.high)];
    const step = legend.kind === 'pressure' ? high / 4 : high - low > 12 ? 3 : 1;
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
    const at = (u: number, v: number) =>
      cut.normal === 'y'
        ? ([u, cut.atM, v] as const)
        : cut.normal === 'z'
          ? ([u, v, cut.atM] as const)
          : ([cut.atM, v, u] as const);
    const flat: { x: number; y: number; share: number }[] = [];
    for (let j = 4; j < vM.length - 4; j += 2)
      for (let i = 4; i < uM.length - 4; i += 2) {
        const n = j * uM.length + i;
        const here = drawn.project(at(uM[i], vM[j]));
        const [right, up] = [drawn.project(at(uM[i + 1], vM[j])), drawn.project(at(uM[i], vM[j + 1]))];
        const [x, , z] = at(uM[i], vM[j]);
        const marked = things.some(([a, , b]) => Math.hypot(a - x, b - z) < (cut.normal === 'y' ? 0.85 : 0.5));
        if (!here || !right || !up || marked) continue;
        // Pixels a step of the grid, and from there how many steps away the middle of the pixel lies that is read.
        const [ux, uy, vx, vy] = [right.x - here.x, right.y - here.y, up.x - here.x, up.y - here.y];
        const area = ux * vy - uy * vx;
        const [offX, offY] = [Math.floor(here.x) + 0.5 - here.x, Math.floor(here.y) + 0.5 - here.y];
        const [s, t] = [(offX * vy - offY * vx) / area, (offY * ux - offX * uy) / area];
        if (!(Math.abs(s) < 1 && Math.abs(t) < 1)) continue;
        const [di, dj] = [s < 0 ? -1 : 1, t < 0 ? -uM.length : uM.length];
        const [a, b] = [Math.abs(s), Math.abs(t)];
        const near = value(n) + a * (value(n + di) - value(n));
        const far = value(n + dj) + a * (value(n + dj + di) - value(n + dj));
        const read = near + b * (far - near);
        // A line is drawn where its value lies within two pixels: what a pixel covers of the map, either way.
        const [byU, byV] = [value(n + di) - value(n), value(n + dj) - value(n)].map(Math.abs);
        const pixel = (byU * (Math.abs(vy) + Math.abs(vx)) + byV * (Math.abs(uy) + Math.abs(ux))) / Math.abs(area);
        const toContour = Math.abs(read / step - Math.round(read / step)) * step;
        if (toContour < 3 * pixel) continue;
        flat.push({ x: here.x, y: here.y, share: (read - low) / (high - low) });
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
    // One entry of the table either way: an entry of the two-sided map is up to three steps of a channel.
    wanted.forEach((channel, k) => {
      expect(Math.abs(colour[k] - channel), `${name}: share ${share}, drawn ${colour}`).toBeLessThanOrEqual(3);
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
    await slice(app, { as: 'level', ownScale: true });
    compare(await samples(app), 'level', 'level with colours of its own');
    await slice(app, { as: 'level', ownScale: false, span: 'band' });
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
    await idle(app);
    const { frames, asked, still } = await probe(app, async ({ frames, frameRequests, view }) => {
      const drawn = frames();
      const before = frameRequests();
      await new Promise((resolve) => setTimeout(resolve, 1500));
      const asked = Object.entries(frameRequests()).filter(([reason, count]) => count !== before[reason]);
      return { frames: frames() - drawn, asked, still: view.session.getState().reducedMotion };
    });
    expect(still).toBe(true);
    expect(asked).toEqual([]);
    expect(frames).toBe(0);
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
  await idle(app);
  const drawn = await probe(app, async ({ frames }) => {
    const before = frames();
    await new Promise((resolve) => setTimeout(resolve, 1500));
    return frames() - before;
  });
  expect(drawn).toBe(0);
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
  await idle(app);
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
