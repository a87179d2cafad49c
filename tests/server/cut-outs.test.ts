import { readFile } from 'node:fs/promises';
import { CHECKLIST } from '@enfilade/server/demo/checklist';
import { pngOf } from '@enfilade/server/demo/files';
import { onStudioGround } from '@enfilade/server/demo/studio-ground';
import { cutPicture } from '@enfilade/shared/commands';
import { pictureKeyOf } from '@enfilade/shared/picture-cuts';
import type { ImageFacts } from '@enfilade/shared/protocol';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

/** Things with plain outlines, round ones, openwork, pale and dark ones. */
const SAMPLE = ['mould-3', 'mould-15', 'level-7', 'slide-7', 'book-7', 'oil-2', 'mark-3', 'trap-1', 'dial-7', 'tile-6'];

async function drawnOf(id: string): Promise<Buffer> {
  const record = CHECKLIST.find((one) => one.id === id);
  if (record === undefined) throw new Error(`no record ${id}`);
  return pngOf(record);
}

async function send(here: Scene, seat: TakenSeat, bytes: Uint8Array): Promise<ImageFacts> {
  const answer = await here.get(seat, 'images?name=a.png', { method: 'POST', body: bytes as Uint8Array<ArrayBuffer> });
  expect(answer.status).toBe(200);
  return (await answer.json()) as ImageFacts;
}

async function served(here: Scene, seat: TakenSeat, path: string): Promise<Buffer> {
  const answer = await here.get(seat, `images/${path}`);
  expect([path, answer.status]).toEqual([path, 200]);
  return Buffer.from(await answer.arrayBuffer());
}

async function alphaOf(bytes: Buffer, width: number, height: number): Promise<Uint8Array> {
  const { data, info } = await sharp(bytes)
    .ensureAlpha()
    .resize(width, height, { fit: 'fill' })
    .raw()
    .toBuffer({ resolveWithObject: true });
  return Uint8Array.from({ length: width * height }, (_, i) => data[i * info.channels + 3] ?? 0);
}

async function opaquePartOf(bytes: Buffer): Promise<{ left: number; top: number; width: number; height: number }> {
  const { width, height } = await sharp(bytes).metadata();
  const alpha = await alphaOf(bytes, width, height);
  const xs = [...alpha.keys()].filter((i) => (alpha[i] ?? 0) >= 128).map((i) => i % width);
  const ys = [...alpha.keys()].filter((i) => (alpha[i] ?? 0) >= 128).map((i) => Math.floor(i / width));
  const least = (values: number[]) => values.reduce((a, b) => Math.min(a, b));
  const most = (values: number[]) => values.reduce((a, b) => Math.max(a, b));
  return {
    left: least(xs),
    top: least(ys),
    width: most(xs) - least(xs) + 1,
    height: most(ys) - least(ys) + 1,
  };
}

function overlap(a: Uint8Array, b: Uint8Array): number {
  let both = 0;
  let either = 0;
  for (const [i, value] of a.entries()) {
    const [inA, inB] = [value >= 128, (b[i] ?? 0) >= 128];
    if (inA && inB) both++;
    if (inA || inB) either++;
  }
  return both / either;
}

test('reference: photographed on grey paper, drawn things are cut out to their drawn masks (IoU .97 or more in the mean, none under .9)', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const found: number[] = [];
  for (const id of SAMPLE) {
    const cut = await drawnOf(id);
    const { left, top, width, height } = await opaquePartOf(cut);
    const drawn = await sharp(cut).extract({ left, top, width, height }).png().toBuffer();
    const facts = await send(here, seat, await onStudioGround(cut, id, 'grey'));
    expect([id, facts.cutOut?.how]).toEqual([id, 'left out']);
    // Cut off round the thing: it fills its picture, as its record's size is the thing's and not the paper's.
    const off = Math.max(Math.abs(facts.widthPx - width), Math.abs(facts.heightPx - height));
    expect([id, off <= 0.02 * Math.max(width, height)]).toEqual([id, true]);
    const thumb = await served(here, seat, `${facts.sha256}/1024.webp`);
    found.push(overlap(await alphaOf(thumb, width, height), await alphaOf(drawn, width, height)));
  }
  expect(Math.min(...found)).toBeGreaterThan(0.9);
  expect(found.reduce((sum, one) => sum + one, 0) / found.length).toBeGreaterThanOrEqual(0.97);
});

test('story: the ground is left out of palettes and miniature, the original is as it was, and what speaks against the photograph is told', async () => {
  const here = await scene();
  const seat = await here.seat('registrar');
  const cut = await drawnOf('dial-7');
  const bytes = await onStudioGround(cut, 'dial-7', 'grey');
  const [alone, facts] = [await send(here, seat, cut), await send(here, seat, bytes)];
  expect(alone.cutOut).toMatchObject({ how: 'transparent', confidence: 1 });
  expect(facts.cutOut).toMatchObject({ how: 'left out', doubts: [] });
  expect(facts.cutOut?.confidence).toBeGreaterThan(0.8);
  const main = (of: ImageFacts) => of.body[0]?.lab ?? { L: 0, a: 0, b: 0 };
  const apart = Math.hypot(main(facts).L - main(alone).L, main(facts).a - main(alone).a, main(facts).b - main(alone).b);
  expect(apart).toBeLessThan(6);
  expect(facts.photograph?.doubts.join(' ')).toMatch(/no colour profile/);
  expect(await readFile(here.server.images.originalOf(facts.sha256) as string)).toEqual(bytes);
});

test('story: one word keeps the ground, another takes the whole picture; each is a picture of its own, made when first asked for', async () => {
  const here = await scene();
  const curator = await here.seat('curator');
  const cut = await drawnOf('mould-3');
  const facts = await send(here, curator, await onStudioGround(cut, 'mould-3', 'white'));
  const viewer = await here.seat('viewer');
  expect(here.server.images.facts()).toHaveLength(1);
  const keep = pictureKeyOf(facts.sha256, 'keep');
  const whole = pictureKeyOf(facts.sha256, 'whole');
  const kept = (await (await here.get(viewer, `images/${keep}/facts`)).json()) as ImageFacts;
  expect(kept.cutOut).toEqual({ how: 'whole', confidence: 1, doubts: [], choice: 'keep' });
  expect(kept.opaqueShare).toBe(1);
  expect(kept.cell).not.toEqual(facts.cell);
  expect([kept.widthPx, kept.heightPx]).toEqual([facts.widthPx, facts.heightPx]);
  // Its edge is now the paper's.
  expect(kept.edge[0]?.lab.L).toBeGreaterThan(85);
  expect(facts.edge[0]?.lab.L).toBeLessThan(85);
  const large = await served(here, viewer, `${whole}/1024.webp`);
  const corner = await sharp(large).ensureAlpha().raw().toBuffer();
  expect(corner[3]).toBe(255);
  expect(here.server.images.factsOf(whole)?.widthPx).toBeGreaterThan(facts.widthPx);
  expect((await here.get(viewer, `images/${facts.sha256}~upside-down/facts`)).status).toBe(404);
  expect((await here.get(viewer, `images/${'0'.repeat(64)}~keep/facts`)).status).toBe(404);
  await here.reopen();
  expect(here.server.images.factsOf(keep)).toEqual(kept);
});

test('law: a word on a picture is written under its hash, and taken back by removing it', () => {
  expect(cutPicture('a'.repeat(64), 'keep').changes).toEqual([
    { root: 'pictureCuts', key: 'a'.repeat(64), value: 'keep' },
  ]);
});
