import { expect, test } from './museum.ts';

test('story: a curator corrects what a work is on its card; the artist reads it at once; one undo takes each back', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator', { viewport: { width: 1440, height: 900 } });
  const isolde = await museum.enter(browser, 'guest artist', { viewport: { width: 1440, height: 900 } });
  const card = page.getByRole('article', { name: /^Card of/ });
  const theirs = isolde.page.getByRole('article', { name: /^Card of/ });
  // What can hurt a work is read without scrolling.
  await expect(card.getByText(/^Thermostat 23\.0 cm/)).toBeInViewport();
  await card.getByRole('button', { name: 'record', exact: true }).press('Enter');
  await theirs.getByRole('button', { name: 'record', exact: true }).press('Enter');
  for (const [label, was, is] of [
    ['Title', 'The valley from Tallow Hill', 'The valley, from Tallow Hill'],
    ['Number', 'OM 1931.14.3', 'OM 1931.14.3a'],
    ['Maker', 'Unknown', 'Unknown, a travelling painter'],
    ['Date, as written', 'c. 1840', '1838–1842'],
    ['Medium', 'Oil on canvas, dark frame', 'Oil on canvas, oak frame'],
  ] as const) {
    const field = card.getByRole('textbox', { name: label, exact: true });
    await expect(field).toHaveValue(was);
    await field.fill(is);
    await field.press('Enter');
    await expect(theirs.getByText(is, { exact: true }).last()).toBeVisible();
    await expect(theirs.getByRole('textbox', { name: label, exact: true })).toHaveCount(0);
    await page.getByRole('button', { name: /^Undo: correct the/ }).click();
    await expect(field).toHaveValue(was);
    await expect(theirs.getByText(was, { exact: true }).last()).toBeVisible();
  }
  // A number another record has is refused beside the field, and nothing is lost.
  const number = card.getByRole('textbox', { name: 'Number', exact: true });
  await number.fill('');
  await number.press('Enter');
  await expect(card.getByRole('alert')).toHaveText('a record has a number');
  await number.press('Escape');
  await expect(number).toHaveValue('OM 1931.14.3');
  expect([...errors, ...isolde.errors]).toEqual([]);
});

test('story: with keys alone a folded group of a card is opened, and stays open on the next card', async ({
  museum,
  browser,
}) => {
  const { page } = await museum.enter(browser, 'curator', { viewport: { width: 1440, height: 900 } });
  const card = page.getByRole('article', { name: /^Card of/ });
  const group = card.getByRole('button', { name: 'Hardware' });
  await expect(group).toHaveAttribute('aria-expanded', 'false');
  await group.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await expect(card.getByRole('combobox', { name: 'Hangs by' })).toBeFocused();
  await page.getByRole('button', { name: 'All on this wall, as a list' }).click();
  await page
    .getByRole('button', { name: /^Weir, rising/ })
    .first()
    .click();
  await expect(page.getByRole('article', { name: 'Card of Weir, rising' })).toBeVisible();
  await expect(card.getByRole('combobox', { name: 'Hangs by' })).toBeVisible();
});
