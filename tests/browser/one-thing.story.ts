import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, ROOT, test } from './museum.ts';
import { expectUpright } from './soundness.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

test('story: a thing found in a shop comes in from a phone: photographed, roughly measured, priced for few, laid on the layout floor; a photograph that fails keeps what was typed', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator', PHONE);
  const isolde = await museum.enter(browser, 'guest artist');
  await isolde.page.getByRole('link', { name: 'Layout floor', exact: true }).click();
  const { page } = dov;
  await page.getByRole('button', { name: 'Ways' }).click();
  await page.getByRole('link', { name: 'One thing', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'One thing', level: 1 })).toBeVisible();
  await expectUpright(page, 'one thing');

  // What is wanting is said where it is wanting.
  await page.getByLabel('Height').fill('40');
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await expect(page.getByText('Say what it is.')).toBeVisible();
  await page.getByLabel('What it is').fill('Enamel jug, river blue');
  await page.getByLabel('Width').fill('22');
  await page.getByRole('radio', { name: 'Bought for the show' }).check();
  await page.getByLabel('Price, with its currency').fill('EUR 18');
  await page.getByLabel('Before: as it is').fill('rust at the foot');
  await page.getByLabel('After: as it is to be').fill('rust made fast, not painted');

  const picture = { name: 'jug.png', mimeType: 'image/png' };
  await page.getByLabel('Photograph it').setInputFiles({ ...picture, buffer: Buffer.from('no picture at all') });
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await expect(page.getByRole('alert')).toContainText('What you typed is kept here');
  await expect(page.getByLabel('What it is')).toHaveValue('Enamel jug, river blue');
  const buffer = readFileSync(join(ROOT, 'client', 'src', 'look', 'east-wall.png'));
  await page.getByLabel('Photograph it again').setInputFiles({ ...picture, buffer });
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await expect(page.getByText('Enamel jug, river blue is in, on the layout floor')).toBeVisible();
  await expect(page.getByLabel('What it is')).toHaveValue('');

  // The artist sees it lie there, with all but its price.
  const entry = isolde.page
    .getByRole('list', { name: 'All on this surface' })
    .getByRole('button', { name: /^Enamel jug/ });
  await entry.press('Enter');
  const card = isolde.page.getByRole('article', { name: 'Card of Enamel jug, river blue' });
  await expect(card).toContainText('Bought for the show');
  await card.getByRole('button', { name: 'The record' }).click();
  await expect(card).toContainText('Estimated 40 × 22');
  await expect(card).toContainText('by Dov Castellane');
  await expect(card).toContainText('rust made fast, not painted');
  await expect(card).not.toContainText('EUR 18');
  await page.getByRole('button', { name: 'see it' }).click();
  await expect(page.getByRole('article', { name: 'Card of Enamel jug, river blue' })).toBeVisible();
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});
