import { expect, type Museum, type Seat, test } from './museum.ts';

const LONG = 'Sixty printing blocks, hung loosely round the oil view of the valley they were cut in. '.repeat(900);

async function faceEastWall(seat: Seat): Promise<void> {
  await seat.page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await expect(seat.page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
}

async function both(museum: Museum, browser: Parameters<Museum['enter']>[0]): Promise<[Seat, Seat]> {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  await faceEastWall(dov);
  await faceEastWall(isolde);
  return [dov, isolde];
}

test('story: the disk fills while two work: both are told, what was typed stays in the page and is not called saved', async ({
  museum,
  browser,
}) => {
  await museum.kill();
  // The file may not grow past what it has: joining still finds room, a long text does not.
  await museum.open({ maxPages: 1 });
  const [dov, isolde] = await both(museum, browser);
  const caption = dov.page.getByRole('region', { name: 'Sixty impressions' });
  await caption.getByRole('button', { name: 'reword' }).click();
  await dov.page.getByRole('textbox', { name: /intent/i }).fill(LONG);
  await dov.page.getByRole('button', { name: 'set', exact: true }).click();

  for (const { page } of [dov, isolde]) {
    const band = page.getByText(/^Read-only for now\./).first();
    await expect(band).toBeVisible();
    await expect(band).toContainText('its disk is full');
    await expect(page.getByText('Cannot be saved', { exact: true })).toBeVisible();
    await expect(page.getByText(/^Saved/)).toHaveCount(0);
  }
  // What was typed is still on the page that typed it, named as not saved; nobody else was shown it.
  await expect(caption).toContainText('hung loosely round the oil view');
  await expect(dov.page.getByText(/Not saved: describe/)).toBeVisible();
  await expect(isolde.page.getByRole('region', { name: 'Sixty impressions' })).not.toContainText('hung loosely');
  await expect(isolde.page.getByText(/Not saved:/)).toHaveCount(0);
  await expect(dov.page.getByRole('button', { name: 'sign off as it stands' })).toBeDisabled();

  // With room made it is sent, and only then called saved.
  await museum.kill();
  await museum.open();
  for (const { page } of [dov, isolde]) {
    await expect(page.getByText(/^Saved/).first()).toBeVisible({ timeout: 30_000 });
    await expect(page.getByText(/^Read-only/)).toHaveCount(0);
    await expect(page.getByRole('region', { name: 'Sixty impressions' })).toContainText('hung loosely');
  }
  expect(dov.errors).toEqual([]);
  expect(isolde.errors).toEqual([]);
});
