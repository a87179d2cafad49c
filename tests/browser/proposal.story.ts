import { expect, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';
const BLOCK = 'Cloth-printing blocks, piece 16';

async function faceEastWall({ page }: Seat): Promise<void> {
  await page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await expect(page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
}

/** Takes a work by its list and types a centimetre more for where it is along the wall. */
async function move({ page }: Seat, name: string, byCm: number): Promise<void> {
  await page
    .getByRole('list', { name: 'All on this surface' })
    .getByRole('button', { name, exact: true })
    .press('Enter');
  const along = page.getByRole('textbox', { name: /^From left corner/ });
  const before = Number(await along.inputValue());
  await along.fill((before + byCm).toFixed(1));
  await along.press('Enter');
  await expect(along).toHaveValue((before + byCm).toFixed(1));
}

test('story: the artist proposes at night; the curator sees it laid over, leaves, takes, undoes, takes in part, declines the rest; a viewer sees each step', async ({
  museum,
  browser,
}) => {
  const isolde = await museum.enter(browser, 'guest artist');
  const dov = await museum.enter(browser, 'curator');
  const viewer = await museum.enter(browser, 'viewer');
  for (const seat of [isolde, dov, viewer]) await faceEastWall(seat);

  // Isolde begins a proposal and stands in it: she paints the wall and moves two things.
  await isolde.page.getByRole('button', { name: 'propose…' }).click();
  await isolde.page.getByRole('textbox', { name: 'Title' }).fill('Chalk after rain');
  await isolde.page.getByRole('textbox', { name: /^Reason/ }).fill('Let the river bleach the wall.');
  await isolde.page.getByRole('button', { name: 'Begin the proposal' }).click();
  await expect(isolde.page.getByRole('region', { name: 'The proposal you are in' })).toContainText(
    'whatever you do here is proposed, and the hang stays as it is',
  );
  await isolde.page.getByRole('button', { name: /^Paint: Verdigris, deep/ }).click();
  await isolde.page.getByRole('button', { name: /^River chalk, LRV/ }).click();
  await move(isolde, OIL, -8);
  await move(isolde, BLOCK, 1);

  // The hang stays as it is; the wall's caption names the proposal, and the head counts it.
  await expect(dov.page.getByRole('link', { name: 'Proposals 2' })).toBeVisible();
  await expect(dov.page.getByRole('button', { name: /^Paint: Verdigris, deep/ })).toBeVisible();
  const here = dov.page.getByRole('region', { name: 'Proposals here' });
  await expect(here).toContainText('Broom in flower, Isolde Fennimarsh');
  await here.getByRole('link', { name: /^Chalk after rain/ }).click();

  // Laid over: its moves in sentences, numbered as on the wall, and what it does.
  const moves = dov.page.getByRole('list', { name: 'Moves' });
  await expect(moves.getByRole('listitem')).toHaveCount(3);
  await expect(moves).toContainText('Paint the east wall River chalk');
  await expect(moves).toContainText('Left 8.0.');
  await expect(dov.page.locator('.tracing-tag')).toHaveText(['1', '2', '3']);
  await expect(dov.page.getByRole('region', { name: 'What it does' })).toContainText(`${OIL}: lost →`);
  await expect(dov.page.getByRole('button', { name: 'sign off as it stands' })).toHaveCount(0);
  for (const { page } of [dov, viewer]) {
    await expect(page.getByRole('list', { name: 'Here now' })).toContainText(
      page === dov.page
        ? /Isolde Fennimarsh\s+in this proposal/
        : /Isolde Fennimarsh\s+in the proposal Chalk after rain/,
    );
  }

  // As is, and side by side: the divider goes by the arrows.
  await dov.page.getByRole('button', { name: 'as is' }).click();
  await expect(dov.page.getByText(/^Paint: Verdigris, deep/)).toBeVisible();
  await dov.page.getByRole('button', { name: 'side by side' }).click();
  const divider = dov.page.getByRole('separator', { name: /^Between the hang/ });
  const at = Number(await divider.getAttribute('aria-valuenow'));
  await divider.press('ArrowLeft');
  await expect(divider).toHaveAttribute('aria-valuenow', String(at - 2));
  await dov.page.getByRole('button', { name: 'laid over' }).click();

  // The viewer looks at the same, and can take nothing.
  await viewer.page.getByRole('link', { name: /^Chalk after rain/ }).click();
  await expect(viewer.page.getByRole('list', { name: 'Moves' })).toContainText('River chalk');
  await expect(viewer.page.getByRole('button', { name: /^take/i })).toHaveCount(0);
  await expect(viewer.page.getByText(/may take it\./)).toBeVisible();

  // Dov leaves the block, and takes what remains: one act, so one undo puts all of it back.
  await moves.getByRole('button', { name: `leave ${BLOCK}` }).click();
  await expect(dov.page.locator('.tracing-tag')).toHaveCount(2);
  await expect(viewer.page.locator('.tracing-tag')).toHaveCount(2);
  await dov.page.getByRole('button', { name: 'Take all two' }).click();
  for (const { page } of [isolde, dov, viewer]) {
    await expect(page.getByRole('region', { name: 'The proposal you are in' })).toContainText('taken in part');
  }
  await viewer.page.getByRole('link', { name: 'back to the hang' }).click();
  await expect(viewer.page.getByText(/^Paint: River chalk/)).toBeVisible();
  await dov.page.getByRole('button', { name: /^Undo: take/ }).click();
  await expect(viewer.page.getByText(/^Paint: Verdigris, deep/)).toBeVisible();
  await expect(isolde.page.getByRole('region', { name: 'The proposal you are in' })).toContainText(
    'whatever you do here is proposed',
  );

  // He takes the view's move alone, and declines the rest with a reason.
  await moves.getByRole('button', { name: `take ${OIL}`, exact: true }).click();
  await dov.page.getByRole('button', { name: 'Take this one' }).click();
  await expect(moves).toContainText('The hang says so already.');
  await dov.page.getByRole('button', { name: 'decline the rest, with a reason' }).click();
  await dov.page.getByRole('textbox', { name: 'Why it is declined' }).fill('The lenders ask for the green.');
  await dov.page.getByRole('button', { name: 'Decline', exact: true }).click();

  // After its end it is read by all and changed by none.
  await expect(isolde.page.getByText('“The lenders ask for the green.”')).toBeVisible();
  await expect(isolde.page.getByRole('list', { name: 'Moves' })).toContainText('Left 8.0.');
  await expect(isolde.page.getByText(/^Paint: Verdigris, deep/)).toBeVisible();
  await expect(isolde.page.getByRole('button', { name: /^Paint:/ })).toHaveCount(0);
  await expect(viewer.page.getByText(/^Paint: Verdigris, deep/)).toBeVisible();
  await viewer.page.getByRole('link', { name: 'Proposals 1' }).click();
  await expect(viewer.page.getByRole('list', { name: 'Proposals that have ended' })).toContainText(
    /Chalk after rain.*taken in part by Dov Castellane.*The lenders ask for the green/s,
  );
  for (const { errors } of [isolde, dov, viewer]) expect(errors).toEqual([]);
});

test('story: a move that clashes is told with both places and settled by a press; the rest is taken whole', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.evaluate(() => {
    location.hash = '#in/broom-in-flower/wall/dye:head';
  });
  const moves = page.getByRole('list', { name: 'Moves' });
  await expect(moves).toContainText('It has changed in the hang since. There: on the long bench');
  await expect(page.getByRole('button', { name: 'Take all four' })).toBeVisible();
  await moves.getByRole('button', { name: 'take the proposal’s' }).click();
  await page.getByRole('button', { name: 'Take all five' }).click();
  await expect(page.getByRole('region', { name: 'The proposal you are in' })).toContainText('it is taken, kept');
  await page.getByRole('link', { name: 'back to the hang' }).click();
  await expect(page.getByRole('button', { name: /^Paint: Weld/ })).toBeVisible();
  expect(errors).toEqual([]);
});
