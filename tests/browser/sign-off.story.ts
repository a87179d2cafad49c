import { expect, goTo, type Seat, test } from './museum.ts';
import { atSizes, expectUpright, foundIn, SIZES } from './soundness.ts';

const BLOCK = 'Cloth-printing blocks, piece 16';

/** Takes a work by its list and types so many centimetres more for where it is along the wall. */
async function move({ page }: Seat, name: string, byCm: number): Promise<void> {
  const along = page.getByRole('textbox', { name: /^From left corner/ });
  await page.getByRole('listitem').getByRole('button', { name, exact: true }).press('Enter');
  const before = Number(await along.inputValue());
  await along.fill((before + byCm).toFixed(1));
  await along.press('Enter');
  await expect(along).toHaveValue((before + byCm).toFixed(1));
}

function rowOf({ page }: Seat, name: string) {
  return page.getByRole('row').filter({ has: page.getByText(name, { exact: true }) });
}

test('story: signed, changed, told, signed again with one press; the list frozen, changed, and the older print told as superseded', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  for (const seat of [dov, isolde]) await goTo(seat, 'wall/dye:head');
  const caption = ({ page }: Seat) => page.getByRole('region', { name: 'Sixty impressions' });

  // Both sign what stands: it is agreed, everywhere it is said.
  for (const seat of [dov, isolde]) {
    await caption(seat).getByRole('button', { name: 'sign off as it stands' }).click();
    await expect(caption(seat).getByRole('button', { name: /^sign off/ })).toHaveCount(0);
  }
  await expect(dov.page.getByRole('button', { name: /^Vignette 1, Sixty impressions, agreed/ })).toBeVisible();
  await expect(
    isolde.page.getByRole('button', { name: /^Dye House, east wall: .*Sixty impressions, agreed/ }),
  ).toBeVisible();

  // Dov freezes the list; the same list keeps its number, and Isolde sees it as she comes.
  await goTo(dov, 'vignettes');
  await expect(dov.page.getByRole('article', { name: 'Vignette list' })).toContainText('Draft');
  await dov.page.getByRole('button', { name: 'Freeze as version 1' }).click();
  const stamp = dov.page.getByRole('article', { name: 'Vignette list' });
  await expect(stamp).toContainText(/Version 1.*Dov Castellane.*stamp [0-9a-f]{8}/s);
  await expect(dov.page.getByText('Frozen as version 1: nothing has changed since.')).toBeVisible();
  await expect(dov.page.getByText('Frozen as version 1: nothing has changed since.')).toBeFocused();
  const shown = (await stamp.textContent())?.match(/stamp ([0-9a-f]{8})/)?.[1] ?? '';

  // Isolde moves a block 12 cm. It is told, with what, before anything is pressed: on the wall and on the list.
  await move(isolde, BLOCK, -12);
  await expect(caption(isolde)).toContainText(`Changed since Dov Castellane and Isolde Fennimarsh signed: ${BLOCK}`);
  await expect(caption(isolde)).toContainText('moved 12.0 left');
  const row = rowOf(dov, 'Sixty impressions');
  await expect(row).toContainText(/changed since.*since then: .*piece 16 moved 12\.0 cm left/s);
  await expect(stamp).toContainText(/Draft.*differs from version 1 in 1 row/s);

  // One press each, from the list and from the wall.
  await row.getByRole('button', { name: 'sign off again as it stands: Sixty impressions' }).click();
  await expect(row).toContainText('signed off by Dov Castellane');
  await expect(row.getByRole('button')).toHaveCount(0);
  await expect(row.getByRole('link', { name: 'Sixty impressions' })).toBeFocused();
  await expect(caption(isolde)).toContainText(`Changed since Isolde Fennimarsh signed: ${BLOCK}`);
  await caption(isolde).getByRole('button', { name: 'sign off again as it stands' }).click();
  await expect(row).toContainText('agreed');

  // An open proposal has moves about another vignette: it is proposed, and the list of the hang is what it was.
  await goTo(isolde, 'wall/dye:right');
  await isolde.page.getByRole('button', { name: 'propose…' }).click();
  await isolde.page.getByRole('textbox', { name: 'Title' }).fill('Higher water');
  await isolde.page.getByRole('textbox', { name: /^Reason/ }).fill('As it came.');
  await isolde.page.getByRole('button', { name: 'Begin the proposal' }).click();
  await move(isolde, 'Flood mark, 1868', 5);
  await expect(rowOf(dov, 'High water')).toContainText('proposed');
  await expect(dov.page.getByRole('button', { name: /^Dye House, south wall: .*High water, proposed/ })).toHaveCount(1);

  // Frozen again; then a wall is painted anew and a work moved.
  await dov.page.getByRole('button', { name: 'Freeze as version 2' }).click();
  await expect(stamp).toContainText('Version 2');
  await goTo(dov, 'wall/dye:head');
  await dov.page.getByRole('button', { name: /^Paint: Verdigris, deep/ }).click();
  await dov.page.getByRole('button', { name: /^Weld, LRV/ }).click();
  await goTo(dov, 'vignettes');
  await expect(stamp).toContainText(/Draft.*differs from version 2 in 1 row/s);
  await dov.page.getByRole('button', { name: 'Freeze as version 3' }).click();
  await expect(stamp).toContainText('Version 3');

  // Somebody holds an older print: by its number or its characters it is told as superseded, and how it differs.
  const field = dov.page.getByRole('textbox', { name: 'Stamp on a print' });
  const told = dov.page.getByRole('region', { name: 'Frozen versions' }).getByRole('status');
  for (const typed of ['1', `Version 1`, shown]) {
    await field.fill(typed);
    await field.press('Enter');
    await expect(told).toContainText('Version 1, superseded by version 3 on');
    await expect(told).toContainText(
      /differs in:.*Sixty impressions: .*piece 16 moved 12\.0 cm left; Dye House, east wall repainted from Verdigris, deep to Weld/s,
    );
  }
  await field.fill('3');
  await field.press('Enter');
  await expect(told).toContainText('This is the newest: version 3');
  await expect(told).toContainText('The list stands so.');
  await field.fill('nine');
  await field.press('Enter');
  await expect(told).toContainText('A stamp is a version’s number');
  await field.fill('1');
  await field.press('Enter');

  // As it was; compared with the newest, whichever is chosen first, and with what stands.
  await told.getByRole('link', { name: 'compare the two' }).click();
  const compared = dov.page.getByRole('article', { name: 'What differs' });
  await expect(compared).toContainText('Version 1 → version 3');
  await expect(compared).toContainText('Dye House, east wall repainted from Verdigris, deep to Weld');
  await expect(compared).toContainText('The same: High water, Copper noon, Two weathers.');
  const form = dov.page.getByRole('form', { name: 'Compare' });
  await form.getByRole('combobox', { name: 'Compare' }).selectOption('3');
  await form.getByRole('combobox', { name: 'with' }).selectOption('2');
  await form.getByRole('button', { name: 'compare' }).click();
  await expect(compared).toContainText('Version 2 → version 3');
  await expect(compared).not.toContainText('piece 16');
  await dov.page.getByRole('link', { name: 'Version 1', exact: true }).click();
  const old = dov.page.getByRole('article', { name: 'Vignette list, version 1' });
  await expect(old).toContainText(/superseded by version 3 on/);
  await expect(rowOf(dov, 'Sixty impressions')).toContainText('Verdigris, deep');
  await expect(rowOf(dov, 'Sixty impressions')).toContainText('agreed');
  await expect(old.getByRole('button')).toHaveCount(0);

  // What is printed is the paper alone, with its stamp.
  await dov.page.emulateMedia({ media: 'print' });
  await expect(old).toContainText(`stamp ${shown}`);
  await expect(dov.page.getByRole('region', { name: 'Frozen versions' })).toBeHidden();
  await expect(dov.page.getByRole('navigation', { name: 'Paperwork' })).toBeHidden();
  await dov.page.emulateMedia({ media: null });

  // Isolde left the proposal open; for her the frozen lists are the same. She may freeze, a viewer may not.
  const viewer = await museum.enter(browser, 'viewer');
  await goTo(viewer, 'vignettes');
  await viewer.page.getByRole('link', { name: 'Version 1', exact: true }).click();
  await expect(viewer.page.getByRole('article', { name: 'Vignette list, version 1' })).toContainText(`stamp ${shown}`);
  await viewer.page.getByRole('link', { name: 'the list as it stands' }).click();
  await expect(viewer.page.getByRole('article', { name: 'Vignette list' })).toContainText('Version 3');
  await expect(viewer.page.getByRole('button', { name: /^Freeze|^sign off/ })).toHaveCount(0);
  for (const { errors } of [dov, isolde, viewer]) expect(errors).toEqual([]);
});

test('story: the list, a frozen one and two compared are sound at each size, by finger too', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator', { hasTouch: true });
  const { page, errors } = dov;
  await goTo(dov, 'vignettes');
  await page.getByRole('button', { name: 'Freeze as version 1' }).click();
  await page.getByRole('button', { name: 'sign off as it stands: Sixty impressions' }).click();
  await page.getByRole('button', { name: 'Freeze as version 2' }).click();
  const field = page.getByRole('textbox', { name: 'Stamp on a print' });
  await field.fill('1');
  await field.press('Enter');
  await expect(page.getByText('signed off by Dov Castellane, curator', { exact: false }).first()).toBeVisible();
  for (const [address, what] of [
    ['vignettes', 'Vignette list'],
    ['vignettes/1', 'Vignette list, version 1'],
    ['vignettes/1/against/2', 'What differs'],
    ['vignettes/2/against/now', 'What differs'],
  ] as const) {
    await goTo(dov, address);
    await expect(page.getByRole('article', { name: what, exact: true })).toBeVisible();
    await atSizes(page, SIZES, async (width) => {
      expect(await foundIn(page), `${address}, ${width}`).toEqual([]);
      await expectUpright(page, `${address}, ${width}`);
    });
  }
  expect(errors).toEqual([]);
});
