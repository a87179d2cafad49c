import type { Page } from '@playwright/test';
import { expect, test } from './museum.ts';

const BANNER = 'Rain on the flats';

interface Probe {
  toScreen(surface: string, xMm: number, yMm: number): { x: number; y: number } | null;
  screenRectOf(id: string): { x: number; y: number; width: number; height: number } | null;
}

/** Page px of a point of a surface on screen. */
async function pointOf(page: Page, surface: string, xMm: number, yMm: number): Promise<{ x: number; y: number }> {
  const at = await page.evaluate(
    ([on, x, y]) => (window as unknown as { enfiladeProbe: Probe }).enfiladeProbe.toScreen(on, x, y),
    [surface, xMm, yMm] as const,
  );
  if (at === null) throw new Error(`${surface} is not on screen`);
  return at;
}

/** Takes a thing off the rail and lets it go at a point of a surface. */
async function dropOn(page: Page, name: RegExp, surface: string, xMm: number, yMm: number): Promise<void> {
  const box = await page.getByRole('contentinfo').getByRole('button', { name }).boundingBox();
  const to = await pointOf(page, surface, xMm, yMm);
  const from = { x: (box?.x ?? 0) + (box?.width ?? 0) / 2, y: (box?.y ?? 0) + 34 };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x, from.y - 14, { steps: 3 });
  await page.mouse.move(to.x, to.y, { steps: 5 });
  await page.mouse.up();
}

async function type(page: Page, field: RegExp, text: string): Promise<void> {
  const box = page.getByRole('textbox', { name: field });
  await box.fill(text);
  await box.press('Enter');
}

async function face(page: Page, surface: string): Promise<void> {
  await page.evaluate((on) => {
    location.hash = `#wall/${on}`;
  }, surface);
}

test('story: a banner is hung from the ceiling by typed numbers; both see it before the wall, at its height', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  await face(isolde.page, 'dye:head');
  await dov.page
    .getByRole('button', { name: /^Dye House/ })
    .first()
    .click();
  await dov.page.evaluate(() => {
    location.hash = '#room/dye';
  });
  await dov.page.getByRole('link', { name: 'ceiling', exact: true }).click();
  await expect(dov.page.getByRole('heading', { name: 'Ceiling' })).toBeVisible();
  await expect(dov.page.getByText(/^Seen from below, the east wall at its foot/)).toBeVisible();

  await dropOn(dov.page, new RegExp(`^${BANNER}`), 'dye:ceiling', 1500, 3000);
  // 132 high under a ceiling at 360: dropped by 60 its foot is 168 above the level plane, too low to walk under.
  await type(dov.page, /^From north wall/, '100');
  await type(dov.page, /^From west wall/, '480');
  await type(dov.page, /^Drop from ceiling/, '60');
  const cautions = dov.page.getByRole('region', { name: 'Cautions' });
  await expect(cautions).toContainText('Ask a licensed rigger and a structural engineer');
  await expect(cautions).toContainText('203.0 cm is the usual least headroom');
  // Typed by its foot instead; the floor falls, and is 0.7 lower beneath it than in its corner.
  await type(dov.page, /^Foot above the floor/, '210');
  await expect(cautions).not.toContainText('headroom');
  await expect(dov.page.getByRole('textbox', { name: /^Drop from ceiling/ })).toHaveValue('18.7');
  await dov.page.getByRole('button', { name: 'All on this ceiling, as a list' }).click();
  await expect(dov.page.getByRole('list', { name: 'All on this surface' })).toContainText(
    '100.0 from the left, 479.0 from the entrance wall',
  );

  // An arrow follows the screen: down is towards the east wall.
  await dov.page.getByRole('application').focus();
  await dov.page.keyboard.press('ArrowDown');
  await expect(dov.page.getByRole('textbox', { name: /^From west wall/ })).toHaveValue('481.0');

  // The other browser faces the east wall and sees it there, overhead.
  await isolde.page.getByRole('button', { name: 'All on this wall, as a list' }).click();
  await expect(isolde.page.getByRole('list', { name: 'All on this surface' })).toContainText(
    /hangs from the ceiling before it, centre 275\.3 high, 100\.0 from the left corner/,
  );
  // Near enough to be pressed, where its picture hangs before the wall.
  const at = await pointOf(isolde.page, 'dye:head', 1440, 2753);
  await isolde.page.mouse.click(at.x, at.y);
  await expect(isolde.page.getByRole('article', { name: `Card of ${BANNER}` })).toBeVisible();
  expect(dov.errors).toEqual([]);
  expect(isolde.errors).toEqual([]);
});

test('story: let go over a window a banner is in the window, by a press on the wall over it, and back again', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const viewer = await museum.enter(browser, 'viewer');
  for (const { page } of [dov, viewer]) await face(page, 'dye:foot');
  // The window on the river: 140 × 190, its sill at 90, from 62 on.
  await dropOn(dov.page, /^Dry summer/, 'dye:foot', 1300, 1880);
  const card = dov.page.getByRole('article', { name: 'Card of Dry summer' });
  await expect(card).toContainText('window on the river');
  await expect(card).toContainText('which may be a way out');
  await type(dov.page, /^From its left edge/, '5');
  await type(dov.page, /^Foot above sill/, '2.5');
  await viewer.page.getByRole('button', { name: 'All on this wall, as a list' }).click();
  const list = viewer.page.getByRole('list', { name: 'All on this surface' });
  await expect(list).toContainText('in an opening, centre 182.5 high, 67.0 from the left corner');

  await dov.page.getByRole('button', { name: 'on the wall', exact: true }).click();
  await expect(card).toContainText('Centre height');
  await expect(card).not.toContainText('which may be a way out');
  await dov.page.getByRole('button', { name: 'in the window', exact: true }).click();
  await expect(card).toContainText('Foot above sill');
  await expect(dov.page.getByRole('textbox', { name: /^Foot above sill/ })).toHaveValue('2.5');
  await expect(list).toContainText('in an opening, centre 182.5 high, 67.0 from the left corner');
  expect(dov.errors).toEqual([]);
  expect(viewer.errors).toEqual([]);
});
