import type { Page } from '@playwright/test';
import { expect, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';
const MAP = 'Parish of Saint Osk, water rates';
const WIDE = { viewport: { width: 1440, height: 900 } };

const cardOf = ({ page }: Seat, name: string) => page.getByRole('article', { name: `Card of ${name}` });

/** What the stage shows of a piece, once it is at rest. */
async function shownOf(page: Page, pieceId: string): Promise<string> {
  const clip = await page.evaluate(async (id) => {
    await window.enfiladeProbe?.idle();
    return window.enfiladeProbe?.screenRectOf(id) ?? null;
  }, pieceId);
  if (clip === null) throw new Error(`${pieceId} is not on the stage`);
  return (await page.screenshot({ clip })).toString('base64');
}

async function take({ page }: Seat, hash: string, name: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
  await page.getByRole('button', { name: 'All on this wall, as a list' }).press('Enter');
  await page
    .getByRole('list', { name: 'All on this surface' })
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .press('Enter');
  await expect(page.getByRole('article', { name: `Card of ${name}` })).toBeVisible();
}

test('story: a frame parts a lost view from its wall, and a press leaves a lender’s cloth out; the other sees both, undo takes them back', async ({
  museum,
  browser,
}) => {
  const ama = await museum.enter(browser, 'registrar', WIDE);
  const isolde = await museum.enter(browser, 'guest artist', WIDE);
  for (const seat of [ama, isolde]) await take(seat, '#wall/dye:head', OIL);
  const [card, hers] = [cardOf(ama, OIL), cardOf(isolde, OIL)];
  for (const one of [card, hers]) await expect(one).toContainText('lost on this wall');
  const bare = await shownOf(isolde.page, 'oil-1#1');

  // From how it reads to its frame; chosen and as wide as it is, it is drawn, and it is what meets the wall.
  await card.getByRole('button', { name: 'its frame' }).press('Enter');
  await expect(card.getByRole('button', { name: 'Frame', exact: true })).toBeFocused();
  await card.getByRole('combobox', { name: 'Framed in' }).selectOption('gilt');
  await expect(card).toContainText('it is drawn once its width is known');
  await card.getByRole('textbox', { name: /^Wide, as faced/ }).fill('7');
  await ama.page.keyboard.press('Enter');
  await expect(card).toContainText('It lies within the framed size.');
  for (const one of [card, hers]) {
    await expect(one).toContainText('weak on this wall');
    await expect(one).toContainText(/frame parts them/);
  }
  await expect.poll(() => shownOf(isolde.page, 'oil-1#1')).not.toBe(bare);
  for (let step = 0; step < 2; step++) await ama.page.getByRole('button', { name: /^Undo/ }).click();
  await expect(hers).toContainText('lost on this wall');

  // The parish sent its map on the vestry's cloth: what meets the wall is cloth until the ground is left out.
  for (const seat of [ama, isolde]) await take(seat, '#wall/counting:head', MAP);
  const [map, her] = [cardOf(ama, MAP), cardOf(isolde, MAP)];
  for (const one of [map, her]) {
    await one.getByRole('button', { name: 'its photograph' }).press('Enter');
    await expect(one).toContainText('No studio ground was found in it');
    await expect(one).toContainText(/Its colours: (fair|good|poor)/);
  }
  await expect(her.getByRole('group', { name: 'Its ground' })).toHaveCount(0);
  const withCloth = await shownOf(isolde.page, 'map-7#1');
  const leaveOut = map.getByRole('button', { name: 'leave the ground out' });
  await leaveOut.press('Enter');
  await expect(leaveOut).toHaveAttribute('aria-pressed', 'true');
  for (const one of [map, her]) await expect(one).toContainText(/By a person’s word its ground is left out.*sure/);
  await expect(her).toContainText(/as it was found it would read|it reads as before/);
  await expect.poll(() => shownOf(isolde.page, 'map-7#1')).not.toBe(withCloth);
  await ama.page.getByRole('button', { name: /^Undo/ }).click();
  for (const one of [map, her]) await expect(one).toContainText('No studio ground was found in it');
  expect([...ama.errors, ...isolde.errors]).toEqual([]);
});

test('story: a show asks more of what carries, and every wall says so to everybody until it is as by default', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator', WIDE);
  const isolde = await museum.enter(browser, 'guest artist', WIDE);
  const carrying = isolde.page.getByRole('button', { name: /^\d+ carries/ });
  await expect(carrying).toBeVisible();
  await dov.page.getByRole('link', { name: 'Colour desk', exact: true }).click();
  const strict = dov.page.getByRole('region', { name: 'Where the words part' });
  await strict.getByRole('button', { name: 'Where the words part' }).press('Enter');
  const carries = strict.getByRole('group', { name: 'Carries, when all hold' });
  const body = carries.getByRole('textbox', { name: 'body off the wall, at least' });
  await body.fill('3');
  await dov.page.keyboard.press('Enter');
  await expect(carries.getByRole('alert')).toContainText('must not be under');
  await body.fill('95');
  await dov.page.keyboard.press('Enter');
  await expect(strict).toContainText('this show’s own: 1 of 9 figures');
  await expect(strict).toContainText(/Of all that hangs: .*, 0 carries\. By default: .*[1-9]\d* carries\./);
  await expect(carrying).toHaveCount(0);
  await strict.getByRole('button', { name: 'as by default' }).press('Enter');
  await expect(carrying).toBeVisible();
  expect([...dov.errors, ...isolde.errors]).toEqual([]);
});
