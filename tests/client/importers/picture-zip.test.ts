import { unpackPictures, ZIP_AT_MOST, type ZipLeft } from '@enfilade/client/importers/picture-zip';
import { strToU8, type Zippable, zipSync } from 'fflate';
import { expect, test } from 'vitest';

async function unpacked(
  zip: Uint8Array,
): Promise<{ readonly given: Record<string, number>; readonly left: readonly ZipLeft[] }> {
  const given: Record<string, number> = {};
  const left = await unpackPictures(new Blob([new Uint8Array(zip)]), {
    tell: () => {},
    give: (name, bytes) => {
      given[name] = bytes.length;
    },
  });
  return { given, left };
}

const picture = (bytes: number): Uint8Array => Uint8Array.from({ length: bytes }, (_, n) => (n * 7919) % 251);

test('story: pictures come out of their folders; what climbs, and what is none, stays in and is told', async () => {
  const files: Zippable = {
    'press/1902.7_01.jpg': picture(3000),
    'press/1902.7_02.TIF': [picture(2000), { level: 0 }],
    'list.csv': strToU8('Number,Title'),
    '../../1902.8.jpg': picture(10),
    '/etc/1902.9.jpg': picture(10),
    'C:\\1902.10.jpg': picture(10),
    'press/..\\1902.11.jpg': picture(10),
    'run.exe': picture(10),
    '__MACOSX/press/._1902.7_01.jpg': picture(10),
    'press/.DS_Store': picture(10),
  };
  const { given, left } = await unpacked(zipSync(files));
  expect(given).toEqual({ '1902.7_01.jpg': 3000, '1902.7_02.TIF': 2000, 'list.csv': 12 });
  expect(left.map(({ name, what }) => [name, /climbs/.test(what)])).toEqual([
    ['../../1902.8.jpg', true],
    ['/etc/1902.9.jpg', true],
    ['C:\\1902.10.jpg', true],
    ['press/..\\1902.11.jpg', true],
    ['run.exe', false],
  ]);
});

test('law: what unpacks to a hundred times its size is left in; the rest comes out', async () => {
  const { given, left } = await unpacked(zipSync({ 'bomb.png': new Uint8Array(30_000_000), 'a.png': picture(500) }));
  expect(given).toEqual({ 'a.png': 500 });
  expect(left[0]).toMatchObject({
    name: 'bomb.png',
    what: expect.stringMatching(/times its size, as no photograph does/),
  });
});

test('law: an entry never unpacks to more than the zip said it would', async () => {
  const zip = zipSync({ 'a.png': new Uint8Array(900_000) });
  // It says 1,000 bytes in its local header and in the directory (APPNOTE 4.3.7, 4.3.12).
  const view = new DataView(zip.buffer);
  view.setUint32(22, 1000, true);
  view.setUint32(Buffer.from(zip).lastIndexOf(Buffer.from([0x50, 0x4b, 1, 2])) + 24, 1000, true);
  expect(Object.values((await unpacked(zip)).given).every((bytes) => bytes <= 1000)).toBe(true);
});

test('law: too many entries, too many bytes, and what is no zip: refused whole, with sentences', async () => {
  const many = Object.fromEntries(
    Array.from({ length: ZIP_AT_MOST.entries + 1 }, (_, n) => [`${n}.png`, new Uint8Array()]),
  );
  await expect(unpacked(zipSync(many, { level: 0 }))).rejects.toThrow(/10001 files are packed in it/);
  await expect(unpacked(strToU8('PK no zip'))).rejects.toThrow(/damaged or incomplete/);
  const big = zipSync(Object.fromEntries(Array.from({ length: 40 }, (_, n) => [`${n}.png`, picture(400)])), {
    level: 0,
  });
  const view = new DataView(big.buffer);
  for (
    let at = Buffer.from(big).indexOf('PK\u0001\u0002', 0, 'latin1');
    at >= 0;
    at = Buffer.from(big).indexOf('PK\u0001\u0002', at + 4, 'latin1')
  ) {
    view.setUint32(at + 20, 100 << 20, true);
    view.setUint32(at + 24, 100 << 20, true);
  }
  await expect(unpacked(big)).rejects.toThrow(/unpacks to 4\.2 GB/);
});
