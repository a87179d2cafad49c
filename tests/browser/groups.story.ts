import { expect, test } from './museum.ts';

test('story: the rounds of a show are found by their shape, with reasons; gathered here, they are a vignette there', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator', { viewport: { width: 1440, height: 900 } });
  const isolde = await museum.enter(browser, 'guest artist', { viewport: { width: 1440, height: 900 } });
  await page.getByRole('link', { name: 'Likenesses' }).click();
  // By shape among the whole checklist, without a press: what is seen first on a wall.
  const round = page.getByRole('article', { name: 'Round', exact: true });
  await expect(round.getByText(/are round: 100 % of these, 0 % of the rest/)).toBeVisible({ timeout: 20_000 });
  // Clock dials and copper moulds: unlike things that share a shape.
  await expect(round.getByRole('button', { name: /^Clock dial, weir office/ })).toBeVisible();
  await expect(round.getByRole('button', { name: /^Copper mould, ringed/ }).first()).toBeVisible();
  // What hangs elsewhere is left out, with why, until a person says otherwise.
  await expect(round.getByText(/^Left out, \d+/)).toBeVisible();
  await round.getByRole('button', { name: /^gather \d+ into a vignette/ }).click();
  await page.getByLabel('Name', { exact: true }).fill('All the rounds');
  await page.getByRole('button', { name: 'gather', exact: true }).click();
  await expect(round.getByText(/Gathered as/)).toBeVisible();
  await isolde.page.getByRole('link', { name: 'Vignettes' }).click();
  await expect(isolde.page.getByText('All the rounds').first()).toBeVisible();
  // The address asks: whoever is sent it sees the same sets.
  await isolde.page.evaluate((hash) => {
    location.hash = hash;
  }, new URL(page.url()).hash);
  await expect(isolde.page.getByRole('article', { name: 'Round', exact: true })).toBeVisible({ timeout: 20_000 });
  // Declined by one, it stays away from both.
  await isolde.page.getByRole('article', { name: 'Square' }).getByRole('button', { name: 'not this one' }).click();
  await expect(page.getByRole('article', { name: 'Square' })).toBeHidden();
  await expect(page.getByText(/^1 declined: Isolde Fennimarsh/)).toBeVisible();
  expect([...errors, ...isolde.errors]).toEqual([]);
});

test('story: where nothing stands it is said, with what was tried; and with every trait dealt out again nothing is found', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.evaluate(() => {
    location.hash = '#likenesses/use/checklist';
  });
  await expect(page.getByRole('heading', { name: 'Nothing found' })).toBeVisible({ timeout: 20_000 });
  await expect(
    page.getByText(/no closer than chance: 0\.\d\d closer than others of the same types/).first(),
  ).toBeVisible();
  await page.getByRole('button', { name: 'try it where nothing is to be found' }).click();
  await expect(page.getByText(/dealt out again nothing was found, as it should be/)).toBeVisible({ timeout: 20_000 });
  // A type is a set all the same: taken in hand to the layout floor.
  await page
    .getByRole('article', { name: /^Mould, 32/ })
    .getByRole('button', { name: 'Take there' })
    .click();
  await expect(page).toHaveURL(/#layout$/);
  await expect(page.getByRole('article', { name: /^\d+ selected/ })).toBeVisible();
  expect(errors).toEqual([]);
});
