import { readFile } from 'node:fs/promises';
import * as XLSX from '@e965/xlsx';
import { zipSync } from 'fflate';
import sharp from 'sharp';
import { messyXlsx } from '../client/importers/sheets.ts';
import { expect, test } from './museum.ts';

const plain = (background: string) => sharp({ create: { width: 300, height: 200, channels: 3, background } });

test('story: a messy workbook and a zip of pictures come in by the review, each value beside its cell; records of the museum’s own go into the collection; the checklist goes out again', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'registrar');
  await page.getByRole('link', { name: 'Bring in' }).click();
  const files = page.locator('input[type=file]');
  const mimeType = 'application/octet-stream';
  await files.first().setInputFiles({ name: 'loans.xlsx', mimeType, buffer: Buffer.from(messyXlsx()) });
  await expect(page.getByRole('heading', { name: '1 of 3 understood' })).toBeVisible();
  await expect(page.getByText('Sheet “Withdrawn”: It is hidden in the file and was not read')).toBeVisible();
  await expect(page.getByText(/Row 1 stands above the headings.*Slow Water: loans/)).toBeVisible();
  await expect(page.getByText(/has made the date 5 December 1987 of it\. Put back/)).toBeVisible();
  await expect(page.getByText('Sheet “Loans”, A6').first()).toBeVisible();
  await page.getByRole('button', { name: '6, 1987.12.5 in the source' }).click();
  const cells = page.getByRole('region', { name: '1987.12.5 in the source' });
  await expect(cells.getByRole('row', { name: /Sheet “Loans”, B6.*Title.*Eel trap/ })).toBeVisible();
  await page.getByLabel('Sheet read').selectOption('Withdrawn');
  await expect(page.getByRole('heading', { name: /of 1 understood/ })).toBeVisible();
  await page.getByLabel('Sheet read').selectOption('Loans');
  await expect(page.getByRole('heading', { name: '1 of 3 understood' })).toBeVisible();

  const zip = zipSync({
    'press/1987.12.4.png': new Uint8Array(await plain('#a03020').png().toBuffer()),
    'press/1987.12.5.tif': new Uint8Array(await plain('#203040').tiff().toBuffer()),
    '../../1987.12.6.png': new Uint8Array(await plain('#aaaa20').png().toBuffer()),
  });
  await files.last().setInputFiles({ name: 'pictures.zip', mimeType, buffer: Buffer.from(zip) });
  await expect(page.getByText(/“\.\.\/\.\.\/1987\.12\.6\.png” its path climbs/)).toBeVisible();
  await expect(page.getByText('2 of 2 found their object')).toBeVisible();
  await page.getByRole('button', { name: /^Bring in 3/ }).click();
  await expect(page.getByRole('heading', { name: '3 records are in' })).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText('3 new, 0 brought up to date, 2 pictures.')).toBeVisible();

  // Its own records, by the same review: the rest is not held up by a row without a number or one that is lent.
  await page.getByRole('button', { name: 'Bring in more' }).click();
  await page.getByRole('radio', { name: /^into the collection/ }).check();
  const store = [
    'Accession No;Title;Insurance Value;Last Exhibited;Owner',
    'OM 1931.40.1;Eel trap, two throats;£120;1987;',
    ';Mallet without a number;;;',
    'OM 1931.40.2;Day book of the dye house;;never;',
    'L.77;View of the weir;;;The Lower Weir Conservancy',
  ];
  await files.first().setInputFiles({ name: 'store.csv', mimeType, buffer: Buffer.from(store.join('\n')) });
  await expect(page.getByRole('heading', { name: '2 of 4 go into the collection' })).toBeVisible();
  await expect(page.getByRole('row', { name: /row 3.*Mallet without a number.*No object number/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /L\.77 is lent by The Lower Weir Conservancy/ })).toBeVisible();
  const photograph = {
    name: 'OM_1931_40_2.png',
    mimeType: 'image/png',
    buffer: await plain('#445566').png().toBuffer(),
  };
  await files.last().setInputFiles(photograph);
  await expect(page.getByText('1 of 1 found its record')).toBeVisible();
  await page.getByRole('button', { name: 'Bring 2 into the collection' }).click();
  await expect(page.getByRole('heading', { name: '2 rows are in the collection' })).toBeVisible();
  await page.getByRole('link', { name: 'Look at the collection' }).click();
  await page.getByLabel('Words, or a number').fill('1931.40');
  const found = page.getByRole('region', { name: 'Found' }).getByRole('listitem');
  await expect(
    found.filter({ hasText: 'Day book of the dye house' }).getByRole('link', { name: /^like it/ }),
  ).toBeVisible();
  await page.getByRole('button', { name: 'without', exact: true }).click();
  await found.filter({ hasText: 'last shown 1987' }).getByRole('button', { name: 'yes' }).click();
  await page.getByRole('link', { name: 'To be photographed' }).click();
  const wanted = page.getByRole('region', { name: 'Wanted from the collection' });
  await wanted.getByLabel('Photograph Eel trap, two throats').setInputFiles({ ...photograph, name: 'IMG_1.png' });
  await expect(wanted).toHaveCount(0);
  await page.getByRole('link', { name: 'Brought in' }).click();
  await page.getByRole('button', { name: /^Take it back: store\.csv/ }).click();
  await expect(page.getByText('store.csv is taken back: 1 record is as it was. 1 stays: changed since.')).toBeVisible();

  await page.getByRole('link', { name: 'Take out' }).click();
  await page.getByLabel(/^with values, prices/).check();
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Checklist, XLSX' }).click();
  const book = XLSX.read(await readFile(await (await coming).path()));
  const rows = XLSX.utils.sheet_to_json<Record<string, string>>(book.Sheets.Checklist as XLSX.WorkSheet);
  expect(rows.find((row) => row.Title === 'Eel trap')?.['Accession No']).toBe('1987.12.5');
  expect(rows.find((row) => row.Title === 'Weir panel')?.['Insurance Value']).toBe('£9,000');

  // The artist takes the checklist out too, and never a value with it.
  const isolde = await museum.enter(browser, 'guest artist');
  await isolde.page.getByRole('link', { name: 'Take out' }).click();
  await expect(isolde.page.getByLabel(/^with values, prices/)).toHaveCount(0);
  const out = isolde.page.waitForEvent('download');
  await isolde.page.getByRole('button', { name: 'Checklist, CSV' }).click();
  const csv = await readFile(await (await out).path(), 'utf8');
  expect(csv).toContain('Eel trap');
  expect(csv).not.toMatch(/9,000|Insurance/);
  expect([...errors, ...isolde.errors]).toEqual([]);
});
