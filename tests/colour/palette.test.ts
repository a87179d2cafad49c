import { deltaE2000 } from '@enfilade/colour/differences';
import type { Pixels } from '@enfilade/colour/histogram';
import type { LabD65 } from '@enfilade/colour/lab';
import { paletteOf } from '@enfilade/colour/palette';
import { labD65FromSrgb } from '@enfilade/colour/spaces';
import quantize from 'quantize';
import { describe, expect, test } from 'vitest';
import { COPPER, drawn, HANGING, OIL_VIEW, PEAR_BLOCK, randomOf, VERDIGRIS, WELD } from './samples.ts';

/** Mean ΔE00 of the opaque pixels to their nearest colour. */
function errorOf({ data }: Pixels, palette: readonly LabD65[]): number {
  let sum = 0;
  let n = 0;
  for (let at = 0; at < data.length; at += 4) {
    if (data[at + 3]! < 128) continue;
    const pixel = labD65FromSrgb(data[at]!, data[at + 1]!, data[at + 2]!);
    sum += Math.min(...palette.map((colour) => deltaE2000(pixel, colour)));
    n++;
  }
  return sum / n;
}

/** A picture of soft blots over a slope of colour: nothing in it is a flat field. */
function blots(seed: number): Pixels {
  const random = randomOf(seed);
  const colour = (): LabD65 => ({ L: 15 + random() * 75, a: random() * 80 - 35, b: random() * 90 - 35 });
  const [ground, far] = [colour(), colour()];
  const spots = Array.from({ length: 9 }, () => ({
    x: random() * 96,
    y: random() * 72,
    r: 6 + random() * 18,
    lab: colour(),
  }));
  const mixed = (p: LabD65, q: LabD65, t: number): LabD65 => ({
    L: p.L + (q.L - p.L) * t,
    a: p.a + (q.a - p.a) * t,
    b: p.b + (q.b - p.b) * t,
  });
  return drawn(
    96,
    72,
    (x, y) =>
      spots.reduce(
        (under, spot) => mixed(under, spot.lab, Math.exp(-(((x - spot.x) ** 2 + (y - spot.y) ** 2) / spot.r ** 2))),
        mixed(ground, far, y / 72),
      ),
    4,
    seed,
  );
}

describe('paletteOf', () => {
  test('law: at most k swatches, largest first, shares adding up to 1, alike each time', () => {
    for (const picture of [OIL_VIEW, HANGING, COPPER, PEAR_BLOCK, blots(3)]) {
      for (const k of [3, 6, 12]) {
        const palette = paletteOf(picture, { k });
        expect(palette.length).toBeGreaterThan(1);
        expect(palette.length).toBeLessThanOrEqual(k);
        expect(palette.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
        expect(palette.every(({ share }, i) => i === 0 || share <= palette[i - 1]!.share)).toBe(true);
        expect(paletteOf(picture, { k })).toEqual(palette);
      }
    }
  });

  test('law: flat fields come back as they are, with their areas', () => {
    const picture = drawn(60, 40, (x) => (x < 36 ? VERDIGRIS : x < 54 ? WELD : { L: 40, a: 45, b: 25 }));
    const palette = paletteOf(picture);
    expect(palette.map(({ share }) => Number(share.toFixed(6)))).toEqual([0.6, 0.3, 0.1]);
    [VERDIGRIS, WELD, { L: 40, a: 45, b: 25 }].forEach((field, i) => {
      // Eight bits a channel, and verdigris is a little beyond what a screen shows.
      expect(deltaE2000(palette[i]!.lab, labOfPixel(picture, [0, 40, 59][i]!))).toBeLessThan(1e-6);
      expect(deltaE2000(palette[i]!.lab, field)).toBeLessThan(3);
    });
  });

  test('law: a small bright accent is not drowned by a large quiet ground', () => {
    const accent = { L: 50, a: 70, b: 50 };
    const picture = drawn(100, 100, (x, y) => (x > 90 && y > 90 ? accent : { L: 40 + (y / 100) * 30, a: 2, b: 10 }), 5);
    expect(Math.min(...paletteOf(picture).map(({ lab }) => deltaE2000(lab, accent)))).toBeLessThan(3);
  });

  test('law: transparent pixels are left out, whatever colour hides in them; alpha 128 counts, 127 does not', () => {
    const picture = drawn(40, 40, (x) => (x < 20 ? VERDIGRIS : WELD));
    const data = picture.data.slice();
    for (let pixel = 0; pixel < 1600; pixel++) data[pixel * 4 + 3] = pixel % 40 < 20 ? 127 : 128;
    const palette = paletteOf({ ...picture, data });
    expect(palette).toHaveLength(1);
    expect(deltaE2000(palette[0]!.lab, labOfPixel(picture, 39))).toBeLessThan(1e-6);
    expect(paletteOf({ ...picture, data: new Uint8Array(6400) })).toEqual([]);
    expect(paletteOf({ data: new Uint8Array(0), width: 0, height: 0 })).toEqual([]);
  });

  test('law: a mask leaves only its part', () => {
    const picture = drawn(40, 40, (x) => (x < 20 ? VERDIGRIS : WELD));
    const part = new Uint8Array(1600).map((_, pixel) => (pixel % 40 < 20 ? 1 : 0));
    expect(paletteOf(picture, { part })).toEqual(paletteOf(drawn(20, 40, () => VERDIGRIS)));
  });

  test('law: what does not fit is refused by name and bound', () => {
    for (const k of [2, 13, 4.5, Number.NaN]) expect(() => paletteOf(OIL_VIEW, { k })).toThrow(/3\.\.12/);
    expect(() => paletteOf({ ...OIL_VIEW, width: 121 })).toThrow(RangeError);
    expect(() => paletteOf(OIL_VIEW, { part: new Uint8Array(3) })).toThrow(RangeError);
  });

  test('reference: nearer to the pixels than modified median cut (npm quantize) at k 6, 12 drawn pictures', () => {
    const pictures = [OIL_VIEW, HANGING, COPPER, PEAR_BLOCK, ...[1, 2, 3, 4, 5, 6, 7, 8].map(blots)];
    const ratios = pictures.map((picture) => {
      const pixels: [number, number, number][] = [];
      for (let at = 0; at < picture.data.length; at += 4) {
        if (picture.data[at + 3]! >= 128)
          pixels.push([picture.data[at]!, picture.data[at + 1]!, picture.data[at + 2]!]);
      }
      const theirs = quantize(pixels, 6)
        .palette()
        .map(([r, g, b]) => labD65FromSrgb(r, g, b));
      const ours = paletteOf(picture).map(({ lab }) => lab);
      return errorOf(picture, ours) / errorOf(picture, theirs);
    });
    expect(Math.max(...ratios)).toBeLessThan(1);
    expect(ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length).toBeLessThan(0.75);
  });
});

function labOfPixel({ data }: Pixels, pixel: number): LabD65 {
  return labD65FromSrgb(data[pixel * 4]!, data[pixel * 4 + 1]!, data[pixel * 4 + 2]!);
}
