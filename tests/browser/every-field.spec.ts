import { readdirSync } from 'node:fs';
import { numberDocuments, readDemo, representative, type Stop, stopsOf, type Way, walk } from './form-walk.ts';
import { byKeyboard, byMouse, byTouch } from './form-ways.ts';
import { expect, settled, test, withoutDrawing } from './support.ts';

/**
 * Every item of every demo and every field of its form, changed, undone and redone by keyboard, by touch and by mouse; after
 * each act the document has to equal what it was. `npm test` takes each kind of field of each kind of item once, over all
 * demos; `npm run test:long` (PARTERRE_EVERY_FIELD=1) takes all of them in each.
 */
const DEMOS = 'public/demos';
const everything = process.env.PARTERRE_EVERY_FIELD === '1';
const demos = readdirSync(DEMOS).filter((file) => file.endsWith('.json'));
const WAYS: readonly Way[] = [byKeyboard, byTouch, byMouse];

const covered = new Set<string>();
const plans: readonly (readonly [file: string, stops: readonly Stop[]])[] = demos.map((file) => {
  const stops = stopsOf(readDemo(`${DEMOS}/${file}`));
  return [file, everything ? stops : representative(stops, covered)];
});

test.use({ hasTouch: true, actionTimeout: 20_000 });

// The room is not drawn here: this is about the form and the document, and drawing each of thousands of documents by a
// processor would take most of the time. What the scene makes of fields is looked at elsewhere.
test.beforeEach(({ page }) => withoutDrawing(page));

test('the walk meets every demo and as many fields as it should', () => {
  expect(plans.length).toBeGreaterThanOrEqual(1);
  const fields = plans.flatMap(([, stops]) => stops.flatMap(({ spots }) => spots));
  const kinds = new Set(plans.flatMap(([, stops]) => stops.map(({ item }) => item?.kind ?? 'room')));
  expect(fields.length).toBeGreaterThan(everything ? 400 : 100);
  expect([...kinds].sort()).toEqual(
    ['loudspeaker', 'object', 'opening', 'patch', 'picture', 'room', 'row', 'seat', 'subwoofer', 'surface'].sort(),
  );
});

for (const [file, stops] of plans)
  for (const way of WAYS)
    test(`${file} by ${way.name}: every field is changed, undone and redone`, async ({ app }) => {
      test.setTimeout(everything ? 3_600_000 : 600_000);
      const chooser = app.waitForEvent('filechooser');
      await app.getByRole('button', { name: 'Open', exact: true }).click();
      await (await chooser).setFiles(`${DEMOS}/${file}`);
      await settled(app);
      await numberDocuments(app);
      const count = await walk(app, way, stops);
      expect(count).toBe(stops.reduce((sum, { spots }) => sum + spots.length, 0));
    });
