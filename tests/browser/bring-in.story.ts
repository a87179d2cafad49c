import sharp from 'sharp';
import { expect, test } from './museum.ts';

const plain = (background: string): Promise<Buffer> =>
  sharp({ create: { width: 300, height: 200, channels: 3, background } })
    .png()
    .toBuffer();

test('story: a checklist and pictures, some of them bad, go in; the work is hung and reads; one undo takes all back', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  // What the artist's browser is ever sent, to look for the canary in.
  const heard: string[] = [];
  isolde.page.on('websocket', (socket) => socket.on('framereceived', ({ payload }) => heard.push(payload.toString())));
  isolde.page.on('response', (response) => {
    if (/json|text|html/.test(response.headers()['content-type'] ?? '')) {
      response.text().then(
        (text) => heard.push(text),
        () => {},
      );
    }
  });
  await isolde.page.reload();

  await page.getByRole('link', { name: 'Bring in' }).click();
  const rows = [
    'Accession No;Title;Dimensions;Insurance Value;Weight',
    'ZZ.1;Weir panel;40 x 60 cm;CANARY 9,000;2 kg',
    'ZZ.2;"Two\nlines";30 x 40;;',
    'ZZ.3;Ragged;20 x 20 cm',
  ];
  const files = page.locator('input[type=file]');
  await files
    .first()
    .setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(`\ufeff${rows.join('\r\n')}\r\n`) });
  await expect(page.getByRole('heading', { name: '1 of 3 understood' })).toBeVisible();
  await expect(page.getByText('No unit. Not guessed.').first()).toBeVisible();
  const green = await plain('#005850');
  await files.last().setInputFiles([
    { name: 'ZZ.1.png', mimeType: 'image/png', buffer: green },
    { name: 'ZZ_2.png', mimeType: 'image/png', buffer: green.subarray(0, 200) },
    { name: 'ZZ.3.png', mimeType: 'image/png', buffer: Buffer.alloc(0) },
  ]);
  await page.getByRole('button', { name: /^Bring in 3/ }).click();
  await expect(page.getByRole('heading', { name: '3 records are in' })).toBeVisible({ timeout: 30_000 });
  await expect(page.getByRole('listitem').filter({ hasText: 'ZZ_2.png' }).first()).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'ZZ.3.png' }).first()).toBeVisible();

  // On the wall it reads by its own picture: the wall's own green, lost.
  await page.getByRole('button', { name: /^Dye House, west wall/ }).click();
  await page.getByRole('searchbox').fill('weir panel');
  await page.getByRole('button', { name: /^Weir panel, ZZ\.1, 40 × 60/ }).press('Enter');
  await expect(page.getByText('lost on this wall')).toBeVisible();
  await page.getByRole('button', { name: 'record', exact: true }).click();
  const holdsValue = (): Promise<boolean> =>
    page.evaluate(() =>
      [
        document.body.textContent,
        ...[...document.querySelectorAll('input, textarea')].map((field) => (field as HTMLInputElement).value),
      ]
        .join(' ')
        .includes('CANARY 9,000'),
    );
  await expect.poll(holdsValue).toBe(true);

  // The artist's browser has the record, and never the value.
  await isolde.page.getByRole('searchbox').fill('zz.2');
  await expect(isolde.page.getByRole('button', { name: /ZZ\.2/ })).toBeVisible();
  expect(heard.length).toBeGreaterThan(3);
  expect(heard.join('\n')).not.toContain('CANARY');

  await page.getByRole('button', { name: /^Undo: / }).click();
  await page.getByRole('button', { name: /^Undo: / }).click();
  await expect(isolde.page.getByRole('button', { name: /ZZ\.2/ })).toHaveCount(0);
  expect(errors).toEqual([]);
});
