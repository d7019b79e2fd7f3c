import type { Page } from '@playwright/test';
import { demoProject, expect, probe, settled, test } from './support.ts';

/** The share of the picture's own pixels that is seen from a seat in the drawn scene. */
const drawnShare = async (app: Page, seatId: string, eyeM: readonly number[]): Promise<number> => {
  const pixels = await probe(app, ({ stage }, [id, eye]) => stage()?.pictureSeen(id, eye as [number, number, number]), [
    seatId,
    eyeM,
  ] as const);
  expect(pixels?.whole ?? 0).toBeGreaterThan(100_000);
  return (pixels?.seen ?? 0) / (pixels?.whole ?? 1);
};

test('every chair, loudspeaker, the picture and the floor are seen from the overlook', async ({ app }) => {
  await probe(app, ({ view }) => view.session.setState(({ slice }) => ({ slice: { ...slice, shown: false } })));
  await settled(app);
  const counts = (await probe(app, ({ stage }) => stage()?.objects(1280, 800))) ?? {};
  const demo = demoProject();
  const least: [string, number][] = [
    ...demo.rows.flatMap(({ seats }) => seats.map(({ id }): [string, number] => [`seat:${id}`, 250])),
    ...demo.loudspeakers.map(({ id }): [string, number] => [`loudspeaker:${id}`, 40]),
    ...demo.subwoofers.map(({ id }): [string, number] => [`subwoofer:${id}`, 150]),
    ['picture:picture', 3000],
    ['shell:floor', 10_000],
  ];
  for (const [name, pixels] of least) expect(counts[name] ?? 0, name).toBeGreaterThanOrEqual(pixels);
});

test('the picture pixels seen from every seat are the share computed for it', async ({ app }) => {
  const seats = await probe(app, ({ view }) =>
    view.results
      .getState()
      .geometry?.value.seats.map(({ id, eyeM, picture }) => [id, eyeM, picture.visibleFraction] as const),
  );
  expect(seats).toHaveLength(7);
  for (const [seatId, eyeM, visibleFraction] of seats ?? []) {
    const seen = await drawnShare(app, seatId, eyeM);
    expect(Math.abs(seen - visibleFraction), `${seatId}: drawn ${seen}, computed ${visibleFraction}`).toBeLessThan(
      0.01,
    );
  }
});

test('a low picture behind high backs is hidden in the drawing as in the numbers', async ({ app }) => {
  await probe(app, ({ view }) => {
    view.document.actions.apply('lower', (project) => ({
      ok: true,
      project: {
        ...project,
        picture: { ...project.picture, bottomM: 0.35 },
        rows: project.rows.map((row, index) => (index === 1 ? { ...row, floorM: 0.1 } : row)),
      },
    }));
  });
  await settled(app);
  const seats = await probe(app, ({ view }) =>
    view.results
      .getState()
      .geometry?.value.seats.map(({ id, eyeM, picture }) => [id, eyeM, picture.visibleFraction] as const),
  );
  const back = (seats ?? []).filter(([id]) => id.startsWith('back'));
  expect(Math.min(...back.map(([, , share]) => share))).toBeLessThan(0.9);
  for (const [seatId, eyeM, visibleFraction] of back) {
    const seen = await drawnShare(app, seatId, eyeM);
    expect(Math.abs(seen - visibleFraction), `${seatId}: drawn ${seen}, computed ${visibleFraction}`).toBeLessThan(
      0.01,
    );
  }
});

test('label boxes never overlap, from the overlook and from every seat', async ({ app }) => {
  const overlaps = () =>
    probe(app, ({ stage }) => {
      const boxes = stage()?.labelBoxes() ?? [];
      const found: string[] = [];
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) {
          const apart =
            a.left + a.width <= b.left ||
            b.left + b.width <= a.left ||
            a.top + a.height <= b.top ||
            b.top + b.height <= a.top;
          if (!apart) found.push(`${a.key} and ${b.key}`);
        }
      });
      return { found, count: boxes.length };
    });
  let labels = 0;
  for (const { id } of demoProject().rows.flatMap(({ seats }) => seats)) {
    for (const mode of ['overlook', 'sit'] as const) {
      await probe(app, ({ view }, [seatId, to]) => view.session.setState({ seatId, mode: to }), [id, mode] as const);
      await settled(app);
      const { found, count } = await overlaps();
      expect(found, `${mode} ${id}`).toEqual([]);
      labels += count;
    }
  }
  expect(labels).toBeGreaterThan(7 * 5);
});
