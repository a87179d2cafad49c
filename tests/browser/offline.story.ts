import { expect, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';

async function faceEastWall({ page }: Seat): Promise<void> {
  await page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await expect(page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
}

async function take({ page }: Seat, name: string): Promise<void> {
  await page.getByRole('listitem').getByRole('button', { name, exact: true }).press('Enter');
}

const along = ({ page }: Seat) => page.getByRole('textbox', { name: /^From left corner/ });

test('story: the show opens and is worked in without a connection, outlives the page, merges, and what moved on both sides is settled by a press', async ({
  museum,
  browser,
}) => {
  const piet = await museum.enter(browser, 'preparator', { serviceWorkers: 'allow' });
  const dov = await museum.enter(browser, 'curator');
  await faceEastWall(dov);
  // The worker has the shell once it controls the page; what the page asked for before then is asked again.
  await piet.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await piet.page.waitForFunction(async () => (await (await caches.open('shell')).keys()).length > 20);
  await piet.page.reload();
  await faceEastWall(piet);

  // No connection: loaded anew, the show is there, and says so in plain words.
  await piet.context.setOffline(true);
  await piet.page.reload();
  await faceEastWall(piet);
  await expect(piet.page.getByText(/^No connection since/).first()).toBeVisible();
  await take(piet, OIL);
  const before = Number(await along(piet).inputValue());
  await along(piet).fill((before - 30).toFixed(1));
  await along(piet).press('Enter');
  await expect(piet.page.getByText(/^Kept on this computer\./).first()).toBeVisible();
  await expect(
    piet.page.getByText('One act waits to be sent, nothing is lost.', { exact: false }).first(),
  ).toBeVisible();

  // Meanwhile the curator moves the same work elsewhere, and something else that nobody touches.
  await take(dov, OIL);
  await along(dov).fill((before + 10).toFixed(1));
  await along(dov).press('Enter');
  await expect(dov.page.getByText(/^Saved/).first()).toBeVisible();

  // The page is closed and opened again, still without a connection: nothing is lost.
  await piet.page.reload();
  await faceEastWall(piet);
  await expect(piet.page.getByText(/^Kept on this computer\./).first()).toBeVisible();
  await take(piet, OIL);
  await expect(along(piet)).toHaveValue((before - 30).toFixed(1));

  // Back: it is sent, and what moved on both sides is told with both places.
  await piet.context.setOffline(false);
  const both = piet.page.getByRole('region', { name: 'Changed on both sides' });
  await expect(both).toContainText(OIL, { timeout: 30_000 });
  const [yours = 0, his = 0] = [...((await both.textContent()) ?? '').matchAll(/([\d.]+) cm across/g)].map(([, cm]) =>
    Number(cm),
  );
  expect(his - yours).toBeCloseTo(40, 5);
  await expect(piet.page.getByText(/^Saved/).first()).toBeVisible();
  await both.getByRole('button', { name: 'Dov’s holds' }).click();
  await expect(both).toHaveCount(0);
  for (const seat of [piet, dov]) await expect(along(seat)).toHaveValue((before + 10).toFixed(1));
  await expect(piet.page.getByText(/^Saved/).first()).toBeVisible();
  expect(piet.errors.filter((error) => !/ERR_INTERNET_DISCONNECTED/.test(error))).toEqual([]);
  expect(dov.errors).toEqual([]);
});
