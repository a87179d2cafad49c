import { expect, test } from './museum.ts';
import { foundIn } from './soundness.ts';

test('story: the curator invites a preparator with the keyboard, who comes, is made a viewer, and is sent away, each at once', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.getByRole('link', { name: 'Seats' }).press('Enter');
  await expect(page.getByRole('row', { name: /Isolde Fennimarsh/ })).toContainText('guest artist');
  // A curator gives, changes and takes back no lead's seat.
  await expect(page.getByRole('row', { name: /Wren Halloway/ }).getByRole('button')).toHaveCount(0);
  const roles = page.getByRole('combobox', { name: 'Role', exact: true }).locator('option');
  await expect(roles).toHaveText(['curator', 'registrar', 'preparator', 'conservator', 'guest artist', 'viewer']);

  await page.getByRole('button', { name: 'Make a link' }).press('Enter');
  await expect(page.getByRole('alert')).toContainText('A name is missing');
  await page.getByRole('textbox', { name: 'Name' }).focus();
  await page.keyboard.type('Ines Quarrender');
  await page.keyboard.press('Tab');
  await page.keyboard.type('prep');
  await page.getByLabel('Last day, if any').fill('2099-05-09');
  await page.getByLabel('Last day, if any').press('Enter');
  await expect(page.getByRole('alert')).toContainText('in the future');
  const inAMonth = new Date(Date.now() + 30 * 86_400_000).toISOString().slice(0, 10);
  await page.getByLabel('Last day, if any').fill(inAMonth);
  await page.getByRole('button', { name: 'Make a link' }).press('Enter');
  const link = page.getByRole('textbox', { name: 'Link for Ines Quarrender' });
  await expect(link).toBeFocused();
  expect(await foundIn(page)).toEqual([]);
  const address = await link.inputValue();
  expect(address).toMatch(/\/join\/[\w-]{43}$/);

  // She comes, and may move things.
  const context = await browser.newContext();
  const ines = await context.newPage();
  await ines.goto(address);
  await expect(ines.getByText(/^Saved/).first()).toBeVisible();
  await expect(ines.getByRole('button', { name: /^Undo/ })).toBeVisible();
  await expect(ines.getByRole('link', { name: 'Seats' })).toHaveCount(0);
  await expect(page.getByRole('list', { name: 'Here now' })).toContainText('Ines Quarrender');

  // Made a viewer: her page closes, and opened anew moves nothing.
  await page.getByRole('combobox', { name: 'Role of Ines Quarrender' }).selectOption('viewer');
  expect(await foundIn(page)).toEqual([]);
  await page.getByRole('button', { name: 'Make Ines Quarrender viewer' }).press('Enter');
  await expect(ines.getByRole('heading', { name: 'Your role has changed.' })).toBeVisible();
  expect(await foundIn(ines)).toEqual([]);
  await expect(ines.locator('body')).not.toContainText('Dye House');
  await ines.getByRole('button', { name: 'Open the show anew' }).press('Enter');
  await expect(ines.getByText('nothing here can be moved or changed from your seat')).toBeVisible();

  // Sent away: at once, for good, and with what her browser had kept.
  const kept = (): Promise<number> => ines.evaluate(async () => (await indexedDB.databases()).length);
  expect(await kept()).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'take back the seat of Ines Quarrender' }).press('Enter');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Take the seat back' })).toHaveCount(0);
  await page.getByRole('button', { name: 'take back the seat of Ines Quarrender' }).press('Enter');
  await page.getByRole('button', { name: 'Take the seat back' }).press('Enter');
  await expect(ines.getByRole('heading', { name: 'This seat is no longer valid.' })).toBeVisible();
  await expect.poll(kept).toBe(0);
  await expect(ines.locator('body')).not.toContainText('Dye House');
  await expect(page.getByText('Taken back: 1')).toBeVisible();
  await expect(page.getByRole('list', { name: 'Here now' })).not.toContainText('Ines Quarrender');
  expect((await ines.goto(address))?.status()).toBe(404);
  await context.close();
  expect(errors).toEqual([]);
});

test('story: the artist proposes only: told at once on an open page, and moving again when it is lifted', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  const band = isolde.page.getByText('put in a proposal', { exact: false });
  await expect(band).toHaveCount(0);
  await dov.page.getByRole('link', { name: 'Seats' }).click();
  const only = dov.page.getByRole('checkbox', { name: /^proposes only/ });
  await only.press('Space');
  await expect(band).toBeVisible();
  await only.press('Space');
  await expect(band).toHaveCount(0);
  expect(dov.errors).toEqual([]);
  expect(isolde.errors).toEqual([]);
});
