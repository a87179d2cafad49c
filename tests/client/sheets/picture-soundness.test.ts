import { pictureFaultOf } from '@enfilade/client/sheets/picture-soundness';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';

const noisy = (): Sharp =>
  sharp({
    create: {
      width: 640,
      height: 480,
      channels: 3,
      background: '#405060',
      noise: { type: 'gaussian', mean: 90, sigma: 40 },
    },
  });
const KINDS: readonly (readonly [kind: string, bytes: () => Promise<Buffer>])[] = [
  ['JPEG', () => noisy().jpeg().toBuffer()],
  [
    'JPEG, progressive',
    () =>
      noisy()
        .jpeg({ progressive: true })
        .withExif({ IFD0: { Copyright: 'x' } })
        .toBuffer(),
  ],
  ['PNG', () => noisy().png().toBuffer()],
  ['WebP', () => noisy().webp().toBuffer()],
  ['WebP, lossless', () => noisy().webp({ lossless: true }).toBuffer()],
  ['WebP, with a profile', () => noisy().webp().withMetadata().toBuffer()],
];
const fault = (bytes: Uint8Array): Promise<string | null> => pictureFaultOf(new Blob([new Uint8Array(bytes)]));

describe('what is seen of a picture before it is sent', () => {
  test.each(KINDS)('story: a whole %s passes, cut short at any tenth it is damaged', async (_, make) => {
    const bytes = await make();
    expect(await fault(bytes)).toBeNull();
    for (let tenth = 1; tenth < 10; tenth += 1) {
      expect(await fault(bytes.subarray(0, Math.floor((bytes.length * tenth) / 10)))).toMatch(/^is damaged/);
    }
  });

  test('story: bytes behind a whole picture do it no harm', async () => {
    const jpeg = await noisy().jpeg().toBuffer();
    expect(await fault(Buffer.concat([jpeg, Buffer.alloc(200_000)]))).toBeNull();
  });

  test('story: 300 megapixels are told from the header alone, in each kind', async () => {
    // The picture’s own size is put into the header that says it.
    const png = await noisy().png().toBuffer();
    png.writeUInt32BE(20_000, 16);
    png.writeUInt32BE(15_000, 20);
    expect(await fault(png)).toMatch(/^has 300 megapixels \(20000 × 15000\); at most 100/);
    const jpeg = await noisy().jpeg().toBuffer();
    const frame = jpeg.indexOf(Buffer.from([0xff, 0xc0]));
    jpeg.writeUInt16BE(15_000, frame + 5);
    jpeg.writeUInt16BE(20_000, frame + 7);
    expect(await fault(jpeg)).toMatch(/^has 300 megapixels \(20000 × 15000\)/);
    const webp = await noisy().webp({ lossless: true }).toBuffer();
    webp.writeUInt32LE((16_383 & 0x3fff) | (16_383 << 14), 21);
    expect(await fault(webp)).toMatch(/^has 268 megapixels \(16384 × 16384\)/);
  });

  test('story: nothing at all, and what is no picture, are told for what they are', async () => {
    expect(await fault(Buffer.alloc(0))).toBe('is empty: 0 bytes.');
    expect(await fault(Buffer.from('GIF89a, but of words'))).toBe('is not a JPEG, PNG, WebP or TIFF picture.');
  });
});
