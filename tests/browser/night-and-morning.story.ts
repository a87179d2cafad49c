import { readFileSync } from 'node:fs';
import { expect, goTo, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';
const BLOCK = 'Cloth-printing blocks, piece 16';

/** Takes a work by its list and types so many centimetres more for where it is along the wall. */
async function move({ page }: Seat, name: string, byCm: number): Promise<void> {
  const list = page.getByRole('list', { name: 'All on this surface' });
  await list.getByRole('button', { name, exact: true }).press('Enter');
  const along = page.getByRole('textbox', { name: /^From left corner/ });
  const before = Number(await along.inputValue());
  await along.fill((before + byCm).toFixed(1));
  await along.press('Enter');
  await expect(along).toHaveValue((before + byCm).toFixed(1));
}

test('story: the artist proposes at night; the curator takes half and signs off in the morning; the preparator nudges without a connection; changed since; the frozen list printed and compared', async ({
  museum,
  browser,
}) => {
  // At night, alone: a proposal of two moves, and she goes.
  const isolde = await museum.enter(browser, 'guest artist');
  await goTo(isolde, 'wall/dye:head');
  await isolde.page.getByRole('button', { name: 'propose…' }).click();
  await isolde.page.getByRole('textbox', { name: 'Title' }).fill('Chalk after rain');
  await isolde.page.getByRole('textbox', { name: /^Reason/ }).fill('Let the river bleach the wall.');
  await isolde.page.getByRole('button', { name: 'Begin the proposal' }).click();
  await isolde.page.getByRole('button', { name: /^Paint: Verdigris, deep/ }).click();
  await isolde.page.getByRole('button', { name: /^River chalk, LRV/ }).click();
  await move(isolde, OIL, -8);
  await expect(isolde.page.getByText(/^Saved/).first()).toBeVisible();
  expect(isolde.errors).toEqual([]);
  await isolde.context.close();

  // In the morning the page of what waits leads Dov to it. He takes the paint, leaves the move, and signs off.
  const dov = await museum.enter(browser, 'curator');
  await goTo(dov, 'waiting');
  test.setTimeout(240_000);
  const line = dov.page.getByRole('listitem').filter({ hasText: 'Answer the proposal Chalk after rain' });
  await expect(line).toContainText('Isolde Fennimarsh; 2 moves to take or leave');
  await line.getByRole('button', { name: /^go there/i }).click();
  await dov.page.getByRole('link', { name: /^Chalk after rain/ }).click();
  const moves = dov.page.getByRole('list', { name: 'Moves' });
  await moves.getByRole('button', { name: `leave ${OIL}` }).click();
  await dov.page.getByRole('button', { name: /^Take (all one|this one|it)/ }).click();
  await expect(dov.page.getByRole('region', { name: 'The proposal you are in' })).toContainText('taken in part');
  await dov.page.getByRole('link', { name: 'back to the hang' }).click();
  await expect(dov.page.getByRole('button', { name: /^Paint: River chalk/ })).toBeVisible();
  const caption = dov.page.getByRole('region', { name: 'Sixty impressions' });
  await caption.getByRole('button', { name: 'sign off as it stands' }).click();
  await expect(caption.getByRole('button', { name: /^sign off/ })).toHaveCount(0);
  await goTo(dov, 'waiting');
  await expect(dov.page.getByText('Answer the proposal Chalk after rain')).toHaveCount(0);
  await goTo(dov, 'vignettes');
  await dov.page.getByRole('button', { name: 'Freeze as version 1' }).click();
  const list = dov.page.getByRole('article', { name: 'Vignette list' });
  await expect(list).toContainText('Version 1');

  // On the ladder, out of the network's reach: Piet nudges a block by 6 cm, and comes back.
  const piet = await museum.enter(browser, 'preparator', { serviceWorkers: 'allow' });
  await piet.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await goTo(piet, 'wall/dye:head');
  await piet.context.setOffline(true);
  await expect(piet.page.getByText(/^No connection/).first()).toBeVisible({ timeout: 60_000 });
  await move(piet, BLOCK, 6);
  await expect(piet.page.getByText(/^Kept on this computer\./).first()).toBeVisible();
  await expect(list).not.toContainText('differs');
  await piet.context.setOffline(false);
  await expect(piet.page.getByText(/^Saved/).first()).toBeVisible({ timeout: 60_000 });

  // Changed since, piece by piece; the list differs from the frozen one, is printed, and the two are compared.
  await expect(list).toContainText(/Draft.*differs from version 1 in 1 row/s);
  const row = dov.page.getByRole('row').filter({ has: dov.page.getByText('Sixty impressions', { exact: true }) });
  await expect(row).toContainText(/changed since.*piece 16 moved 6\.0 cm right/s);
  await goTo(dov, 'vignettes/1');
  await expect(dov.page.getByRole('article', { name: 'Vignette list, version 1' })).toBeVisible();
  const printed = test.info().outputPath('vignettes-version-1.pdf');
  await dov.page.pdf({ path: printed, preferCSSPageSize: true });
  expect(readFileSync(printed).subarray(0, 5).toString()).toBe('%PDF-');
  await goTo(dov, 'vignettes/1/against/now');
  await expect(dov.page.getByRole('article', { name: 'What differs' })).toContainText('piece 16 moved 6.0 cm right');

  // At night again: she is told what changed since she was here, and by whom.
  const back = await museum.enter(browser, 'guest artist');
  await goTo(back, 'history');
  const deeds = back.page.getByRole('region', { name: 'Who did what' });
  await expect(deeds).toContainText(/Piet Oyelaran moved Cloth-printing blocks, piece 16 6\.0 cm right/);
  await expect(deeds).toContainText('Isolde Fennimarsh proposed Chalk after rain');
  for (const { errors } of [dov, piet, back]) {
    expect(errors.filter((error) => !/ERR_INTERNET_DISCONNECTED/.test(error))).toEqual([]);
  }
});
