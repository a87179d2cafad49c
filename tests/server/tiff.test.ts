import type { ImageFacts, Refusal } from '@enfilade/shared/protocol';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { scene } from './scene.ts';

const plain = (background: string) => sharp({ create: { width: 90, height: 60, channels: 3, background } });

test.each(['lzw', 'deflate', 'jpeg', 'none'] as const)(
  'story: a TIFF packed by %s is taken as any other picture',
  async (compression) => {
    const here = await scene();
    const seat = await here.seat('registrar');
    const bytes = await plain('#a03020').tiff({ compression }).toBuffer();
    const answer = await here.get(seat, 'images?name=1902.7.tif', { method: 'POST', body: new Uint8Array(bytes) });
    const facts = (await answer.json()) as ImageFacts;
    expect([answer.status, facts.widthPx, facts.heightPx, facts.pages]).toEqual([200, 90, 60, undefined]);
    expect((await here.get(seat, `images/${facts.sha256}/256.webp`)).status).toBe(200);
  },
);

test('story: of a TIFF with several pictures the first is taken, and how many there are is told', async () => {
  const here = await scene();
  const seat = await here.seat('registrar');
  const pages = [await plain('#c8281e').png().toBuffer(), await plain('#1428be').png().toBuffer()];
  const bytes = await sharp(pages, { join: { animated: true } })
    .tiff()
    .toBuffer();
  const answer = await here.get(seat, 'images?name=two.tif', { method: 'POST', body: new Uint8Array(bytes) });
  const facts = (await answer.json()) as ImageFacts;
  expect([facts.widthPx, facts.heightPx, facts.pages]).toEqual([90, 60, 2]);
  const shown = await (await here.get(seat, `images/${facts.sha256}/256.webp`)).arrayBuffer();
  const { dominant } = await sharp(shown).stats();
  expect(dominant.r).toBeGreaterThan(dominant.b);
});

test('story: a TIFF that breaks off is refused with a sentence', async () => {
  const here = await scene();
  const seat = await here.seat('registrar');
  const bytes = await plain('#a03020').tiff({ compression: 'none' }).toBuffer();
  const half = new Uint8Array(bytes.subarray(0, 6000));
  const answer = await here.get(seat, 'images?name=half.tif', { method: 'POST', body: half });
  expect([answer.status, ((await answer.json()) as Refusal).what]).toEqual([
    422,
    expect.stringMatching(/“half.tif” cannot be read/),
  ]);
});
