import { expect, test } from './museum.ts';

test('story: the artist says yes in the collection; the curator sees it by her name and takes it to the checklist; where it is kept is told to whoever fetches it and not to her', async ({
  museum,
  browser,
}) => {
  const isolde = await museum.enter(browser, 'guest artist');
  const dov = await museum.enter(browser, 'curator');
  const told: string[] = [];
  isolde.page.on('response', async (answer) => {
    if (/\/seat\/\w+\/collection/.test(answer.url())) told.push(await answer.text().catch(() => ''));
  });

  await isolde.page.getByRole('link', { name: 'Collection', exact: true }).click();
  await isolde.page.getByLabel('Words, or a number').fill('eel trap mended');
  const found = isolde.page.getByRole('region', { name: 'Found' });
  await expect(found.getByRole('heading', { level: 2 })).toHaveText(/^\d+ with a picture$/);
  const thing = found.getByRole('listitem').first();
  await expect(thing.getByRole('heading', { level: 3 })).toHaveText(/trap, mended$/);
  const title = await thing.getByRole('heading', { level: 3 }).textContent();

  // What was never shown, of every kind, not photographed: most of what there is.
  await isolde.page.getByRole('button', { name: 'never shown' }).click();
  await isolde.page.getByRole('button', { name: 'without', exact: true }).click();
  await isolde.page.getByLabel('Words, or a number').fill('mallet');
  await expect(thing.getByRole('heading', { level: 3 })).toHaveText(/mallet/);
  await expect(thing.getByText('not photographed')).toBeVisible();
  await thing.getByRole('button', { name: 'maybe' }).click();
  await isolde.page.getByRole('button', { name: 'either way' }).click();
  await isolde.page.getByRole('button', { name: 'with a picture', exact: true }).click();
  await isolde.page.getByLabel('Words, or a number').fill('eel trap mended');
  await expect(thing.getByRole('heading', { level: 3 })).toHaveText(title ?? '');

  // What looks like it, and on from there.
  await thing.getByRole('link', { name: /^like it/ }).click();
  const alike = isolde.page.getByRole('region', { name: 'Like it' });
  await expect(alike.getByRole('heading', { level: 2 })).toHaveText(/^\d+ like .*, the nearest first$/);
  await expect(alike.getByRole('listitem').first()).toContainText('like in colour');
  await isolde.page.getByRole('link', { name: 'what echoes it instead' }).click();
  await expect(isolde.page.getByRole('region', { name: 'Echoes' }).getByRole('listitem').first()).toContainText(
    'yet near',
  );
  await isolde.page.getByRole('link', { name: 'back to browsing' }).click();
  await thing.getByRole('button', { name: 'yes' }).click();
  await expect(thing.getByRole('button', { name: 'yes' })).toHaveAttribute('aria-pressed', 'true');

  // Dov has it in one list at once, and brings it in with one press.
  await dov.page.getByRole('link', { name: 'Collection', exact: true }).click();
  await dov.page.getByRole('link', { name: 'What was said 2' }).click();
  const wanted = dov.page.getByRole('region', { name: 'Somebody says yes' }).getByRole('listitem');
  await expect(wanted).toContainText('Isolde Fennimarsh: yes');
  await wanted.getByRole('button', { name: 'no', exact: true }).click();
  await expect(thing.getByText('Dov Castellane: no')).toBeVisible();
  await wanted.getByRole('button', { name: `Take to the checklist: ${title}` }).click();
  await expect(thing.getByRole('button', { name: 'on the checklist' })).toBeVisible();

  // The mallet is to be photographed; the trap stands on the pull list by its place.
  await dov.page.getByRole('link', { name: 'To be photographed' }).click();
  await expect(dov.page.getByRole('region', { name: 'Wanted from the collection' })).toContainText('mallet');
  await dov.page.getByRole('link', { name: 'Pull list' }).click();
  const line = dov.page
    .getByRole('article', { name: 'Pull list' })
    .getByRole('row')
    .filter({ hasText: title ?? '' })
    .first();
  await expect(line).toContainText(/shelf \d/);
  await expect(isolde.page.getByRole('link', { name: 'Pull list' })).toHaveCount(0);
  expect(told.length).toBeGreaterThan(4);
  for (const text of told) expect(text).not.toMatch(/storage|shelf \d/);
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});
