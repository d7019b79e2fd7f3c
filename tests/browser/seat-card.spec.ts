import { DEMO, evaluate, expect, probe, settled, test } from './support.ts';

/** Reads a report field by the path the card carries, for example `picture.worstCase.clearanceMm` or `loudspeakers.L.levelDb`. */
const valueAt = (seat: ReturnType<typeof evaluate>['seats'][number], path: string): unknown => {
  const [group, ...rest] = path.split('.');
  if (group === 'loudspeakers') {
    const [id, field] = rest;
    return seat.loudspeakers.find((one) => one.id === id)?.[field];
  }
  return path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)?.[key], seat);
};

test('every figure on every seat card is the report’s, rounded', async ({ app }) => {
  const report = evaluate(DEMO);
  let compared = 0;
  for (const [index, seat] of report.seats.entries()) {
    await probe(app, ({ view }, id) => view.session.setState({ seatId: id, rightColumn: 'seat' }), seat.id);
    await settled(app);
    const figures = await app.locator('[data-field]').evaluateAll((nodes) =>
      nodes.map((node) => ({
        field: node.getAttribute('data-field') ?? '',
        shown: node.getAttribute('data-shown') ?? node.textContent ?? '',
        scale: Number(node.getAttribute('data-scale') ?? 1),
      })),
    );
    for (const { field, shown, scale } of figures) {
      const path = field.replace(`seats[${index}].`, '');
      if (!/^(picture|loudspeakers)\./.test(path)) continue;
      const expected = valueAt(seat, path);
      const decimals = /[.](\d+)/.exec(shown)?.[1].length ?? 0;
      const number = Number(shown.replace(/[−–]/g, '-').replace(/[^\d.-]/g, ''));
      if (expected === null) expect(shown, `${seat.id} ${path}`).not.toMatch(/\d/);
      else {
        const wanted = Number(expected) * scale;
        expect(Math.abs(number - wanted), `${seat.id} ${path}: shown ${shown}, report ${expected}`).toBeLessThanOrEqual(
          0.5 * 10 ** -decimals + 1e-9,
        );
      }
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(7 * 60);
});
