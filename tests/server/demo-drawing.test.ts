import { pictureColoursOf } from '@enfilade/colour/picture-colours';
import { readingOn } from '@enfilade/colour/reading';
import { CHECKLIST, pieceNamed, recordNamed } from '@enfilade/server/demo/checklist';
import { DECK } from '@enfilade/server/demo/deck';
import { hexFrom } from '@enfilade/server/demo/drawing/ink';
import { pictureOf } from '@enfilade/server/demo/drawing/picture';
import { lab65 } from 'culori';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';

async function pixelsOf(id: string, longestPx = 200) {
  const svg = Buffer.from(pictureOf(recordNamed(id), 0, longestPx).svg);
  const { data, info } = await sharp(svg).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return { data: new Uint8ClampedArray(data), width: info.width, height: info.height };
}

describe('drawings', () => {
  test('law: equal input, equal text; another seed, another picture where a kind has several', () => {
    for (const record of CHECKLIST) {
      expect(pictureOf(record).svg).toBe(pictureOf(record).svg);
    }
    for (const id of ['block-1', 'mould-1', 'slide-1', 'map-1', 'oil-1', 'hanging-1', 'tile-1', 'trap-1', 'dial-1']) {
      expect(pictureOf(recordNamed(id), 1).svg).not.toBe(pictureOf(recordNamed(id), 0).svg);
    }
  });

  test('law: sixty blocks, eleven views, nine hangings, eighteen panels, all different', () => {
    const blocks = Array.from({ length: 60 }, (_, i) => pictureOf(pieceNamed('block-1', i + 1)).svg);
    expect(new Set(blocks).size).toBe(60);
    for (const type of ['painting', 'hanging', 'tile panel', 'lantern slide', 'map', 'flood mark']) {
      const drawn = CHECKLIST.filter((record) => record.type === type).map((record) => pictureOf(record).svg);
      expect(new Set(drawn).size).toBe(drawn.length);
    }
  });

  test('law: a picture has the proportion of its record, and its longest side as asked', () => {
    for (const record of CHECKLIST) {
      const { widthPx, heightPx } = pictureOf(record, 0, 900);
      expect(Math.max(widthPx, heightPx)).toBe(900);
      const least = Math.max(
        8,
        (900 * Math.min(record.widthMm, record.heightMm)) / Math.max(record.widthMm, record.heightMm),
      );
      expect(Math.abs(Math.min(widthPx, heightPx) - least)).toBeLessThanOrEqual(1);
    }
    expect(() => pictureOf({ ...recordNamed('oil-1'), widthMm: 0 })).toThrow(RangeError);
  });

  test('law: no picture holds a text, a number that is none, or anything fetched', () => {
    for (const record of CHECKLIST) {
      const svg = pictureOf(record).svg.replaceAll(/data:image\/png;base64,[^"]*/g, '#');
      expect(svg).not.toMatch(/<text|NaN|undefined|Infinity|href="(?!#)/);
    }
  });

  test('law: pictures are cut out: round things have clear corners, framed ones none', async () => {
    const alphaAt = ({ data, width, height }: Awaited<ReturnType<typeof pixelsOf>>) =>
      [0, width - 1, (height - 1) * width, height * width - 1].map((i) => data[i * 4 + 3]);
    for (const id of ['mould-22', 'dial-1', 'trap-1', 'vat-1', 'sluice-1']) {
      expect(alphaAt(await pixelsOf(id)).filter((alpha) => alpha === 0).length).toBeGreaterThanOrEqual(2);
    }
    for (const id of ['oil-1', 'map-1', 'tile-1']) expect(alphaAt(await pixelsOf(id))).toEqual([255, 255, 255, 255]);
  });

  test('reference: inks are the sRGB of their CIELAB (culori lab65)', () => {
    for (const { lab } of Object.values(DECK)) {
      const back = lab65(hexFrom(lab));
      // Eight bits a channel, and a few paints outside sRGB that are clipped.
      if (back === undefined) throw new Error('not a colour');
      expect(Math.abs(back.l - lab.L)).toBeLessThan(2.5);
    }
  });
});

describe('what the demo opens on', () => {
  test('story: the valley from Tallow Hill is lost on deep verdigris and carries on weld', async () => {
    const colours = pictureColoursOf(await pixelsOf('oil-1', 256));
    expect(readingOn(colours, DECK['verdigris-deep']!.lab).word).toBe('lost');
    expect(readingOn(colours, DECK.weld!.lab).word).toBe('carries');
  });

  test('story: nothing else on that wall is lost or weak', async () => {
    for (const id of ['hanging-1', 'block-1', 'trap-1', 'bench-1']) {
      const { word } = readingOn(pictureColoursOf(await pixelsOf(id, 256)), DECK['verdigris-deep']!.lab);
      expect([id, ['holds', 'carries'].includes(word)]).toEqual([id, true]);
    }
  });
});
