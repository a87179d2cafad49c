import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { assertTakeable, kindOf } from '@enfilade/server/picture-ingest';
import { ATLAS_CELL_PX, ATLAS_COLUMNS, type ImageFacts, type Refusal } from '@enfilade/shared/protocol';
import sharp, { type Metadata } from 'sharp';
import { expect, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

const RED = { r: 200, g: 30, b: 20 };
const BLUE = { r: 20, g: 40, b: 190 };

/** Left half red, right half blue; as a picture of that format. */
function halves(width: number, height: number): ReturnType<typeof sharp> {
  const right = { width: Math.floor(width / 2), height, channels: 3 as const, background: BLUE };
  return sharp({ create: { width, height, channels: 3, background: RED } }).composite([
    { input: { create: right }, left: Math.ceil(width / 2), top: 0 },
  ]);
}

async function send(
  here: Scene,
  seat: TakenSeat,
  bytes: Uint8Array,
  name: string,
): Promise<[number, ImageFacts & Refusal]> {
  const answer = await here.get(seat, `images?name=${encodeURIComponent(name)}`, {
    method: 'POST',
    body: bytes as Uint8Array<ArrayBuffer>,
  });
  return [answer.status, (await answer.json()) as ImageFacts & Refusal];
}

async function served(here: Scene, seat: TakenSeat, path: string): Promise<Buffer> {
  const answer = await here.get(seat, `images/${path}`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('image/webp');
  expect(answer.headers.get('cache-control')).toMatch(/immutable/);
  return Buffer.from(await answer.arrayBuffer());
}

async function pixelAt(bytes: Buffer, x: number, y: number): Promise<number[]> {
  const { data, info } = await sharp(bytes).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const at = (y * info.width + x) * info.channels;
  return [...data.subarray(at, at + 4)];
}

const isRed = ([r = 0, , b = 0]: number[]): boolean => r > 150 && b < 90;
const isBlue = ([r = 0, , b = 0]: number[]): boolean => b > 140 && r < 90;

/** A PNG whose header says so many pixels, though hardly a byte follows. */
function pngClaiming(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(Buffer.alloc(100))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

test('story: a photograph taken sideways stands upright, and what is served says nothing of where it was taken', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const sideways = await halves(300, 200)
    .jpeg({ quality: 95 })
    .withExif({
      IFD0: { Artist: 'SECRET-ARTIST', Make: 'SECRET-MAKE' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
    })
    .withMetadata({ orientation: 6 })
    .toBuffer();
  expect(sideways.toString('latin1')).toContain('SECRET-MAKE');
  expect((await sharp(sideways).metadata()).orientation).toBe(6);
  const [status, facts] = await send(here, seat, sideways, 'L.1998.7.jpg');
  expect(status).toBe(200);
  expect(facts.sha256).toBe(createHash('sha256').update(sideways).digest('hex'));
  expect([facts.widthPx, facts.heightPx]).toEqual([200, 300]);
  // EXIF 2.3, orientation 6: row 0 is the right-hand side, so the left half comes to lie on top.
  for (const size of ['256', '1024']) {
    const bytes = await served(here, seat, `${facts.sha256}/${size}.webp`);
    const about: Metadata = await sharp(bytes).metadata();
    expect([about.width, about.height].map((px) => px <= Number(size))).toEqual([true, true]);
    expect(about.width < about.height).toBe(true);
    expect([about.exif, about.icc, about.xmp, about.iptc]).toEqual([undefined, undefined, undefined, undefined]);
    expect(bytes.toString('latin1')).not.toContain('SECRET');
    expect(isRed(await pixelAt(bytes, Math.trunc(about.width / 2), 20))).toBe(true);
    expect(isBlue(await pixelAt(bytes, Math.trunc(about.width / 2), about.height - 20))).toBe(true);
  }
  const kept = await readFile(here.server.images.originalOf(facts.sha256) as string);
  expect(kept.equals(sideways)).toBe(true);
});

test('reference: a Display P3 picture is brought to sRGB (lcms2 by way of sharp, both ways)', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  // Inside sRGB, so that there and back is the same colour; its numbers in P3 are others.
  const colour = { r: 180, g: 60, b: 40 };
  const p3 = await sharp({ create: { width: 64, height: 64, channels: 3, background: colour } })
    .withIccProfile('p3')
    .png()
    .toBuffer();
  const raw = await sharp(p3, { ignoreIcc: true } as object)
    .raw()
    .toBuffer();
  const stored = [...raw.subarray(0, 3)];
  const differs = Math.hypot(...stored.map((v, i) => v - (Object.values(colour)[i] as number)));
  expect(differs).toBeGreaterThan(10);
  const [, facts] = await send(here, seat, p3, 'p3.png');
  const [r, g, b] = await pixelAt(await served(here, seat, `${facts.sha256}/256.webp`), 30, 30);
  for (const [is, was] of [
    [r, colour.r],
    [g, colour.g],
    [b, colour.b],
  ] as const) {
    expect(Math.abs((is as number) - was)).toBeLessThanOrEqual(4);
  }
});

test('story: what cannot be taken is refused with a sentence that names the file, and the rest goes in', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const whole = await halves(400, 300).jpeg().toBuffer();
  const wholePng = await halves(400, 300).png().toBuffer();
  const wholeWebp = await halves(400, 300).webp({ lossless: true }).toBuffer();
  const cases: readonly [string, Uint8Array, RegExp][] = [
    ['empty.jpg', new Uint8Array(0), /empty: 0 bytes/],
    ['cut.jpg', whole.subarray(0, whole.length >> 1), /damaged or incomplete/],
    ['cut.png', wholePng.subarray(0, wholePng.length - 200), /damaged or incomplete/],
    ['cut.webp', wholeWebp.subarray(0, wholeWebp.length >> 1), /damaged or incomplete/],
    ['head-only.jpg', whole.subarray(0, 20), /damaged or incomplete/],
    ['huge.png', pngClaiming(20_000, 15_000), /300 megapixels \(20000 × 15000\); at most 100 are taken/],
    [
      'drawing.svg',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="5" height="5"/>'),
      /not a JPEG, PNG, WebP or TIFF/,
    ],
    ['moving.jpg', await halves(20, 20).gif().toBuffer(), /not a JPEG, PNG, WebP or TIFF/],
    ['list.png', Buffer.from('number,title\n1,Mangle\n'), /not a JPEG, PNG, WebP or TIFF/],
  ];
  for (const [name, bytes, why] of cases) {
    const [status, refused] = await send(here, seat, bytes, name);
    expect([name, status]).toEqual([name, 422]);
    expect(refused.what).toMatch(why);
    expect(refused.what).toContain(name);
    expect(refused.where).toBe(name);
  }
  expect((await send(here, seat, whole, 'whole.jpg'))[0]).toBe(200);
  expect(here.server.images.facts()).toHaveLength(1);
});

test('law: 300 megapixels are refused from the header, before anything is decoded', async () => {
  const here = await scene();
  const path = join(here.dataDirectory, 'huge.png');
  await writeFile(path, pngClaiming(20_000, 15_000));
  const before = process.memoryUsage().rss;
  await expect(assertTakeable(path, 'huge.png', 100_000_000)).rejects.toThrow(/300 megapixels/);
  expect(process.memoryUsage().rss - before).toBeLessThan(100 << 20);
});

test('law: the same bytes twice are the same picture, at once or after a restart', async () => {
  const here = await scene();
  const seat = await here.seat('registrar');
  const bytes = await halves(80, 60).png().toBuffer();
  const [[, a], [, b]] = await Promise.all([send(here, seat, bytes, 'a.png'), send(here, seat, bytes, 'b.png')]);
  expect(b).toEqual(a);
  await here.reopen();
  expect((await send(here, seat, bytes, 'c.png'))[1]).toEqual(a);
  expect(await (await here.get(seat, 'images/facts')).json()).toEqual([a]);
  expect(a.body.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 3);
  expect(a.opaqueShare).toBe(1);
});

test('law: clear parts stay clear and are in no palette; a picture is never enlarged', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const clear = { width: 120, height: 80, channels: 4 as const, background: { r: 0, g: 255, b: 0, alpha: 0 } };
  const plate = { create: { width: 60, height: 40, channels: 4 as const, background: { ...RED, alpha: 1 } } };
  const bytes = await sharp({ create: clear })
    .composite([{ input: plate, left: 30, top: 20 }])
    .png()
    .toBuffer();
  const [, facts] = await send(here, seat, bytes, 'cut-out.png');
  expect(facts.opaqueShare).toBeCloseTo(0.25, 2);
  // The outline is that of the plate, 60 × 40, and not of the picture.
  expect(facts.silhouette).toMatchObject({ aspect: 1.5, fill: 1 });
  for (const { lab } of [...facts.body, ...facts.edge]) expect(lab.a).toBeGreaterThan(20);
  const small = await served(here, seat, `${facts.sha256}/1024.webp`);
  const about = await sharp(small).metadata();
  expect([about.width, about.height, about.hasAlpha]).toEqual([120, 80, true]);
  expect((await pixelAt(small, 5, 5))[3]).toBe(0);
  expect((await pixelAt(small, 60, 40))[3]).toBe(255);
});

test('law: grey, 16-bit and CMYK pictures come in as colour like the rest', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const flat = sharp({ create: { width: 40, height: 40, channels: 3, background: { r: 128, g: 128, b: 128 } } });
  // A press profile cannot hit a screen's grey to the number: 20 of 255 is the way there and back through one.
  const kinds: readonly [string, Buffer, number][] = [
    ['grey.png', await flat.clone().toColourspace('b-w').png().toBuffer(), 3],
    ['deep.png', await flat.clone().toColourspace('rgb16').png().toBuffer(), 3],
    ['press.jpg', await flat.clone().toColourspace('cmyk').jpeg().toBuffer(), 20],
  ];
  for (const [name, bytes, off] of kinds) {
    const [status, facts] = await send(here, seat, bytes, name);
    expect([name, status]).toEqual([name, 200]);
    const [r = 0, g = 0, b = 0, alpha] = await pixelAt(await served(here, seat, `${facts.sha256}/256.webp`), 20, 20);
    expect(alpha).toBe(255);
    expect(Math.max(Math.abs(r - 128), Math.abs(g - 128), Math.abs(b - 128))).toBeLessThanOrEqual(off);
  }
});

test('law: each miniature sits in its own cell of the atlas, and a page of n cells never changes', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const colours = Array.from({ length: 18 }, (_, i) => ({ r: 10 + i * 13, g: 250 - i * 13, b: (i * 37) % 256 }));
  const facts: ImageFacts[] = [];
  for (const background of colours) {
    const bytes = await sharp({ create: { width: 90, height: 90, channels: 3, background } })
      .png()
      .toBuffer();
    facts.push((await send(here, seat, bytes, 'x.png'))[1]);
  }
  expect(facts.map(({ cell }) => cell)).toEqual(colours.map((_, index) => ({ page: 0, index })));
  const first = await served(here, seat, 'atlas/0.webp?cells=3');
  const whole = await served(here, seat, 'atlas/0.webp?cells=18');
  for (const { cell } of facts) {
    const { r, g, b } = colours[cell.index] as (typeof colours)[number];
    const x = (cell.index % ATLAS_COLUMNS) * ATLAS_CELL_PX + 32;
    const y = Math.floor(cell.index / ATLAS_COLUMNS) * ATLAS_CELL_PX + 32;
    const [pr = 0, pg = 0, pb = 0, alpha] = await pixelAt(whole, x, y);
    expect(alpha).toBe(255);
    expect(Math.hypot(pr - r, pg - g, pb - b)).toBeLessThan(16);
    expect((await pixelAt(first, x, y))[3]).toBe(cell.index < 3 ? 255 : 0);
  }
  expect((await served(here, seat, 'atlas/0.webp?cells=18')).equals(whole)).toBe(true);
  for (const path of [
    'atlas/0.webp?cells=19',
    'atlas/0.webp?cells=0',
    'atlas/1.webp?cells=1',
    'atlas/-1.webp?cells=1',
    'atlas/0.webp',
    '..%2f..%2fstore.sqlite/256.webp',
  ]) {
    expect((await here.get(seat, `images/${path}`)).status).toBe(404);
  }
});

test('story: pictures are brought in by whoever writes records, seen by every seat, and by nobody without one', async () => {
  const here = await scene();
  const bytes = await halves(40, 30).webp().toBuffer();
  const [, facts] = await send(here, await here.seat('curator'), bytes, 'a.webp');
  for (const role of ['guest artist', 'viewer', 'preparator'] as const) {
    const seat = await here.seat(role);
    expect((await send(here, seat, bytes, 'a.webp'))[0]).toBe(403);
    await served(here, seat, `${facts.sha256}/256.webp`);
  }
  expect((await fetch(`${here.address}/seat/none/images/${facts.sha256}/256.webp`)).status).toBe(401);
});

test('law: colours made by an earlier engine are made again at the next start, to what they would be today', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const [, facts] = await send(here, seat, await halves(200, 100).png().toBuffer(), 'a.png');
  const { sha256, cell, ...palette } = facts;
  await here.server.store.query
    .updateTable('images')
    .set({ engine: 'earlier', facts: JSON.stringify({ ...palette, engine: 'earlier', body: [] }) })
    .where('sha256', '=', sha256)
    .execute();
  await here.reopen();
  await expect.poll(() => here.server.images.factsOf(sha256)).toEqual(facts);
  expect(cell).toEqual({ page: 0, index: 0 });
});

test('reference: the first bytes of JPEG, PNG, WebP and TIFF (ISO 10918-1, PNG 3rd edition, RFC 9649, TIFF 6.0), and of what is none', () => {
  expect(kindOf(Uint8Array.of(0xff, 0xd8, 0xff, 0xe0))).toBe('jpeg');
  expect(kindOf(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a))).toBe('png');
  expect(kindOf(Buffer.from('RIFF\0\0\0\0WEBPVP8 '))).toBe('webp');
  for (const head of ['II*\0', 'MM\0*']) expect(kindOf(Buffer.from(head, 'latin1'))).toBe('tiff');
  for (const head of ['RIFF\0\0\0\0WAVEfmt ', 'GIF89a', '<?xml', '\0\0\0\x20ftypavif', 'II,\0', 'II\0*']) {
    expect(kindOf(Buffer.from(head, 'latin1'))).toBeNull();
  }
});
