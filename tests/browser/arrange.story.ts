import type { Page } from '@playwright/test';
import { expect, test } from './museum.ts';

interface Rect {
  readonly x: number;
  readonly y: number;
}

const BLOCKS = Array.from({ length: 41 }, (_, n) => `block-1#${n + 1}`);

function where(page: Page, pieces: readonly string[]): Promise<string> {
  return page.evaluate((ids) => {
    const probe = (window as unknown as { enfiladeProbe: { screenRectOf(id: string): Rect | null } }).enfiladeProbe;
    return JSON.stringify(
      ids.map((id) => {
        const rect = probe.screenRectOf(id);
        return rect === null ? null : [Math.round(rect.x), Math.round(rect.y)];
      }),
    );
  }, pieces);
}

test('story: a salon is asked for, tried, seen by the artist, declined, taken as one act and taken back', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  const { page: hers, errors: herErrors } = await museum.enter(browser, 'guest artist');
  await page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await hers.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await page.getByRole('button', { name: 'select all' }).click();
  await page.getByRole('button', { name: 'arrange…' }).click();
  await page.getByText(/not possible here/).click();
  await expect(page.getByText('Pendants answer each other in pairs')).toBeVisible();
  await page.getByRole('radio', { name: 'salon hang' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  const tries = page.getByRole('button', { name: /^Try it/ });
  await expect(tries).toHaveCount(3, { timeout: 30_000 });
  const before = await where(page, BLOCKS);

  // Shared, the artist looks too, and sees which one is tried.
  await page.getByRole('checkbox', { name: 'the others see these ways' }).check();
  await hers.getByRole('button', { name: 'look too' }).click();
  const herTries = hers.getByRole('button', { name: /^Try it/ });
  await expect(herTries).toHaveCount(3, { timeout: 30_000 });
  const name = (await tries.first().getAttribute('aria-label'))?.replace('Try it: ', '') ?? '';
  await tries.first().click();
  await expect.poll(() => where(page, BLOCKS)).not.toBe(before);
  await expect(hers.getByText('Dov Castellane tries this one')).toBeVisible();
  await expect(hers.getByRole('listitem').filter({ hasText: name }).getByText('tries this one')).toBeVisible();
  await page.getByRole('button', { name: 'Put back' }).click();
  await expect.poll(() => where(page, BLOCKS)).toBe(before);

  // Declined, it is gone from both, and after a reload it is not offered again.
  await page.getByRole('button', { name: `Decline: ${name}` }).click();
  await expect(page.getByRole('heading', { name, exact: true })).toHaveCount(0);
  await expect(hers.getByRole('heading', { name, exact: true })).toHaveCount(0);
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'select all' }).click();
  await page.getByRole('button', { name: 'arrange…' }).click();
  await page.getByRole('radio', { name: 'salon hang' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  await expect(tries).toHaveCount(3, { timeout: 30_000 });
  await expect(page.getByRole('heading', { name, exact: true })).toHaveCount(0);
  await expect(page.getByText('1 declined stays away.')).toBeVisible();

  await tries.first().click();
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  const after = await where(page, BLOCKS);
  expect(after).not.toBe(before);
  await page.getByRole('button', { name: /^Undo: arrange 42 pieces/ }).click();
  await expect.poll(() => where(page, BLOCKS)).not.toBe(after);
  expect([...errors, ...herErrors]).toEqual([]);
});

test('story: moulds are massed anew on the shelf unit, all of its levels, and stand there once taken', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.getByRole('button', { name: /^Dye House, north wall/ }).click();
  const list = page.getByRole('list', { name: 'All on this surface' });
  await page.getByText('All on this wall, as a list').click();
  const moulds = list.getByRole('button', { name: /^Copper mould/ });
  await moulds.first().press('Enter');
  for (const n of [1, 2, 3]) await moulds.nth(n).press('Shift+Enter');
  await page.getByRole('button', { name: 'arrange…' }).click();
  await page.getByRole('radio', { name: 'massed on a table or shelf' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  await expect(page.getByRole('button', { name: /^Try it/ }).first()).toBeVisible({ timeout: 30_000 });
  await page
    .getByRole('button', { name: /^Try it/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await expect(page.getByRole('button', { name: /^Undo: arrange/ })).toBeEnabled();
  expect(errors).toEqual([]);
});
