import { expect, test } from './museum.ts';

test('story: with keys alone four works come to one height and equal gaps; the other browser sees it; two undos take it back', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator', { viewport: { width: 1440, height: 900 } });
  const isolde = await museum.enter(browser, 'guest artist', { viewport: { width: 1440, height: 900 } });
  for (const seat of [page, isolde.page]) {
    await seat.getByRole('button', { name: /^Wheel Room, east wall/ }).press('Enter');
    await seat.getByRole('button', { name: 'All on this wall, as a list' }).press('Enter');
  }
  const names = ['Bank-full, March', 'Reeds, evening', 'Noon, no wind', 'Whirl, seen from the bridge'];
  /** What the list says of each: height of its centre and where its left edge is. */
  const lines = (seat: typeof page): Promise<string[]> =>
    seat
      .locator('.wall-list li')
      .filter({ hasText: new RegExp(names.join('|')) })
      .allTextContents();
  const before = await lines(page);
  expect(before).toHaveLength(4);
  for (const name of names) await page.getByRole('button', { name }).first().press('Shift+Enter');
  const card = page.getByRole('article', { name: '4 selected' });
  await expect(card).toBeVisible();
  await card.getByRole('button', { name: 'tops at one height' }).press('Enter');
  await card.getByRole('button', { name: 'equal gaps across, between the outermost' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Undo: equal gaps across' })).toBeVisible();
  // Tops first: two centres come up. Then the two between the outermost go along.
  for (const seat of [page, isolde.page]) {
    await expect.poll(async () => (await lines(seat)).filter((line) => before.includes(line))).toEqual([before[0]]);
    await expect
      .poll(async () => (await lines(seat)).map((line) => /high, ([\d.]+) from/.exec(line)?.[1]))
      .toEqual(['50.0', '233.3', '346.7', '520.0']);
  }
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => lines(isolde.page)).toEqual(before);
  expect([...errors, ...isolde.errors]).toEqual([]);
});
