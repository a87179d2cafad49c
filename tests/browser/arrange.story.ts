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
  surfaceRectOf(surface: string): Rect | null;
}

const EAST = 'dye:head';
const NORTH = 'dye:left';
const BLOCKS = Array.from({ length: 41 }, (_, n) => `block-1#${n + 1}`);

type Spot = readonly [number, number];
type Spots = readonly Spot[];

/** Where pieces are on a wall, as shares of it: the drawing's own scale changes with what lies along the foot. */
function spotsOn(page: Page, wall: string, pieces: readonly string[]): Promise<Spots> {
  return page.evaluate(
    ([surface, ids]) => {
      const probe = (window as unknown as { enfiladeProbe: Probe }).enfiladeProbe;
      const on = probe.surfaceRectOf(surface);
      if (on === null) return [];
      return ids.map((id): Spot => {
        const rect = probe.screenRectOf(id);
        if (rect === null) return [0, 0];
        return [(rect.x + rect.width / 2 - on.x) / on.width, (rect.y + rect.height / 2 - on.y) / on.height];
      });
    },
    [wall, pieces] as const,
  );
}

/** How far the one moved most has moved, as a share of the wall. */
async function moved(page: Page, wall: string, pieces: readonly string[], since: Spots): Promise<number> {
  const now = await spotsOn(page, wall, pieces);
  return Math.max(...now.map(([x, y], i) => Math.hypot(x - (since[i]?.[0] ?? 0), y - (since[i]?.[1] ?? 0))));
}

/** Less is what drawing on whole pixels makes of nothing. */
const SEEN = 0.01;

test('story: a salon is asked for, tried, seen by the artist, declined, taken as one act and taken back', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  const { page: hers, errors: herErrors } = await museum.enter(browser, 'guest artist');
  await page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await hers.getByRole('button', { name: /^Dye House, east wall/ }).click();
  // With nothing selected, from the wall itself.
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'arrange… on this wall' }).click();
  await page.getByRole('button', { name: 'those of Sixty impressions: 42' }).click();
  await page.getByText(/not possible here/).click();
  await expect(page.getByText('Pendants answer each other in pairs')).toBeVisible();
  await page.getByRole('radio', { name: 'salon hang' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  const tries = page.getByRole('button', { name: /^Try it/ });
  await expect(tries).toHaveCount(3, { timeout: 30_000 });
  const before = await spotsOn(page, EAST, BLOCKS);

  // Shared, the artist looks too, and sees which one is tried.
  await page.getByRole('checkbox', { name: 'the others see these ways' }).check();
  await hers.getByRole('button', { name: 'look too' }).click();
  const herTries = hers.getByRole('button', { name: /^Try it/ });
  await expect(herTries).toHaveCount(3, { timeout: 30_000 });
  const name = (await tries.first().getAttribute('aria-label'))?.replace('Try it: ', '') ?? '';
  await tries.first().click();
  await expect.poll(() => moved(page, EAST, BLOCKS, before)).toBeGreaterThan(SEEN);
  await expect(hers.getByText('Dov Castellane tries this one')).toBeVisible();
  await expect(hers.getByRole('listitem').filter({ hasText: name }).getByText('tries this one')).toBeVisible();
  await page.getByRole('button', { name: 'Put back' }).click();
  await expect.poll(() => moved(page, EAST, BLOCKS, before)).toBeLessThan(SEEN);

  // Declined, it is gone from both, and after a reload it is not offered again.
  await page.getByRole('button', { name: `Decline: ${name}`, exact: true }).click();
  await expect(page.getByRole('heading', { name, exact: true })).toHaveCount(0);
  await expect(hers.getByRole('heading', { name, exact: true })).toHaveCount(0);
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'select all' }).click();
  await page.getByRole('button', { name: 'arrange…', exact: true }).click();
  await page.getByRole('radio', { name: 'salon hang' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  await expect(tries).toHaveCount(3, { timeout: 30_000 });
  await expect(page.getByRole('heading', { name, exact: true })).toHaveCount(0);
  await expect(page.getByText('1 declined stays away.')).toBeVisible();

  await tries.first().click();
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await expect.poll(() => moved(page, EAST, BLOCKS, before)).toBeGreaterThan(SEEN);
  await page.getByRole('button', { name: /^Undo: arrange 42 pieces/ }).click();
  await expect.poll(() => moved(page, EAST, BLOCKS, before)).toBeLessThan(SEEN);
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
  await page.getByRole('button', { name: 'arrange…', exact: true }).click();
  await page.getByRole('radio', { name: 'massed on a table or shelf' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  const tries = page.getByRole('button', { name: /^Try it/ });
  await expect(tries).toHaveCount(3, { timeout: 30_000 });
  const before = await spotsOn(page, NORTH, moulds);
  await tries.first().click();
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await expect.poll(() => moved(page, NORTH, moulds, before)).toBeGreaterThan(SEEN);
  await page.getByRole('button', { name: /^Undo: arrange/ }).click();
  await expect.poll(() => moved(page, NORTH, moulds, before)).toBeLessThan(SEEN);
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
  const before = await spotsOn(page, EAST, BLOCKS);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await expect.poll(() => moved(page, EAST, ['block-1#9'], before.slice(8))).toBeGreaterThan(SEEN);
  await expect.poll(() => moved(hers, EAST, ['block-1#9'], before.slice(8))).toBeGreaterThan(SEEN);
  await page.mouse.up();
  await expect(page.getByRole('button', { name: /^Undo: move .* makes? room/ })).toBeEnabled();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await page.getByRole('button', { name: /^Undo: move/ }).click();
  await expect.poll(() => moved(page, EAST, BLOCKS, before)).toBeLessThan(SEEN);

  // Pinned, it stays, and what is let go there goes beside it.
  await page.mouse.click(to.x, to.y);
  await page.getByRole('button', { name: 'pin here' }).click();
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
  await expect(page.getByRole('button', { name: /^Undo: move/ })).toBeEnabled();
  expect(await moved(page, EAST, ['block-1#9'], before.slice(8))).toBeLessThan(SEEN);
  await page.getByRole('button', { name: /^Undo: move/ }).click();
  await expect.poll(() => moved(page, EAST, BLOCKS, before)).toBeLessThan(SEEN);

  // Two moved together push as one, and keep their distance.
  const [second, onto] = [(await middle('block-1#2'))!, (await middle('block-1#15'))!];
  await page.mouse.click(from.x, from.y);
  await page.keyboard.down('Shift');
  await page.mouse.click(second.x, second.y);
  await page.keyboard.up('Shift');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(onto.x, onto.y, { steps: 6 });
  await page.mouse.up();
  await expect(page.getByRole('button', { name: /^Undo: move 2 pieces, \d+ makes? room/ })).toBeEnabled();
  expect(await moved(page, EAST, BLOCKS.slice(2), before.slice(2))).toBeGreaterThan(SEEN);
  const [one, two] = (await spotsOn(page, EAST, BLOCKS.slice(0, 2))) as [Spot, Spot];
  const [was, wasTwo] = before as unknown as [Spot, Spot];
  for (const k of [0, 1] as const) expect(Math.abs(two[k] - one[k] - (wasTwo[k] - was[k]))).toBeLessThan(SEEN);
  expect(errors).toEqual([]);
});
