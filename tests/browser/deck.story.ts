import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, type Seat, test } from './museum.ts';

const goTo = ({ page }: Seat, address: string) =>
  page.evaluate((hash) => {
    location.hash = hash;
  }, address);

const fileWay = (page: Page) => page.getByLabel(/^bring in a deck/);
const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

const CSV = [
  'name;code;L*;a*;b*;illuminant;observer;LRV;sheen',
  // Known by its code: corrected. No number: left out. LRV beyond 100: only that is left out.
  'Saffron;TP 206;72,4;15,1;57,2;D65;2°;44;flat matt',
  'Torn label;ZZ 9;55;x;3;D65;2°;;',
  'Heron;ZZ 10;61;-3;-6;D50;2°;130;flat matt',
].join('\r\n');

test('story: a deck comes in from CSV, each line beside what was understood; the good rest goes in, one undo takes it back', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator', { viewport: { width: 1440, height: 900 } });
  const { page } = dov;
  await goTo(dov, 'deck');
  await expect(page.getByText(/^64 paints, 24 by reflectance/)).toBeVisible();
  await fileWay(page).setInputFiles(file('weir.csv', CSV));
  await expect(page.getByText('Read as CSV: 2 paints understood')).toBeVisible();
  await expect(page.getByText('Heron | ZZ 10 | 61 | -3 | -6 | D50 | 2° | 130 | flat matt')).toBeVisible();
  await expect(
    page.getByText('Its LRV is not a number from 0 to 100, so it is left out. It says “130”.'),
  ).toBeVisible();
  await expect(page.getByText('line 3, a*')).toBeVisible();
  await expect(page.getByRole('combobox', { name: 'Saffron, line 2' })).toHaveValue('corrects');
  await page.getByRole('button', { name: 'Bring in 2 paints' }).click();
  await expect(page.getByText(/^65 paints, 23 by reflectance/)).toBeVisible();
  await page.getByRole('searchbox').fill('heron');
  await expect(page.getByText('L*a*b* under D50/2°, adapted to D65/2° by CAT16')).toBeVisible();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.getByText('No paint is called that.')).toBeVisible();
  await expect(page.getByText(/^64 paints, 24 by reflectance/)).toBeVisible();
  expect(dov.errors).toEqual([]);
});

const cxf = (doctype: string) => `<?xml version="1.0" encoding="UTF-8"?>${doctype}
<cc:CxF xmlns:cc="http://colorexchangeformat.com/CxF3-core"><cc:Resources><cc:ObjectCollection>
<cc:Object ObjectType="Standard" Name="Kingfisher" Id="o1"><cc:CreationDate>2026-03-02T10:00:00</cc:CreationDate>
<cc:ColorValues><cc:ColorCIELab ColorSpecification="s1"><cc:L>52</cc:L><cc:A>-48</cc:A><cc:B>-30</cc:B></cc:ColorCIELab></cc:ColorValues></cc:Object>
</cc:ObjectCollection><cc:ColorSpecificationCollection><cc:ColorSpecification Id="s1"><cc:TristimulusSpec>
<cc:Illuminant>D50</cc:Illuminant><cc:Observer>2_Degree</cc:Observer></cc:TristimulusSpec></cc:ColorSpecification>
</cc:ColorSpecificationCollection></cc:Resources></cc:CxF>`;

test('story: CxF3 is read as a reader writes it, with a paint beyond the screen said in words; a document type is refused', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const { page } = dov;
  await goTo(dov, 'deck');
  await fileWay(page).setInputFiles(
    file('reader.cxf', cxf('<!DOCTYPE CxF [<!ENTITY e SYSTEM "file:///etc/hostname">]>')),
  );
  await expect(page.getByText('It has a document type (DOCTYPE), which is not read')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Bring in 0 paints' })).toBeDisabled();
  await page.getByRole('button', { name: 'leave it' }).click();
  await fileWay(page).setInputFiles(file('reader.cxf', cxf('')));
  await expect(page.getByText('Read as CxF3: 1 paint understood')).toBeVisible();
  await expect(page.getByText('object 1 "Kingfisher"')).toBeVisible();
  await expect(page.getByText(/^beyond this screen/)).toBeVisible();
  await page.getByRole('button', { name: 'Bring in 1 paint' }).click();
  // Out again as CGATS and in once more: every paint is known, and stays as it is.
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'as CGATS.17' }).click(),
  ]);
  const text = readFileSync(await download.path(), 'utf8');
  expect(text).toMatch(/^CGATS\.17/);
  await fileWay(page).setInputFiles(file('again.txt', text));
  await expect(page.getByText('Read as CGATS.17: 65 paints understood. Nothing is written')).toBeVisible();
  await expect(page.getByText('the same colour as there')).toHaveCount(65);
  expect(dov.errors).toEqual([]);
});

test('story: a drawdown is sent to the artist, who sees and approves it; what waits for it goes, by the keyboard', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  await goTo(dov, 'waiting');
  await dov.page.getByRole('button', { name: 'go there: Approve a sample of Saffron' }).press('Enter');
  await expect(dov.page).toHaveURL(/#deck\/saffron$/);
  const samples = dov.page.getByRole('region', { name: 'Samples of Saffron' });
  await samples.getByRole('button', { name: /^send a drawdown/ }).press('Enter');
  await expect(samples.getByLabel('To', { exact: true })).toHaveValue('Isolde Fennimarsh');
  await samples.getByRole('button', { name: 'Ask for it' }).press('Enter');
  await expect(samples.getByText('to be ordered and posted')).toBeVisible();
  await goTo(dov, 'samples');
  await expect(dov.page.getByRole('row', { name: /Saffron.*Isolde Fennimarsh.*Wheel Room, 4 walls/ })).toBeVisible();
  const [csv] = await Promise.all([
    dov.page.waitForEvent('download'),
    dov.page.getByRole('button', { name: 'CSV' }).press('Enter'),
  ]);
  expect(readFileSync(await csv.path(), 'utf8')).toContain('Saffron,TP 206,');
  await goTo(dov, 'deck/saffron');
  await samples.getByRole('button', { name: /^sent today/ }).press('Enter');
  await goTo(isolde, 'deck/saffron');
  const hers = isolde.page.getByRole('region', { name: 'Samples of Saffron' });
  // The artist cannot write the deck, and speaks for herself on what came by post.
  await expect(hers.getByRole('button', { name: /^send a drawdown/ })).toHaveCount(0);
  await hers.getByRole('button', { name: /^I have seen it/ }).press('Enter');
  await hers.getByLabel('Under which light').fill('studio light');
  await hers.getByLabel('Under which light').press('Enter');
  await expect(samples.getByText(/seen by Isolde Fennimarsh under studio light/)).toBeVisible();
  await hers.getByRole('button', { name: /^approve it/ }).press('Enter');
  await expect(samples.getByText(/approved by Isolde Fennimarsh/)).toBeVisible();
  await goTo(dov, 'waiting');
  await expect(dov.page.getByText('Approve a sample of Drab')).toBeVisible();
  await expect(dov.page.getByText('Approve a sample of Saffron')).toHaveCount(0);
  expect([...dov.errors, ...isolde.errors]).toEqual([]);
});

test('story: a paint typed under D50 is brought to D65 and says so, from the deck and from the drawer', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const { page } = dov;
  await goTo(dov, 'deck');
  await page.getByRole('button', { name: 'type a paint…' }).click();
  const form = page.getByRole('form', { name: 'A new paint' });
  await form.getByLabel('Name').fill('Dusk');
  for (const [label, value] of [
    ['L*', '30,5'],
    ['a*', '12'],
    ['b*', '−28'],
  ] as const) {
    await form.getByLabel(label, { exact: true }).fill(value);
  }
  await form.getByLabel('measured under').selectOption('D50/2°');
  await expect(form.getByText('Brought from D50/2° to D65/2° by CAT16.')).toBeVisible();
  await form.getByRole('button', { name: 'Put it in the deck' }).click();
  await expect(page).toHaveURL(/#deck\/[a-z0-9]+$/);
  await expect(page.getByText('Measured: L* 30.5 a* 12.0 b* −28.0, D50/2°')).toBeVisible();
  await goTo(dov, 'wall/wheel:head');
  await page
    .getByRole('button', { name: /^paint/i })
    .first()
    .click();
  await page.getByRole('link', { name: 'the whole deck' }).click();
  await expect(page).toHaveURL(/#deck\/saffron$/);
  expect(dov.errors).toEqual([]);
});
