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
  await page.getByRole('button', { name: 'Not for every seat' }).click();
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

test('story: a review is answered, left and come back to; pictures are matched by hand, a set’s by piece, bad ones named', async ({
  museum,
  browser,
}) => {
  const { page, errors } = await museum.enter(browser, 'curator');
  await page.getByRole('link', { name: 'Bring in' }).click();
  const rows = ['Accession No,Title,Dimensions', 'ZB.1–5,Blocks,20 x 20 cm', 'ZB.9,Panel,30 x 40', 'ZB.10,Jug,'];
  const files = page.locator('input[type=file]');
  await files.first().setInputFiles({ name: 'blocks.csv', mimeType: 'text/csv', buffer: Buffer.from(rows.join('\n')) });
  const understood = (words: string) => expect(page.getByRole('heading', { name: words })).toBeVisible();
  await understood('1 of 3 understood');
  await page.getByRole('button', { name: 'cm', exact: true }).last().click();
  await understood('2 of 3 understood');
  const red = await plain('#a03020');
  await files.last().setInputFiles([
    { name: 'ZB_1.png', mimeType: 'image/png', buffer: red },
    { name: 'ZB_3.png', mimeType: 'image/png', buffer: await plain('#203040') },
    { name: 'DSC_77.png', mimeType: 'image/png', buffer: await plain('#aaaa20') },
    { name: 'DSC_78.png', mimeType: 'image/png', buffer: await plain('#20aaaa') },
    { name: 'ZB.9.png', mimeType: 'image/png', buffer: red.subarray(0, red.length - 20) },
    { name: 'ZB.10.png', mimeType: 'image/png', buffer: Buffer.alloc(0) },
  ]);
  const damaged = page.getByRole('status').filter({ hasText: '2 not taken' });
  await expect(damaged).toContainText('ZB.9.png is damaged: it breaks off');
  await expect(damaged).toContainText('ZB.10.png is empty: 0 bytes.');

  // Elsewhere and back: nothing of it is lost, and the window asks before it closes.
  await page.getByRole('link', { name: 'Rooms' }).click();
  await page.getByRole('link', { name: 'Bring in' }).click();
  await understood('2 of 3 understood');
  const typed = page.getByLabel(/^Row 4, .*or its size/);
  await typed.fill('12 x 14');
  await typed.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'a unit' })).toBeVisible();
  await typed.fill('12 x 14 x 14 cm');
  await typed.press('Enter');
  await understood('3 of 3 understood');
  const which = page.getByLabel('Which object is DSC_77.png?');
  await which.fill('zb.1–5');
  await which.press('Enter');
  const piece = page.getByLabel(/^piece that DSC_77\.png shows/);
  await piece.fill('2');
  await piece.press('Enter');
  const closing = new Promise<string>((done) => {
    page.once('dialog', (dialog) => {
      done(dialog.type());
      void dialog.dismiss();
    });
  });
  await page.close({ runBeforeUnload: true });
  expect(await closing).toBe('beforeunload');

  await page.getByRole('button', { name: /^Bring in 3/ }).click();
  await understood('3 records are in');
  await expect(page.getByText('One picture is left. Say which')).toBeVisible();
  const later = page.getByLabel('Which object is DSC_78.png?');
  await later.fill('ZB.9');
  await later.press('Enter');
  await page.getByRole('button', { name: /^Bring in 1/ }).click();
  await understood('1 record is in');

  const blocks = page.getByRole('button', { name: /^Blocks.*ZB\.1–5/ });
  await page.getByRole('link', { name: 'Layout floor' }).click();
  await page.getByRole('searchbox').fill('zb.');
  await expect(blocks.first()).toBeVisible();
  expect(errors).toEqual([]);
});
