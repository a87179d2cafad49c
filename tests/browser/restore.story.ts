import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, type Museum, type Seat, test } from './museum.ts';

const MAIN = join(import.meta.dirname, '..', '..', 'server', 'dist', 'main.mjs');

function command(...words: string[]): string {
  const done = spawnSync(process.execPath, [MAIN, ...words], { encoding: 'utf8' });
  expect(done.stderr).toBe('');
  return done.stdout;
}

async function reword(seat: Seat, intent: string): Promise<void> {
  await seat.page.getByRole('button', { name: 'reword' }).click();
  await seat.page.getByRole('textbox', { name: /intent/i }).fill(intent);
  await seat.page.getByRole('button', { name: 'set', exact: true }).click();
}

async function both(museum: Museum, browser: Parameters<Museum['enter']>[0]): Promise<[Seat, Seat]> {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  for (const { page } of [dov, isolde]) {
    await page.getByRole('button', { name: /^Dye House, east wall/ }).click();
    await expect(page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
  }
  return [dov, isolde];
}

test('story: the show is brought back from a copy: open pages bring nothing back, and list the work that was not saved', async ({
  museum,
  browser,
}, info) => {
  const [dov, isolde] = await both(museum, browser);
  const file = info.outputPath('show.enfilade');
  expect(command('backup', '--data', museum.data, '--to', file)).toContain('the whole show');

  // After the copy: one thing that is saved, and, with the server gone, one that is not.
  await reword(dov, 'Written after the copy.');
  await expect(isolde.page.getByText('Written after the copy.').first()).toBeVisible();
  await museum.kill();
  await expect(isolde.page.getByText(/^No connection/).first()).toBeVisible();
  await reword(isolde, 'Written while the server was away.');
  expect(command('restore', '--from', file, '--data', museum.data)).toContain('kept in');
  await museum.open();

  for (const { page } of [dov, isolde]) {
    await expect(page.getByText(/The show was brought back from a copy\./).first()).toBeVisible({ timeout: 30_000 });
  }
  await expect(isolde.page.getByText(/Not saved: describe Sixty impressions/)).toBeVisible();
  await expect(isolde.page.getByText('Written while the server was away.').first()).toBeVisible();
  await expect(dov.page.getByText(/Not saved:/)).toHaveCount(0);

  // Loaded anew, the show is the copy: nothing of the future is in it.
  for (const { page } of [dov, isolde]) {
    await page.reload();
    await expect(page.getByText(/^Saved/).first()).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
    await expect(page.getByText(/^Written /)).toHaveCount(0);
  }
});
