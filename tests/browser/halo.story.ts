import { expect, test } from './museum.ts';

test('story: forty-one blocks hung anew around the hanging: three ways, one tried, one taken, one undo', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  interface Rect {
    x: number;
    y: number;
  }
  const rectOf = (id: string): Promise<Rect> =>
    page.evaluate(
      (piece) =>
        (window as unknown as { enfiladeProbe: { screenRectOf(id: string): Rect } }).enfiladeProbe.screenRectOf(piece),
      id,
    );
  const pieces = Array.from({ length: 41 }, (_, n) => `block-1#${n + 1}`);
  const all = async (): Promise<string> =>
    JSON.stringify((await Promise.all(pieces.map(rectOf))).map(({ x, y }) => [Math.round(x), Math.round(y)]));
  await page.getByRole('button', { name: 'select all' }).click();
  await page.getByRole('button', { name: 'hang around…' }).click();
  await page.getByRole('button', { name: 'Show ways' }).click();
  const tries = page.getByRole('button', { name: /Try on the wall/ });
  await expect(tries).toHaveCount(3, { timeout: 30_000 });
  const before = await all();
  await tries.nth(1).click();
  await expect.poll(all).not.toBe(before);
  await page
    .getByRole('button', { name: /Put back/ })
    .first()
    .click();
  await expect.poll(all).toBe(before);
  await tries.first().click();
  await expect.poll(all).not.toBe(before);
  await page
    .getByRole('button', { name: /^Take it/ })
    .first()
    .click();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  const after = await all();
  expect(after).not.toBe(before);
  await page.getByRole('button', { name: /^Undo: / }).click();
  await expect.poll(all).not.toBe(after);
  await expect(page.getByRole('button', { name: /^Undo: nothing/ })).toBeDisabled();
  expect(errors).toEqual([]);
});
