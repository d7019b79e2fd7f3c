import { expect, probe, settled, test } from './support.ts';

test('Ctrl+Z puts a refused entry back before it undoes, and what was undone is said', async ({ app }) => {
  const width = app.getByRole('textbox', { name: 'Picture width' });
  const widthM = () => probe(app, ({ view }) => view.document.getState().project.picture.widthM);
  const alert = app.locator('.parameters [role="alert"]');
  await probe(app, ({ view }) => view.session.setState({ selection: { kind: 'picture', id: 'picture' } }));
  const first = await widthM();
  const write = async (text: string) => {
    await width.focus();
    await app.keyboard.press('Control+a');
    await app.keyboard.type(text);
  };
  await write('2');
  await app.keyboard.press('Enter');
  expect(await widthM()).toBe(2);

  for (const key of ['Enter', 'Tab']) {
    // Refused where one is, and refused on leaving for the next field.
    await write('99');
    await app.keyboard.press(key);
    await expect(alert).toContainText('Allowed:');
    await app.keyboard.press('Control+z');
    await expect(alert).toHaveCount(0);
    await expect(width).toHaveValue('2.00 m');
    expect(await widthM()).toBe(2);
  }

  await app.keyboard.press('Control+z');
  expect(await widthM()).toBe(first);
  await expect(app.locator('.told')).toHaveText(/^Undone: Change picture width\./);
  await expect(app.locator('[role="log"]')).toContainText('Undone: Change picture width.');
  await settled(app);
  await app.keyboard.press('Control+Shift+z');
  expect(await widthM()).toBe(2);
  await expect(app.locator('.told')).toHaveText(/^Redone: Change picture width\./);

  // An entry that was refused before something else was done stands no more in the way of undoing that.
  await write('99');
  await app.keyboard.press('Enter');
  await probe(app, ({ view }) =>
    view.document.actions.apply('Name it', (project) => ({ ok: true, project: { ...project, name: 'Another' } })),
  );
  await app.keyboard.press('Control+z');
  expect(await probe(app, ({ view }) => view.document.getState().project.name)).not.toBe('Another');
  expect(await widthM()).toBe(2);
});

test('the form of another thing begins at its top', async ({ app }) => {
  const form = app.locator('.parameters');
  await form.evaluate((element) => element.scrollTo(0, 400));
  expect(await form.evaluate((element) => element.scrollTop)).toBeGreaterThan(0);
  await app.locator('[role="treeitem"][data-key="picture:picture"]').click();
  await expect.poll(() => form.evaluate((element) => element.scrollTop)).toBe(0);
  await expect(form.locator('.moves-by-keys')).toBeVisible();
});
