import { type CutOut, cutOutOf } from '@enfilade/colour/cut-out';
import { deltaE2000 } from '@enfilade/colour/differences';
import type { Swatch } from '@enfilade/colour/palette';
import { cutOutPixelsOf, pictureColoursOf } from '@enfilade/colour/picture-colours';
import { beforeAll, describe, expect, test } from 'vitest';
import { COPPER, drawn, OIL_VIEW, WELD } from './samples.ts';
import { overlapOf, STAGINGS, staged } from './staged.ts';

// Eleven kinds of thing, the hard ones with them: spokes, wicker, a white enamel sign, a sea as grey as the paper.
const THINGS = [
  'block-1',
  'mould-1',
  'level-1',
  'book-1',
  'oil-4',
  'mark-1',
  'trap-1',
  'dial-1',
  'hanging-1',
  'mangle-1',
  'sluice-1',
];

describe('cutOutOf, things on studio grounds drawn with their true masks', () => {
  const taken: { what: string; cut: CutOut; overlap: number }[] = [];
  const foundSmall: { what: string; cut: CutOut; overlap: number; lost: number }[] = [];

  beforeAll(async () => {
    for (const [ground, staging] of Object.entries(STAGINGS)) {
      for (const id of THINGS) {
        const picture = await staged(id, staging);
        const cut = cutOutOf(picture);
        taken.push({ what: `${id} on ${ground}`, cut, overlap: overlapOf(cut.mask, picture.truth) });
        if (ground !== 'white with a soft shadow') continue;
        const small = cutOutOf(picture, undefined, 2);
        const overlap = overlapOf(small.mask, picture.truth);
        foundSmall.push({ what: id, cut: small, overlap, lost: overlapOf(cut.mask, picture.truth) - overlap });
      }
    }
  }, 300_000);

  test('story: 44 photographs are cut out with a mean overlap of 0.97 or more, and none under 0.9', () => {
    expect(taken).toHaveLength(44);
    expect(taken.filter(({ overlap }) => !(overlap >= 0.9)).map(({ what, overlap }) => `${what}: ${overlap}`)).toEqual(
      [],
    );
    expect(taken.reduce((sum, { overlap }) => sum + overlap, 0) / taken.length).toBeGreaterThanOrEqual(0.97);
    expect(taken.every(({ cut }) => cut.made === 'left out' && cut.backdrop !== null)).toBe(true);
  });

  test('story: found at half the size and drawn at the whole, they are cut out as well', () => {
    expect(foundSmall).toHaveLength(THINGS.length);
    // Spokes a pixel wide are lost at half the size, and a wheel's with them.
    expect(foundSmall.filter(({ lost }) => !(lost < 0.04)).map(({ what, lost }) => [what, lost])).toEqual([]);
    expect(foundSmall.reduce((sum, { overlap }) => sum + overlap, 0) / THINGS.length).toBeGreaterThanOrEqual(0.97);
    for (const { what, cut } of foundSmall) expect(cut.confidence, what).toBeGreaterThan(0.7);
  });

  test('story: cut out of white paper, a block of pear wood has the colours it has on grey', async () => {
    const [white, grey] = await Promise.all(
      ['white paper', 'grey paper'].map(async (ground) => {
        const picture = await staged('block-1', STAGINGS[ground]!);
        return pictureColoursOf(cutOutPixelsOf(picture, cutOutOf(picture).mask));
      }),
    );
    const meanOf = (swatches: readonly Swatch[]) => ({
      L: swatches.reduce((sum, { lab, share }) => sum + lab.L * share, 0),
      a: swatches.reduce((sum, { lab, share }) => sum + lab.a * share, 0),
      b: swatches.reduce((sum, { lab, share }) => sum + lab.b * share, 0),
    });
    expect(deltaE2000(meanOf(white!.body), meanOf(grey!.body))).toBeLessThan(1);
    expect(deltaE2000(meanOf(white!.edge), meanOf(grey!.edge))).toBeLessThan(3);
    expect(white!.opaqueShare).toBeCloseTo(grey!.opaqueShare, 2);
  });

  test('law: of what was cut out well it is sure', () => {
    for (const { what, cut } of taken) expect(cut.confidence, what).toBeGreaterThan(0.7);
  });

  test('story: a grey-white plinth on white is hardly told from its ground, and that is said', async () => {
    for (const ground of ['white with a soft shadow', 'a sweep from light to dark']) {
      const picture = await staged('plinth-1', STAGINGS[ground]!);
      const cut = cutOutOf(picture);
      if (overlapOf(cut.mask, picture.truth) < 0.9) {
        expect(cut.confidence).toBeLessThan(0.7);
        expect(cut.doubts.length).toBeGreaterThan(0);
      }
      // One press puts it right for a thing that may as well be taken with its ground.
      const whole = cutOutOf(picture, 'keep');
      expect(whole).toMatchObject({ made: 'kept', confidence: 1 });
      expect(whole.mask.every((pixel) => pixel === 255)).toBe(true);
    }
  });
});

describe('cutOutOf, what is no studio picture', () => {
  test('law: a picture that fills its frame is kept whole, a dark frame and a bright field alike', () => {
    for (const picture of [
      OIL_VIEW,
      drawn(90, 60, () => WELD, 2),
      drawn(60, 60, (x, y) => ({ L: 30 + y, a: x - 30, b: y - 30 })),
    ]) {
      const cut = cutOutOf(picture);
      expect(cut.made).toBe('kept');
      expect(cut.mask.every((pixel) => pixel === 255)).toBe(true);
    }
  });

  test('law: a picture that came cut out keeps its shape; the whole of it can be asked for', () => {
    const cut = cutOutOf(COPPER);
    expect(cut).toMatchObject({ made: 'came cut out', confidence: 1, doubts: [] });
    cut.mask.forEach((pixel, i) => {
      if ((pixel === 255) !== COPPER.data[i * 4 + 3]! >= 128) throw new Error(`pixel ${i}`);
    });
    expect(cutOutOf(COPPER, 'whole picture').mask.every((pixel) => pixel === 255)).toBe(true);
  });

  test('law: leave out is obeyed where the machine would have kept: a green cloth is no studio ground by itself', () => {
    const on = drawn(80, 80, (x, y) => (Math.hypot(x - 40, y - 40) < 20 ? WELD : { L: 40, a: -30, b: 10 }), 1);
    expect(cutOutOf(on).made).toBe('kept');
    const cut = cutOutOf(on, 'leave out');
    expect(cut.made).toBe('left out');
    const truth = Uint8Array.from({ length: 6400 }, (_, i) =>
      Math.hypot((i % 80) - 40, Math.floor(i / 80) - 40) < 20 ? 1 : 0,
    );
    expect(overlapOf(cut.mask, truth)).toBeGreaterThan(0.95);
  });

  test('law: nothing on paper leaves nothing, and says so; a few pixels are not judged; bytes that do not fit are refused', () => {
    const blank = cutOutOf(drawn(60, 60, () => ({ L: 95, a: 0, b: 1 }), 0.5));
    expect(blank.confidence).toBe(0);
    expect(blank.doubts).toEqual(['Nothing stands out from the ground.']);
    expect(cutOutOf(drawn(8, 8, () => WELD))).toMatchObject({ made: 'kept', confidence: 0.2 });
    expect(cutOutOf({ data: new Uint8Array(0), width: 0, height: 0 }).mask).toHaveLength(0);
    expect(() => cutOutOf({ data: new Uint8Array(3), width: 1, height: 1 })).toThrow(RangeError);
  });

  test('law: equal pixels, equal masks', () => {
    const on = drawn(80, 80, (x, y) => (Math.hypot(x - 40, y - 40) < 20 ? WELD : { L: 80, a: 0, b: 0 }), 1);
    expect(cutOutOf(on)).toEqual(cutOutOf(on));
  });
});
