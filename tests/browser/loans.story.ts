import { readFileSync } from 'node:fs';
import * as XLSX from '@e965/xlsx';
import { expect, goTo, type Seat, test } from './museum.ts';
import { atSizes, expectUpright, foundIn, SIZES } from './soundness.ts';

const EVENING = 'Evening, Saint Osk';
const MARK = 'Flood mark, 1910';

test('story: a lender’s terms, a lamp that breaks them, a loan declined, and a caution accepted by whoever is competent', async ({
  museum,
  browser,
}) => {
  const ama = await museum.enter(browser, 'registrar');
  const dov = await museum.enter(browser, 'curator');
  await goTo(ama, 'loans');
  const row = (name: string) => ama.page.getByRole('listitem', { name, exact: true });

  // Ama writes down what the lender allows; until a lamp is brighter nothing is amiss.
  await row(EVENING)
    .getByRole('button', { name: `terms of ${EVENING}` })
    .click();
  const lux = row(EVENING).getByRole('textbox', { name: 'Lux at most' });
  await lux.fill('60');
  await lux.press('Enter');
  await expect(row(EVENING)).not.toContainText('The lender allows');

  // The lender's list as a workbook, with the terms just written down.
  const coming = ama.page.waitForEvent('download');
  await ama.page.getByRole('button', { name: 'as XLSX of Private collection, the pilot’s family' }).click();
  const list = XLSX.read(readFileSync(await (await coming).path())).Sheets['Loan list'] as XLSX.WorkSheet;
  const evening = XLSX.utils.sheet_to_json<Record<string, string>>(list).find(({ Title }) => Title === EVENING);
  expect(evening?.Terms).toContain('60 lux');

  // Dov, on the wall, gives the work a lamp of its own: both are told at once, and it waits for Ama.
  await goTo(dov, 'wall/dye:right');
  await dov.page.getByRole('button', { name: /^All on this wall/ }).press('Enter');
  await dov.page
    .getByRole('list', { name: 'All on this surface' })
    .getByRole('button', { name: EVENING })
    .press('Enter');
  const card = dov.page.getByRole('article', { name: `Card of ${EVENING}` });
  await card.getByRole('button', { name: 'Light', exact: true }).click();
  const lamp = card.getByRole('textbox', { name: /^Lux, / });
  await lamp.fill('150');
  await lamp.press('Enter');
  const breach = 'The lender allows 60 lux; 150 is planned.';
  await expect(card.getByRole('region', { name: 'Cautions' })).toContainText(breach);
  await expect(card.getByRole('region', { name: 'Cautions' })).toContainText('For the registrar to accept.');
  await expect(row(EVENING)).toContainText(breach);

  // On the wall he sees every work's light against its limit; with labels on the walls, one below its work reads too low.
  const light = dov.page.getByRole('region', { name: 'Light on this wall' });
  await light.getByRole('button', { name: 'light' }).click();
  await expect(light.getByRole('listitem').filter({ hasText: EVENING })).toContainText('150 of');
  await expect(light).toContainText('the most sensitive here, governs');
  const labels = dov.page.getByRole('region', { name: 'Labels on this wall' });
  await labels.getByRole('button', { name: 'labels' }).click();
  await labels.getByRole('checkbox', { name: /^on every wall/ }).check();
  await card.getByRole('button', { name: 'Label', exact: true }).click();
  await card.getByRole('combobox', { name: 'Stands' }).selectOption('below');
  await expect(card.getByRole('region', { name: 'Cautions' })).toContainText('Its label’s foot is');
  await card.getByRole('combobox', { name: 'Stands' }).selectOption('none');
  await expect(card.getByRole('region', { name: 'Cautions' })).not.toContainText('Its label');
  await goTo(dov, 'waiting');
  await expect(dov.page.getByText('Settle the terms of Private collection, the pilot’s family')).toBeVisible();

  // A loan falls away: what breaks, and what could stand in, the like things first.
  await row(MARK)
    .getByRole('combobox', { name: `Status of ${MARK}` })
    .selectOption('declined');
  const loss = row(MARK).getByRole('region', { name: `If ${MARK} falls away` });
  await expect(loss).toContainText('Wheel Room, south wall loses it');
  await expect(loss.getByRole('listitem').filter({ hasText: 'also a flood mark' }).first()).toContainText('Flood mark');
  await expect(dov.page.getByText(`Find what stands in for ${MARK}`)).toBeVisible();

  // What is private stays with those who may read it.
  const isolde = await museum.enter(browser, 'guest artist');
  await goTo(isolde, 'loans');
  await expect(isolde.page.getByRole('listitem', { name: MARK, exact: true })).toContainText('declined');
  await expect(ama.page.getByText(/^Insured for EUR/).first()).toBeVisible();
  await expect(isolde.page.getByText(/Insured for|EUR/)).toHaveCount(0);

  // Piet accepts what is for a preparator, with his reason; Dov may not, and reads whose word it is.
  const piet = await museum.enter(browser, 'preparator');
  await goTo(piet, 'cautions');
  await goTo(dov, 'cautions');
  const caution = ({ page }: Seat) => page.getByRole('region', { name: 'load and hanging' });
  await expect(caution(dov).getByText('For the preparator to accept.').first()).toBeVisible();
  await expect(caution(dov).getByRole('button', { name: /^accept/ })).toHaveCount(0);
  await caution(piet)
    .getByRole('button', { name: /^accept… Clock dial, gatehouse/ })
    .click();
  await piet.page.getByRole('textbox', { name: 'Why it is accepted' }).fill('Two hooks go in on Monday.');
  await piet.page.getByRole('button', { name: 'Accept as it stands' }).click();
  await expect(caution(dov)).toContainText('Accepted by Piet Oyelaran, preparator');
  await expect(caution(dov)).toContainText('Two hooks go in on Monday.');
  // He takes it back, saying why; Dov may not, and reads both.
  await expect(caution(dov).getByRole('button', { name: /^take it back/ })).toHaveCount(0);
  await caution(piet)
    .getByRole('button', { name: /^take it back… Clock dial, gatehouse/ })
    .click();
  await piet.page.getByRole('textbox', { name: 'Why it is taken back' }).fill('The plaster is hollow there.');
  await piet.page.getByRole('button', { name: 'Take it back' }).click();
  await expect(caution(dov)).toContainText('preparator, took that back');
  await expect(caution(dov)).toContainText('The plaster is hollow there.');
  for (const { errors } of [ama, dov, isolde, piet]) expect(errors).toEqual([]);
});

test('story: loans and cautions, opened, are sound at a desk and on a tablet', async ({ museum, browser }) => {
  const wren = await museum.enter(browser, 'lead', { hasTouch: true });
  const { page, errors } = wren;
  const expectSound = (what: string) =>
    atSizes(page, SIZES.slice(0, 2), async (width) => {
      expect(await foundIn(page, 'html'), `${what}, ${width}`).toEqual([]);
      await expectUpright(page, `${what}, ${width}`);
    });
  await goTo(wren, 'loans');
  await page.getByRole('button', { name: 'terms of Sluice gear' }).click();
  await page.getByRole('button', { name: 'if it falls away: Sluice gear' }).click();
  await expectSound('loans');
  await goTo(wren, 'cautions');
  await page.getByRole('button', { name: 'see and edit them' }).click();
  const way = page.getByRole('textbox', { name: 'Light on R2', exact: true });
  await way.fill('40');
  await way.press('Enter');
  await expect(page.getByRole('textbox', { name: 'Ground of Light on R2', exact: true })).toHaveValue(
    'the museum’s own',
  );
  await expectSound('cautions');
  expect(errors).toEqual([]);
});
