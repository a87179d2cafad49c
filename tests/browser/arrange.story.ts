import type { Page } from '@playwright/test';
import { expect, test } from './museum.ts';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Probe {
  screenRectOf(id: string): Rect | null;
}

const BLOCKS = Array.from({ length: 41 }, (_, n) => `block-1#${n + 1}`);

function where(page: Page, pieces: readonly string[]): Promise<string> {
  return page.evaluate((ids) => {
    const probe = (window as unknown as { enfiladeProbe: Probe }).enfiladeProbe;
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

test('story: moulds are massed anew on all levels of the shelf unit and stand there once taken', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.getByRole('button', { name: /^Dye House, north wall/ }).click();
  const moulds = Array.from({ length: 19 }, (_, n) => `mould-${n + 1}#1`);
  await page.getByRole('button', { name: 'select all' }).first().click();
  await page.getByRole('button', { name: 'arrange…' }).click();
  await page.getByRole('radio', { name: 'massed on a table or shelf' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  const tries = page.getByRole('button', { name: /^Try it/ });
  await expect(tries).toHaveCount(3, { timeout: 30_000 });
  const before = await where(page, moulds);
  await tries.first().click();
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await expect.poll(() => where(page, moulds)).not.toBe(before);
  await page.getByRole('button', { name: /^Undo: arrange/ }).click();
  await expect.poll(() => where(page, moulds)).toBe(before);
  expect(errors).toEqual([]);
});

test('story: a block is dragged onto others, which make room for it live, but for the pinned one', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  const { page: hers } = await museum.enter(browser, 'guest artist');
  for (const each of [page, hers]) await each.getByRole('button', { name: /^Dye House, east wall/ }).click();
  const middle = (id: string) =>
    page.evaluate((pieceId) => {
      const probe = (window as unknown as { enfiladeProbe: Probe }).enfiladeProbe;
      const rect = probe.screenRectOf(pieceId);
      return rect === null ? null : { x: rect.x + rect.width / 2, y: rect.y + rect.height / 2 };
    }, id);
  await expect.poll(() => middle('block-1#1')).not.toBeNull();
  const [from, to] = [(await middle('block-1#1'))!, (await middle('block-1#9'))!];
  await page.mouse.click(from.x, from.y);
  await page.getByRole('checkbox', { name: /neighbours make room/ }).check();
  const before = await where(page, BLOCKS);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await expect.poll(() => where(page, ['block-1#9'])).not.toBe(JSON.stringify([JSON.parse(before)[8]]));
  await page.mouse.up();
  await expect(page.getByRole('button', { name: /^Undo: move .* makes? room/ })).toBeEnabled();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  const after = await where(page, ['block-1#9']);
  await page.getByRole('button', { name: /^Undo: move/ }).click();
  await expect.poll(() => where(page, BLOCKS)).toBe(before);

  // Pinned, it stays, and what is let go there goes beside it.
  await page.mouse.click(to.x, to.y);
  await page.getByRole('button', { name: 'pin here' }).click();
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
  await expect(page.getByRole('button', { name: /^Undo: move/ })).toBeEnabled();
  expect(await where(page, ['block-1#9'])).toBe(JSON.stringify([JSON.parse(before)[8]]));
  expect(after).not.toBe(JSON.stringify([JSON.parse(before)[8]]));
  expect(errors).toEqual([]);
});
