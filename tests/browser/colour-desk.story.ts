import type { Page } from '@playwright/test';
import { expect, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';
const WALL = 'Dye House, east wall';

async function sitAtTheDesk({ page }: Seat): Promise<void> {
  await page.getByRole('link', { name: 'Colour desk', exact: true }).click();
  await expect(page.getByRole('grid', { name: 'How works read on walls' })).toBeVisible();
}

const cell = (page: Page, name: RegExp) => page.getByRole('gridcell', { name }).first();
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '');

test('story: the desk opens on the lost work and leads to a paint on which it carries; the other sees the trial; it is proposed, and repainted', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  await sitAtTheDesk(dov);
  await sitAtTheDesk(isolde);

  // It says at once which work is lost and why, in words; the figures stand one press behind.
  const why = dov.page.getByRole('region', { name: `How ${OIL} reads` });
  await expect(why).toContainText(`lost on ${WALL}`);
  await expect(why.getByRole('table')).toHaveCount(0);
  await why.getByRole('button', { name: 'figures' }).click();
  await expect(why.getByRole('table')).toContainText('body to wall');
  await why.getByRole('button', { name: 'fold the figures away' }).click();

  // The deck tells on which paints it carries; moving along it changes the row, for Dov alone.
  const deck = dov.page.getByRole('region', { name: `The deck, tried on ${WALL}` });
  await deck.getByRole('button', { name: /it carries on$/ }).click();
  const weld = deck.getByRole('button', { name: /^Weld LRV/ });
  await weld.hover();
  await expect(cell(dov.page, new RegExp(`^${OIL}: carries, hangs there, on Weld`))).toBeVisible();
  await expect(dov.page.getByRole('region', { name: 'If the trial is taken' })).toContainText(`${OIL}: lost → carries`);
  await expect(cell(isolde.page, /on Weld$/)).toHaveCount(0);

  // Held, it is seen at Isolde's desk by his name, on the deck and on the wall; the hang stays as it is.
  await weld.click();
  await expect(weld).toHaveAttribute('aria-pressed', 'true');
  await expect(
    isolde.page.getByRole('rowheader', { name: `${WALL}: Dov Castellane tries Weld, LRV 54` }),
  ).toBeVisible();
  await expect(cell(isolde.page, new RegExp(`^${OIL}: carries, hangs there, on Weld`))).toBeVisible();
  await expect(isolde.page.getByRole('button', { name: /^Weld LRV 54.*Dov Castellane tries it$/ })).toHaveCount(1);
  await expect(
    isolde.page.getByRole('rowheader', { name: `${WALL}: Verdigris, deep, LRV 8, paints are tried here` }),
  ).toBeVisible();
  await isolde.page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await expect(isolde.page.getByText('Dov Castellane tries Weld here')).toBeVisible();

  // Two paints side by side, the divider by the arrows.
  const divider = dov.page.getByRole('separator', { name: 'Between Verdigris, deep, at its left, and Weld, on trial' });
  const at = Number(await divider.getAttribute('aria-valuenow'));
  await divider.press('ArrowLeft');
  await expect(divider).toHaveAttribute('aria-valuenow', String(at - 2));

  // Proposed: a proposal with that repaint in it, in one step; the hang stays as it is.
  await dov.page.getByRole('button', { name: 'Propose Weld…' }).click();
  await dov.page.getByRole('textbox', { name: /^Reason/ }).fill('The green drinks the valley.');
  await dov.page.getByRole('button', { name: 'Propose Weld', exact: true }).click();
  await expect(dov.page.getByRole('list', { name: 'Moves' })).toContainText('Paint the east wall Weld');
  await expect(isolde.page.getByText(/^Paint: Verdigris, deep/)).toBeVisible();
  await expect(isolde.page.getByText('Dov Castellane tries Weld here')).toHaveCount(0);

  // Repainted on the hang: a fact, seen by both, taken back by one undo.
  await dov.page.getByRole('link', { name: 'back to the hang' }).click();
  await sitAtTheDesk(dov);
  await dov.page.getByRole('button', { name: /^Weld LRV/ }).click();
  await dov.page.getByRole('button', { name: 'Repaint: Weld' }).click();
  await expect(dov.page.getByRole('rowheader', { name: new RegExp(`^${WALL}: Weld, LRV 54`) })).toBeVisible();
  await expect(isolde.page.getByText(/^Paint: Weld/)).toBeVisible();
  await dov.page.getByRole('button', { name: /^Undo/ }).click();
  await expect(dov.page.getByRole('rowheader', { name: new RegExp(`^${WALL}: Verdigris, deep`) })).toBeVisible();
  await expect(isolde.page.getByText(/^Paint: Verdigris, deep/)).toBeVisible();
  expect([...dov.errors, ...isolde.errors]).toEqual([]);
});

test('story: the whole desk by the keyboard alone', async ({ museum, browser }) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  const key = async (name: string, times = 1): Promise<void> => {
    for (let n = 0; n < times; n++) await page.keyboard.press(name);
  };
  const until = async (name: string, arrived: (label: string) => boolean, most = 120): Promise<void> => {
    for (let n = 0; n < most && !arrived(await focused(page)); n++) await page.keyboard.press(name);
    expect(arrived(await focused(page)), await focused(page)).toBe(true);
  };
  await until('Tab', (label) => label === 'Colour desk');
  await key('Enter');
  await expect(page.getByRole('region', { name: `How ${OIL} reads` })).toBeVisible();

  // One step of Tab into the table, where the arrows go from cell to cell.
  await until('Tab', (label) => label.startsWith(`${OIL}: lost, hangs there`));
  await key('ArrowLeft');
  expect(await focused(page)).toMatch(/^Weir, rising: carries, hangs there, on Verdigris, deep/);
  await key('Enter');
  await expect(page.getByRole('region', { name: 'How Weir, rising reads' })).toBeVisible();
  await key('Escape');
  await expect(page.getByRole('region', { name: /^How / })).toHaveCount(0);
  expect(await focused(page)).toMatch(/^Weir, rising/);
  await key('ArrowRight');
  await key('Enter');
  await key('Home');
  expect(await focused(page)).toMatch(/^Dye House, east wall: Verdigris, deep/);

  // Up to the heads: a wall's works are taken together and opened again.
  await key('Control+Home');
  await key('ArrowRight');
  const together = await focused(page);
  await key('Enter');
  expect(await focused(page)).not.toBe(together);
  await key('Enter');
  expect(await focused(page)).toBe(together);

  // Along the deck: each paint is tried as the focus comes to it, Enter holds it.
  await until('Tab', (label) => /^[^:,]+ LRV \d+/.test(label));
  await key('Home');
  await until('ArrowRight', (label) => label.startsWith('Weld LRV'));
  await expect(cell(page, new RegExp(`^${OIL}: carries, hangs there, on Weld`))).toBeVisible();
  await key('Enter');
  await expect(page.getByRole('rowheader', { name: `${WALL}: on trial, Weld, LRV 54` })).toBeVisible();
  await until('Shift+Tab', (label) => label === 'Repaint: Weld');
  await key('Enter');
  await expect(page.getByRole('rowheader', { name: new RegExp(`^${WALL}: Weld`) })).toBeVisible();
  expect(errors).toEqual([]);
});

test('story: works stand across as one asks: each wall’s own, by number, by worst, all of the checklist', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'viewer');
  await page.goto(`${page.url().split('#')[0]}#colour`);
  const across = page.getByRole('combobox', { name: 'Across' });
  await expect(across).toBeVisible();
  const grid = page.getByRole('grid');

  // Worst first: the lost one stands at the left.
  await page.getByRole('group', { name: 'Works by' }).getByRole('button', { name: 'worst' }).click();
  await expect(page.getByRole('columnheader', { name: /^Lost, 1 work/ })).toBeVisible();
  await expect(page.getByRole('columnheader', { name: new RegExp(`^${OIL}`) })).toBeVisible();
  await page.getByRole('group', { name: 'Walls by' }).getByRole('button', { name: 'worst' }).click();
  await expect(page.getByRole('rowheader').first()).toHaveAccessibleName(/^Dye House, east wall/);

  // Only what is in sight is drawn, however many works there are.
  await page.getByRole('group', { name: 'Works by' }).getByRole('button', { name: 'number' }).click();
  await across.selectOption({ label: 'the whole checklist' });
  const columns = Number(await grid.getAttribute('aria-colcount'));
  expect(columns).toBeGreaterThan(60);
  expect(await page.getByRole('columnheader').count()).toBeLessThan(30);
  await grid.evaluate((element) => {
    element.scrollLeft = element.scrollWidth;
  });
  await expect(page.getByRole('columnheader').last()).toHaveAttribute('aria-colindex', String(columns));

  // Each wall with its own works alone: what hangs there and nothing else.
  await across.selectOption({ label: 'each wall’s own works' });
  await expect(page.getByRole('columnheader')).toHaveCount(0);
  await expect(cell(page, new RegExp(`^${OIL}: lost, hangs there`))).toBeVisible();
  for (const name of await page
    .getByRole('gridcell')
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')))) {
    if (name !== null) expect(name).toContain('hangs there');
  }

  // A viewer may look and try, and can neither repaint nor propose.
  await page.getByRole('button', { name: /^Weld LRV/ }).click();
  await expect(page.getByRole('region', { name: 'If the trial is taken' })).toContainText(`${OIL}: lost → carries`);
  await expect(page.getByRole('button', { name: /^(Repaint|Propose)/ })).toHaveCount(0);
  expect(errors).toEqual([]);
});

test('story: let one carry and keep another quiet: the paints that do it best, each with both works’ words, are tried by a press', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.getByRole('link', { name: 'Colour desk', exact: true }).click();
  await page
    .getByRole('region', { name: `How ${OIL} reads` })
    .getByRole('button', { name: 'let it carry' })
    .click();
  await cell(page, /^Weir, rising: carries, hangs there, on Verdigris, deep/).click();
  await page
    .getByRole('region', { name: 'How Weir, rising reads' })
    .getByRole('button', { name: 'keep it quiet' })
    .click();
  await page.getByRole('button', { name: 'find paints that…' }).click();
  await expect(page.getByRole('list', { name: 'Asked of the paint' })).toContainText(`let ${OIL} carry`);
  await expect(page.getByRole('list', { name: 'Asked of the paint' })).toContainText('keep Weir, rising quiet');
  const best = page.getByRole('list', { name: 'Paints that do it best, unlike each other' });
  await expect(best.getByRole('listitem')).toHaveCount(12);
  const first = best.getByRole('button').first();
  await expect(first).toContainText(`carries: ${OIL}`);
  await expect(first).toContainText(/(weak|holds): Weir, rising/);

  // Within a lightness, and beside the next walls: fewer remain, and it is said how many are left out.
  await page.getByRole('textbox', { name: 'L* from' }).fill('70');
  await expect(page.getByText(/paints are left out by these bounds/)).toBeVisible();
  await page.getByRole('textbox', { name: 'L* from' }).fill('x');
  await expect(page.getByRole('alert')).toContainText('L* lies between 0 and 100');
  await page.getByRole('textbox', { name: 'L* from' }).fill('0');
  await page.getByRole('combobox', { name: 'beside its next walls' }).selectOption('unlike');

  await best.getByRole('button').first().click();
  await expect(best.getByRole('button').first()).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByRole('rowheader', { name: new RegExp(`^${WALL}: on trial, `) })).toBeVisible();
  await expect(page.getByRole('region', { name: 'If the trial is taken' })).toContainText(`${OIL}: lost → carries`);
  expect(errors).toEqual([]);
});

test('story: under the gallery’s lamp: it is set for everybody, two greys part in it, and white mounts, words and other eyes are told of', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator', { viewport: { width: 1440, height: 900 } });
  const viewer = await museum.enter(browser, 'viewer', { viewport: { width: 1024, height: 768 } });
  await sitAtTheDesk(dov);
  await viewer.page.goto(`${viewer.page.url().split('#')[0]}#colour`);
  const side = dov.page.getByRole('complementary', { name: 'The wall on trial' });
  const lights = side.getByRole('region', { name: 'Gallery and studio light' });

  // In words at once; with pictures, works and paints one press behind.
  await expect(lights).toContainText('The gallery’s tungsten light (3000 K) is much warmer than the studio’s daylight');
  await dov.page.getByRole('button', { name: /^lamps…/ }).click();
  const lamp = lights.getByRole('combobox', { name: 'The gallery’s lamp' });
  await expect(lamp).toBeFocused();
  await expect(lights.getByRole('list', { name: 'Paints that part between the two lights' })).toContainText(
    'Lead pipe and Pewter match in the studio, part in the gallery.',
  );
  await expect(lights.getByRole('figure')).toHaveCount(2);

  // Seen under it: every row, and the card says so.
  await dov.page.getByRole('group', { name: 'Seen under' }).getByRole('button', { name: 'gallery' }).click();
  const card = dov.page.getByRole('region', { name: `How ${OIL} reads` });
  await expect(card).toContainText('Seen under gallery, 3000 K (tungsten).');
  await expect(card).toContainText('lost on Dye House');
  await expect(dov.page.getByRole('rowheader', { name: new RegExp(`^${WALL}: Verdigris, deep, LRV 8`) })).toBeVisible();

  // The lamp is the show's: whoever may change the hang sets it, and a viewer reads it.
  await lamp.selectOption('LED-B3');
  await expect(card).toContainText('Seen under LED (B3, 4103 K).');
  await viewer.page.getByRole('button', { name: /^lamps…/ }).click();
  const theirs = viewer.page.getByRole('combobox', { name: 'The gallery’s lamp' });
  await expect(theirs).toHaveValue('LED-B3');
  await expect(theirs).toBeDisabled();
  await dov.page.getByRole('button', { name: /^Undo/ }).click();
  await expect(theirs).toHaveValue('gallery 3000 K');

  // One's own studio light from a meter's file; of a bad one it is said where, and nothing changes.
  const file = lights.getByLabel('read a meter’s file for my studio’s light');
  const spectrum = (power: (nm: number) => number | string) =>
    Buffer.from(Array.from({ length: 41 }, (_, i) => `${380 + 10 * i};${power(380 + 10 * i)}`).join('\n'));
  const given = (name: string, buffer: Buffer) => file.setInputFiles({ name, mimeType: 'text/plain', buffer });
  await given(
    'bad lamp.txt',
    spectrum((nm) => (nm === 400 ? 'bright' : 1)),
  );
  await expect(lights.getByRole('alert')).toContainText('bad lamp.txt, line 3, 400 nm');
  const studio = lights.getByRole('combobox', { name: 'My studio’s light' });
  await expect(studio).toHaveValue('D65');
  await given(
    'north window.txt',
    spectrum((nm) => nm - 300),
  );
  await expect(studio.locator('option:checked')).toHaveText('measured: north window');
  await expect(lights.getByRole('alert')).toHaveCount(0);
  await expect(viewer.page.getByRole('combobox', { name: 'My studio’s light' })).toHaveValue('D65');

  // What a paint on trial throws on white mounts, and what words do on it.
  await dov.page.getByRole('button', { name: /^Weld LRV/ }).click();
  await side.getByRole('button', { name: 'What Weld throws' }).click();
  const mounts = side.getByRole('table', { name: 'A white mount on each wall of the room' });
  await expect(mounts.getByRole('row')).toHaveCount(5);
  await expect(mounts.getByRole('row', { name: /^west wall/ })).toContainText('yellow, most of it from the east wall');
  await side.getByRole('button', { name: 'Words on Weld' }).click();
  await expect(side.getByRole('row', { name: /^Black letters/ })).toContainText('any usual size');
  await expect(side.getByRole('row', { name: /^White letters/ })).toContainText('not for words');
  const sizes = side.getByRole('list', { name: 'Smallest letters' });
  await expect(sizes).toContainText('panel: 35 pt');
  await side.getByRole('textbox', { name: /^Read from/ }).fill('300');
  await side.getByRole('textbox', { name: /^Read from/ }).press('Enter');
  await expect(sizes).toContainText('panel: 159 pt');

  // Other eyes, on the desk and on the stage, on this screen alone.
  await dov.page.getByRole('group', { name: 'Seen by' }).getByRole('button', { name: 'green-weak' }).click();
  await expect(side.locator('.desk-split')).toHaveCSS('filter', 'url("#eye-filter")');
  const weak = dov.page.getByRole('slider', { name: 'how weak' });
  await weak.press('ArrowLeft');
  await expect(weak).toHaveAttribute('aria-valuetext', /^95 of 100/);
  await dov.page.getByRole('link', { name: 'Rooms', exact: true }).click();
  await expect(dov.page.locator('.stage canvas').first()).toHaveCSS('filter', 'url("#eye-filter")');
  await dov.page.getByRole('button', { name: 'My screen, seen green-weak' }).click();
  await dov.page.getByRole('group', { name: 'Seen by' }).getByRole('button', { name: 'usual' }).click();
  await expect(dov.page.locator('.stage canvas').first()).toHaveCSS('filter', 'none');
  expect([...dov.errors, ...viewer.errors]).toEqual([]);
});

test('story: in a proposal the desk is the proposal’s: its paints stand there, and a repaint is proposed', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'guest artist');
  await page.goto(`${page.url().split('#')[0]}#in/broom-in-flower/wall/dye:head`);
  await page.getByRole('link', { name: 'Colour desk', exact: true }).click();
  await expect(page).toHaveURL(/#in\/broom-in-flower\/colour$/);
  await expect(page.getByRole('region', { name: 'The proposal you are in' })).toContainText('the hang stays as it is');
  await expect(page.getByRole('rowheader', { name: new RegExp(`^${WALL}: Weld, LRV 54`) })).toBeVisible();
  await page
    .getByRole('rowheader', { name: new RegExp(`^${WALL}`) })
    .first()
    .click();
  await page.getByRole('button', { name: /^Kingcup LRV/ }).click();
  await expect(page.getByRole('button', { name: /^Propose/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'Repaint it here: Kingcup' }).click();
  await expect(page.getByRole('rowheader', { name: new RegExp(`^${WALL}: Kingcup`) })).toBeVisible();
  await page.getByRole('link', { name: 'back to the hang' }).click();
  await expect(page.getByRole('rowheader', { name: new RegExp(`^${WALL}: Verdigris, deep`) })).toBeVisible();
  expect(errors).toEqual([]);
});
