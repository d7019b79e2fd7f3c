import { cividis } from '../../src/math/cividis.ts';
import { expect, probe, settled, test } from './support.ts';

test('the floor’s colour at a point is the legend’s colour for its value', async ({ app }) => {
  await probe(app, ({ view }) =>
    view.session.setState({ overlays: { sightlines: false, cones: false, people: false, labels: false } }),
  );
  let compared = 0;
  for (const frequencyHz of [31.5, 40, 63]) {
    await probe(app, ({ view }, hz) => view.session.setState({ frequencyHz: hz }), frequencyHz);
    await settled(app);
    const points = await probe(app, ({ view, stage }) => {
      const drawn = stage();
      const floor = view.results.getState().slice?.value;
      const scale = document.querySelector<HTMLElement>('.scale[data-low-db]')?.dataset;
      if (!drawn || !floor || !scale) return [];
      const { subwoofers } = view.document.getState().project;
      const ears = view.results.getState().geometry?.value.seats.map(({ earM }) => earM) ?? [];
      const { uM: xM, vM: zM, levelDb, cut } = floor;
      const [lowDb, highDb] = [Number(scale.lowDb), Number(scale.highDb)];
      const flat: { x: number; y: number; share: number }[] = [];
      for (let j = 4; j < zM.length - 4; j += 5) {
        for (let i = 4; i < xM.length - 4; i += 5) {
          const at = drawn.project([xM[i], cut.atM, zM[j]]);
          const level = levelDb[j * xM.length + i];
          // Far from a contour (every 3 dB) and where the level hardly changes: there the plain map is what is drawn.
          const toContour = Math.abs(level / 3 - Math.round(level / 3)) * 3;
          const beside = [1, -1, xM.length, -xM.length].map((d) => Math.abs(levelDb[j * xM.length + i + d] - level));
          // Subwoofers and chairs under the map have their outlines drawn on it.
          const marked =
            subwoofers.some(({ atM }) => Math.hypot(atM[0] - xM[i], atM[2] - zM[j]) < 0.5) ||
            ears.some(([x, , z]) => Math.hypot(x - xM[i], z - zM[j]) < 1.2);
          if (!at || marked || toContour < 0.9 || Math.max(...beside) > 0.3) continue;
          flat.push({ x: at.x, y: at.y, share: (level - lowDb) / (highDb - lowDb) });
        }
      }
      // Two pixels round a point must be floor too: an edge may fall on either side of a pixel.
      const around = [-2, 0, 2].flatMap((dx) => [-2, 0, 2].map((dy) => [dx, dy] as const));
      const things = drawn.thingsAt(flat.flatMap(({ x, y }) => around.map(([dx, dy]) => [x + dx, y + dy] as const)));
      return flat
        .filter((_, n) => things.slice(n * 9, n * 9 + 9).every((thing) => thing === 'floor:floor'))
        .map(({ x, y, share }) => ({ share, colour: drawn.colourAt(x, y) }));
    });
    for (const { share, colour } of points.slice(0, 60)) {
      const wanted = cividis(Math.min(1, Math.max(0, share)));
      wanted.forEach((channel, k) => {
        expect(Math.abs(colour[k] - channel), `${frequencyHz} Hz, share ${share}, drawn ${colour}`).toBeLessThanOrEqual(
          3,
        );
      });
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(20);
});
