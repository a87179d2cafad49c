import { expect, goTo, type Seat, test } from './museum.ts';
import { atSizes, expectUpright, foundIn, SIZES } from './soundness.ts';

/** Pages that fold differently where there is less room; the rules that axe tries depend on little else. */
const FOLDING = new Set(['#wall/dye:head', '#room/dye', '#colour', '#bring-in', '#collection', '#loans', '#one-thing']);

/** Begun from the wall with nothing selected: the form is open on its card, and the ways lie along the foot. */
async function arrangedOn(seat: Seat, address: string): Promise<void> {
  const { page } = seat;
  await goTo(seat, address);
  const caption = page.getByRole('button', { name: 'Caption' });
  const start = page.getByRole('button', { name: 'arrange… on this wall' });
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

const PAGES = {
  'of the hang': [
    '#wall/dye:head',
    '#room/dye',
    '#wall/dye:ceiling',
    '#layout',
    '#vignettes',
    '#paper/dye:head',
    '#measure/dye',
    '#colour',
    '#proposals',
    '#in/broom-in-flower/wall/dye:head',
    '#in/broom-in-flower/room/dye',
    '#in/broom-in-flower/colour',
    '#deck',
    '#deck/verdigris-deep',
    '#samples',
    '#paint-schedule',
  ],
  'of records and people': [
    '#bring-in',
    '#take-out',
    '#remarks',
    '#waiting',
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
  ],
};

for (const [which, addresses] of Object.entries(PAGES)) {
  test(`story: axe finds nothing serious on the pages ${which}, and none is pushed sideways, at each size`, async ({
    museum,
    browser,
  }) => {
    const dov = await museum.enter(browser, 'curator');
    const { page, errors } = dov;
    for (const address of addresses) {
      await goTo(dov, address.slice(1));
      await page.waitForTimeout(400);
      await atSizes(page, SIZES, async (width) => {
        if (width === 1440 || FOLDING.has(address)) {
          expect(await foundIn(page, 'html', ['serious', 'critical']), `${address}, ${width}`).toEqual([]);
        }
        await expectUpright(page, `${address}, ${width}`);
      });
    }
    if (which === 'of the hang') {
      await arrangedOn(dov, 'wall/wheel:head');
      await atSizes(page, SIZES.slice(0, 2), async (width) => {
        const found = await foundIn(page, 'html', ['serious', 'critical']);
        expect(found, `the form and the ways to arrange, ${width}`).toEqual([]);
      });
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
