import { labPlanesOf } from '@enfilade/colour/lab-planes';
import {
  chromaOf,
  contrastOf,
  hexFromLabD65,
  hueDegreesOf,
  INK_TURNS_AT_LIGHTNESS,
  inkOn,
  labD65FromHex,
  labD65FromSrgb,
  lightnessFromLrv,
  lrvOf,
  srgbFromLabD65,
} from '@enfilade/colour/spaces';
import { converter } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const channel = fc.integer({ min: 0, max: 255 });
const grey = (L: number) => ({ L, a: 0, b: 0 });

describe('sRGB and CIELAB D65', () => {
  test('reference: white is L* 100 without hue, black L* 0 (CIE 15:2018)', () => {
    const white = labD65FromSrgb(255, 255, 255);
    expect(white.L).toBeCloseTo(100, 9);
    expect(chromaOf(white)).toBeLessThan(1e-9);
    expect(labD65FromSrgb(0, 0, 0)).toEqual({ L: 0, a: 0, b: 0 });
  });

  test('reference: as an independent library has it (culori lab65), 20,000 seeded colours to 1e-3', () => {
    const toLab65 = converter('lab65');
    fc.assert(
      fc.property(channel, channel, channel, (r, g, b) => {
        const ours = labD65FromSrgb(r, g, b);
        const theirs = toLab65({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
        expect(Math.hypot(ours.L - theirs.l, ours.a - theirs.a, ours.b - theirs.b)).toBeLessThan(1e-3);
      }),
      { numRuns: 20_000, seed: 11 },
    );
  });

  test('reference: a picture’s planes are as that library has them within 0.02, in 4,096 colours from black on', () => {
    const toLab65 = converter('lab65');
    const data = Uint8Array.from({ length: 4096 * 4 }, (_, at) => {
      const pixel = at >> 2;
      return at % 4 === 3 ? 255 : ((pixel >> (4 * (at % 4))) & 15) * ((pixel & 15) < 8 ? 3 : 17);
    });
    const planes = labPlanesOf({ data, width: 64, height: 64 });
    let most = 0;
    for (let i = 0; i < 4096; i++) {
      const [r = 0, g = 0, b = 0] = [...data.subarray(4 * i, 4 * i + 3)].map((byte) => byte / 255);
      const theirs = toLab65({ mode: 'rgb', r, g, b });
      const off = [planes.L[i]! - theirs.l, planes.a[i]! - theirs.a, planes.b[i]! - theirs.b].map(Math.abs);
      most = Math.max(most, ...off);
    }
    expect(most).toBeLessThan(0.02);
    expect(planes.L[4095]).toBeCloseTo(100, 3);
  });

  test('law: there and back gives the same channels and the same hex', () => {
    fc.assert(
      fc.property(channel, channel, channel, (r, g, b) => {
        const lab = labD65FromSrgb(r, g, b);
        const back = srgbFromLabD65(lab);
        expect(back.inGamut).toBe(true);
        expect(Math.max(Math.abs(back.r - r), Math.abs(back.g - g), Math.abs(back.b - b))).toBeLessThan(1e-3);
        const hex = hexFromLabD65(lab);
        expect(hexFromLabD65(labD65FromHex(hex))).toBe(hex);
      }),
      { numRuns: 2_000, seed: 12 },
    );
  });

  test('law: what the screen cannot show keeps its lightness and hue, gives up chroma, and says so', () => {
    const glow = { L: 60, a: 95, b: 70 };
    const shown = srgbFromLabD65(glow);
    expect(shown.inGamut).toBe(false);
    const back = labD65FromSrgb(shown.r, shown.g, shown.b);
    expect(back.L).toBeCloseTo(60, 2);
    expect(hueDegreesOf(back)).toBeCloseTo(hueDegreesOf(glow), 1);
    expect(chromaOf(back)).toBeLessThan(chromaOf(glow));
    expect(Math.max(shown.r, shown.g, shown.b)).toBeLessThanOrEqual(255);
    expect(Math.min(shown.r, shown.g, shown.b)).toBeGreaterThanOrEqual(0);
  });

  test('law: a short hex is its long one, and no other text passes', () => {
    expect(labD65FromHex('#1aF')).toEqual(labD65FromHex('#11aaff'));
    for (const text of ['', '1af', '#12', '#12345', '#gggggg', '#1234567', ' #123456']) {
      expect(() => labD65FromHex(text)).toThrow(RangeError);
    }
  });

  test('law: hue is 0 to under 360 degrees, also where it falls just short of the turn', () => {
    expect(hueDegreesOf({ L: 50, a: 0, b: 0 })).toBe(0);
    expect(hueDegreesOf({ L: 50, a: 0, b: -10 })).toBe(270);
    expect(hueDegreesOf({ L: 50, a: 10, b: -1e-18 })).toBeLessThan(360);
  });
});

describe('light reflectance', () => {
  test.each([
    [50, 18.4],
    [20, 2.99],
    [40, 11.3],
    [75, 48.3],
    [90, 76.3],
  ])('reference: L* %d has LRV %d (CIE 1976, BS 8493)', (L, lrv) => {
    expect(Number(lrvOf(grey(L)).toPrecision(3))).toBe(lrv);
  });

  test('reference: LRV 20 has L* 51.8 (CIE 1976)', () => {
    expect(lightnessFromLrv(20)).toBeCloseTo(51.8, 1);
  });

  test('law: LRV and lightness are each other undone, near black too', () => {
    for (let lrv = 0; lrv <= 100; lrv += 0.25) {
      expect(lrvOf(grey(lightnessFromLrv(lrv)))).toBeCloseTo(lrv, 9);
    }
  });
});

describe('ink', () => {
  test.each([
    ['#FFFFFF', '#767676', 4.54],
    ['#FFFFFF', '#777777', 4.48],
    ['#FFFFFF', '#C8102E', 5.88],
    ['#FFFFFF', '#D6457F', 4.19],
    ['#FFFFFF', '#F7D117', 1.49],
    ['#1F1F1F', '#F7D117', 11.1],
  ])('reference: %s on %s has contrast %d (WCAG 2.2)', (ink, paint, ratio) => {
    const found = contrastOf(labD65FromHex(ink), labD65FromHex(paint));
    expect(Number(found.toPrecision(3))).toBe(ratio);
  });

  test('reference: LRV 70 against 10 has ratio 5.00 (WCAG 2.2)', () => {
    expect(contrastOf(grey(lightnessFromLrv(10)), grey(lightnessFromLrv(70)))).toBeCloseTo(5, 6);
  });

  test('law: the ink chosen is the more legible one and never under 4.5 : 1, on every lightness', () => {
    for (let L = 0; L <= 100; L += 0.1) {
      const ratio = contrastOf(grey(L), inkOn(grey(L)) === 'white' ? grey(100) : grey(0));
      const other = contrastOf(grey(L), inkOn(grey(L)) === 'white' ? grey(0) : grey(100));
      expect(ratio).toBeGreaterThan(4.5);
      if (Math.abs(L - INK_TURNS_AT_LIGHTNESS) > 0.2) expect(ratio).toBeGreaterThan(other);
    }
  });
});
