import { Person } from './gestures.ts';
import { expect, probe, settled, test } from './support.ts';

const MOST_GESTURES = 25;

test('from an empty room to a 5.1 living room with a sofa', async ({ app }) => {
  test.slow();
  const person = new Person(app);
  const rooms = app.getByRole('dialog', { name: 'Rooms' });
  const add = app.getByRole('button', { name: 'Add', exact: true });
  const menu = app.getByRole('menu', { name: 'Add' });
  const adds = async (word: RegExp) => {
    await person.click('Add', add);
    await person.click(`${word}`, menu.getByRole('menuitem', { name: word }));
  };

  await person.click('Rooms', app.getByRole('button', { name: 'Rooms' }));
  await person.click('Wide', rooms.getByLabel('Wide'));
  await person.write('4.2');
  await person.key('Tab');
  await person.write('5.2');
  await person.key('Tab');
  await person.type('2.5');
  await expect(rooms).toBeHidden();
  await settled(app);

  await adds(/^Sofa for three/);
  await person.click('Picture in the outline', app.getByRole('treeitem', { name: /^Picture/ }));
  await person.click('Picture width', app.getByRole('textbox', { name: 'Picture width' }));
  await person.type('2.05');
  await adds(/^Front three/);
  await adds(/^Surround pair/);
  await adds(/^Subwoofer/);
  await settled(app);

  const subwooferAt = await probe(app, ({ view, stage }) => {
    const [x, y, z] = view.document.getState().project.subwoofers[0].atM;
    const spot = (to: readonly [number, number, number]) => stage()?.project(to) ?? null;
    return { from: spot([x, y, z]), to: spot([x + 1.05, y, z]) };
  });
  if (!subwooferAt.from || !subwooferAt.to) throw new Error('the subwoofer is not in view');
  const handle = app.locator('[data-handle="subwoofer:S1/place"] circle').first();
  const disc = await handle.boundingBox();
  if (!disc) throw new Error('the subwoofer has no handle');
  const from = { x: disc.x + disc.width / 2, y: disc.y + disc.height / 2 };
  const by = { x: subwooferAt.to.x - subwooferAt.from.x, y: subwooferAt.to.y - subwooferAt.from.y };
  await person.drag('the subwoofer to a quarter of the wall', from, { x: from.x + by.x, y: from.y + by.y });
  await settled(app);
  person.log('5.1 living room');
  expect(person.gestures).toBeLessThanOrEqual(MOST_GESTURES);

  const { project, findings } = await probe(app, ({ view }) => ({
    project: view.document.getState().project,
    findings: (view.results.getState().findings?.value ?? []).map(({ rule, verdict }) => ({ rule, verdict })),
  }));
  expect(project.room.plan).toEqual({ shape: 'rectangle', widthM: 4.2, lengthM: 5.2 });
  expect(project.loudspeakers.map(({ channel }) => channel).sort()).toEqual([
    'M+000',
    'M+030',
    'M+110',
    'M-030',
    'M-110',
  ]);
  expect(project.rows.map(({ furniture, seats }) => [furniture, seats.length])).toEqual([['sofa', 3]]);
  expect(project.subwoofers.length).toBeGreaterThanOrEqual(1);
  expect(project.subwoofers[0].atM[0]).toBeGreaterThan(0.8);
  expect(project.picture.widthM).toBe(2.05);
  const layout = findings.filter(({ rule }) => /^(front|side|rear|centre|surround|image)-|^picture-/.test(rule));
  expect(layout.length).toBeGreaterThan(15);
  expect(layout.filter(({ verdict }) => verdict === 'missed')).toEqual([]);
});
