import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import { expect, test } from './museum.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core calls serious or critical on the page as it stands, by rule and place. */
async function seriousIn(page: Page): Promise<string[]> {
  // Through the debugger, since the page's own policy takes no foreign script.
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const axe = (
      window as unknown as {
        axe: { run(): Promise<{ violations: { id: string; impact: string; nodes: { target: string[] }[] }[] }> };
      }
    ).axe;
    const { violations } = await axe.run();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  });
}

/** Pages that fold differently where there is less room; the rules that axe tries depend on little else. */
const FOLDING = new Set(['#wall/dye:head', '#room/dye', '#colour', '#bring-in', '#collection', '#loans', '#one-thing']);

/** Begun from the wall with nothing selected: the form is open on its card, and the ways lie along the foot. */
async function arrangedOn(page: Page, address: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, address);
  const caption = page.getByRole('button', { name: 'Caption' });
  const start = page.getByRole('button', { name: 'arrange on this wall…' });
  await start.or(caption).first().waitFor();
  if (!(await start.isVisible())) await caption.click();
  await start.click();
  await page.getByRole('button', { name: /^all that hangs on this wall: \d/ }).click();
  await page.getByRole('radio', { name: 'in a line' }).check();
  await page.getByRole('button', { name: 'Show ways' }).click();
  await page
    .getByRole('button', { name: /^Try it/ })
    .first()
    .waitFor();
}

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [720, 450],
] as const) {
  test(`story: axe finds nothing serious on its pages, and none is pushed sideways, at ${width}×${height}`, async ({
    museum,
    browser,
  }) => {
    const { page, errors } = await museum.enter(browser, 'curator', { viewport: { width, height } });
    for (const address of [
      '#wall/dye:head',
      '#room/dye',
      '#wall/dye:ceiling',
      '#layout',
      '#vignettes',
      '#paper/dye:head',
      '#measure/dye',
      '#bring-in',
      '#take-out',
      '#colour',
      '#proposals',
      '#in/broom-in-flower/wall/dye:head',
      '#in/broom-in-flower/room/dye',
      '#in/broom-in-flower/colour',
      '#remarks',
      '#waiting',
      '#deck',
      '#deck/verdigris-deep',
      '#samples',
      '#history',
      '#likenesses/shape/checklist',
      '#seats',
      '#loans',
      '#cautions',
      '#collection',
      '#collection/brought-in',
      '#collection/said',
      '#collection/to-photograph',
      '#collection/pull-list',
      '#one-thing',
      '#paint-schedule',
    ]) {
      await page.evaluate((hash) => {
        location.hash = hash;
      }, address);
      await page.waitForTimeout(400);
      if (width === 1440 || FOLDING.has(address)) expect(await seriousIn(page), address).toEqual([]);
      // Nothing pushes the page sideways.
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
        address,
      ).toBeLessThanOrEqual(0);
    }
    if (width > 720) {
      await arrangedOn(page, '#wall/wheel:head');
      expect(await seriousIn(page), 'the form and the ways to arrange').toEqual([]);
    }
    expect(errors).toEqual([]);
  });
}

test('story: with the keyboard alone: go to a wall, take a work, nudge it, type its height, undo', async ({
  museum,
  browser,
}) => {
  const { page } = await museum.enter(browser, 'curator');
  const press = async (key: string, until: () => Promise<boolean>, most = 200): Promise<void> => {
    for (let n = 0; n < most && !(await until()); n++) await page.keyboard.press(key);
    expect(await until()).toBe(true);
  };
  const focused = (): Promise<string> =>
    page.evaluate(
      () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
    );
  await press('Tab', async () => /^Dye House, east wall/.test(await focused()));
  await press('ArrowLeft', async () => (await focused()) === 'Dye House, fold-out');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Dye House' })).toBeVisible();
  await press('ArrowRight', async () => /^Dye House, east wall/.test(await focused()));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
  await press('Tab', async () => (await focused()) === 'All on this wall, as a list');
  await page.keyboard.press('Enter');
  await press('Tab', async () => (await focused()).startsWith('The valley from Tallow Hill'));
  await page.keyboard.press('Enter');
  const along = page.getByRole('textbox', { name: /^From left corner/ });
  await expect(along).toHaveValue('470.0');
  await press('Tab', async () => /as faced/.test(await focused()));
  await page.keyboard.press('ArrowRight');
  await expect(along).toHaveValue('471.0');
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(along).toHaveValue('461.0');
  await press('Tab', async () =>
    page.evaluate(
      () => document.activeElement?.closest('label, div')?.textContent?.startsWith('Centre height') ?? false,
    ),
  );
  await page.keyboard.press('Control+a');
  await page.keyboard.type('152.4');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('textbox', { name: /^Centre height/ })).toHaveValue('152.4');
  for (let n = 0; n < 3; n++) await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(along).toHaveValue('470.0');
});

test('story: a curator who opens the show is on the wall whose paint loses a work, and is told why', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator', { viewport: { width: 1440, height: 900 } });
  await expect(page).toHaveURL(/#wall\/dye:head$/);
  const card = page.getByRole('complementary', { name: 'Card' });
  await expect(card.getByText('lost on this wall')).toBeVisible();
  await expect(card.getByRole('heading', { name: 'The valley from Tallow Hill' })).toBeVisible();
  // From anywhere else one press leads back to it.
  await page.getByRole('link', { name: 'Vignettes' }).click();
  await expect(card).toBeHidden();
  await page.getByRole('button', { name: /^1 lost on its wall: The valley from Tallow Hill/ }).click();
  await expect(page).toHaveURL(/#wall\/dye:head$/);
  await expect(card.getByText('lost on this wall')).toBeVisible();
  expect(errors).toEqual([]);
});
