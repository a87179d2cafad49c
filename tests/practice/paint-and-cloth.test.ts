import { deltaE2000 } from '@enfilade/colour/differences';
import { contrastOf, labD65FromHex, lightnessFromLrv, lrvOf } from '@enfilade/colour/spaces';
import { clothOf, wallpaperOf } from '@enfilade/practice/cloth';
import { coatsOf, hangNotBeforeOf, litresOf, paintToBuyOf, wallAreaOf } from '@enfilade/practice/paint-quantities';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const inch = (inches: number) => inches * 25.4;
const foot = (feet: number) => feet * 304.8;
const SQUARE_FOOT_M2 = 0.09290304;
const GALLON_LITRES = 3.785411784;

describe('paint', () => {
  test('reference: practice 10.17 a room in feet and gallons (paint makers’ coverage)', () => {
    const doors = { widthMm: foot(3), heightMm: foot(7) };
    const areaM2 = wallAreaOf({ widthMm: foot(24), depthMm: foot(18), heightMm: foot(12), openings: [doors, doors] });
    expect(areaM2 / SQUARE_FOOT_M2).toBeCloseTo(966, 6);
    const gallons = (coats: number, overShare: number) =>
      litresOf({ areaM2, coats, m2PerLitre: (350 * SQUARE_FOOT_M2) / GALLON_LITRES, overShare }) / GALLON_LITRES;
    expect(gallons(2, 0)).toBeCloseTo(5.52, 2);
    expect(gallons(2, 0.1)).toBeCloseTo(6.07, 2);
    expect(gallons(3, 0.1)).toBeCloseTo(9.11, 2);
  });

  test('reference: practice 10.18 a room in metres and litres (coverage)', () => {
    const door = { widthMm: 900, heightMm: 2100 };
    const areaM2 = wallAreaOf({ widthMm: 7300, depthMm: 5500, heightMm: 3600, openings: [door, door] });
    expect(areaM2).toBeCloseTo(88.38, 9);
    expect(litresOf({ areaM2, coats: 2, m2PerLitre: 10, overShare: 0.1 })).toBeCloseTo(19.4, 1);
    expect(litresOf({ areaM2, coats: 3, m2PerLitre: 10, overShare: 0.1 })).toBeCloseTo(29.2, 1);
  });

  test('reference: practice 10.19 lightness and reflectance (CIE 1976, BS 8493)', () => {
    const rows = [
      [50, 18.4],
      [20, 2.99],
      [40, 11.3],
      [75, 48.3],
      [90, 76.3],
    ] as const;
    for (const [L, lrv] of rows) expect(Number(lrvOf({ L, a: 0, b: 0 }).toPrecision(3))).toBe(lrv);
    expect(lightnessFromLrv(20)).toBeCloseTo(51.8, 1);
  });

  test('reference: practice 10.20 contrast ratios (WCAG 2.2)', () => {
    const ratio = (one: string, other: string) => contrastOf(labD65FromHex(one), labD65FromHex(other));
    const rows = [
      ['#ffffff', '#767676', 4.54],
      ['#ffffff', '#777777', 4.48],
      ['#ffffff', '#c8102e', 5.88],
      ['#ffffff', '#d6457f', 4.19],
      ['#ffffff', '#f7d117', 1.49],
      ['#1f1f1f', '#f7d117', 11.1],
    ] as const;
    for (const [one, other, known] of rows) expect(Number(ratio(one, other).toPrecision(3))).toBe(known);
  });

  test('reference: practice 10.22 two published pairs of CIEDE2000 (Sharma, Wu and Dalal 2005)', () => {
    const pair = deltaE2000({ L: 50, a: 2.6772, b: -79.7751 }, { L: 50, a: 0, b: -82.7485 });
    expect(pair).toBeCloseTo(2.0425, 4);
    expect(deltaE2000({ L: 50, a: 2.5, b: 0 }, { L: 61, a: -5, b: 29 })).toBeCloseTo(22.8977, 4);
  });

  test('reference: practice 10.23 one pair by both formulas (CIE)', () => {
    const [one, other] = [
      { L: 42, a: 58, b: 33 },
      { L: 44, a: 57, b: 35 },
    ] as const;
    expect(Math.hypot(one.L - other.L, one.a - other.a, one.b - other.b)).toBeCloseTo(3, 9);
    expect(deltaE2000(one, other)).toBeCloseTo(2.22, 2);
  });

  test('story: a strong red takes two primer coats and three more; white over it is stain-blocked; a grey is plain', () => {
    const red = { L: 42, a: 58, b: 33 };
    const white = { L: 95, a: 0, b: 2 };
    expect(coatsOf(red, white)).toMatchObject({ coats: 3, primerCoats: 2, primer: 'grey or tinted' });
    expect(coatsOf({ L: 85, a: 5, b: 80 }, white)).toMatchObject({ coats: 3, primerCoats: 1 });
    expect(coatsOf(white, red)).toMatchObject({ coats: 2, primer: 'stain-blocking' });
    expect(coatsOf({ L: 60, a: 0, b: 0 }, red)).toMatchObject({ coats: 2, primer: 'none' });
    const bought = paintToBuyOf({ areaM2: 86, plan: coatsOf(red, null) });
    expect(bought.paintLitres).toBeCloseTo(33, 9);
    expect(bought).toMatchObject({ touchUpLitres: 1 });
    expect(paintToBuyOf({ areaM2: 86, plan: coatsOf(red, null), textured: true }).paintLitres).toBeCloseTo(41.25, 9);
  });

  test('story: a wall painted on the last of February is hung four days later at the earliest, a leap year or not', () => {
    expect(hangNotBeforeOf({ lastCoat: '2027-02-27', thing: 'wall' })).toEqual({
      earliest: '2027-03-03',
      preferred: '2027-03-06',
    });
    expect(hangNotBeforeOf({ lastCoat: '2028-02-27', thing: 'case' })).toMatchObject({ earliest: '2028-03-26' });
    for (const lastCoat of ['2027-02-31', 'soon', '', '2027-13-01']) {
      expect(hangNotBeforeOf({ lastCoat, thing: 'wall' })).toMatchObject({ where: 'last coat', value: lastCoat });
    }
  });
});

describe('cloth and wallpaper', () => {
  test('reference: practice 10.27 8 yd with repeats of 10 and 17 in (upholsterers’ chart, as read)', () => {
    const order = clothOf({ plainMm: 8 * 914.4, verticalRepeatMm: inch(10), horizontalRepeatMm: inch(17) });
    expect(order).toMatchObject({ upliftShare: 0.2, beyondTable: false });
    expect(order.orderMm / 914.4).toBeCloseTo(9.6, 9);
  });

  test('reference: practice 10.28 wallpaper for a wall of 240 × 108 in (wallpaper guides, as read)', () => {
    const wall = { widthMm: inch(240), heightMm: inch(108), trimMm: inch(4), repeatMm: inch(24) };
    const paper = wallpaperOf({ ...wall, rollWidthMm: inch(20.5), rollLengthMm: inch(396) });
    expect(paper).toMatchObject({ stripMm: expect.closeTo(inch(120), 6), stripsPerRoll: 3, strips: 12, rolls: 4 });
  });

  test('law: the rolls cover the wall, and one fewer would not', () => {
    const mm = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(mm(500, 20_000), mm(500, 6000), mm(0, 900), fc.boolean(), (widthMm, heightMm, repeatMm, halfDrop) => {
        const roll = { rollWidthMm: 530, rollLengthMm: 10_050 };
        const paper = wallpaperOf({ widthMm, heightMm, trimMm: 100, repeatMm, ...roll, halfDrop });
        if ('what' in paper) throw new Error(paper.what);
        expect(paper.stripMm).toBeGreaterThanOrEqual(heightMm + 100);
        expect(paper.strips * 530).toBeGreaterThanOrEqual(widthMm);
        expect(paper.rolls * paper.stripsPerRoll).toBeGreaterThanOrEqual(paper.strips);
        expect((paper.rolls - 1) * paper.stripsPerRoll * 530).toBeLessThan(widthMm);
      }),
      { seed: 21 },
    );
    expect(
      wallpaperOf({ widthMm: 1000, heightMm: 12_000, trimMm: 0, repeatMm: 0, rollWidthMm: 530, rollLengthMm: 10_050 }),
    ).toMatchObject({ where: 'roll' });
  });

  test('law: a larger repeat never takes less cloth; off the chart is told', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        (one, more) => {
          const order = (verticalRepeatMm: number) =>
            clothOf({ plainMm: 1000, verticalRepeatMm, horizontalRepeatMm: 0 });
          expect(order(one + more).orderMm).toBeGreaterThanOrEqual(order(one).orderMm);
        },
      ),
      { seed: 22 },
    );
    const none = { plainMm: 1000, verticalRepeatMm: 0, horizontalRepeatMm: 0 };
    expect(clothOf(none)).toEqual({ orderMm: 1000, upliftShare: 0, beyondTable: false });
    expect(clothOf({ ...none, clothWidthMm: inch(51) })).toEqual({
      orderMm: 1100,
      upliftShare: 0.1,
      beyondTable: false,
    });
    expect(clothOf({ ...none, clothWidthMm: inch(40) }).beyondTable).toBe(true);
    expect(clothOf({ ...none, verticalRepeatMm: inch(60) }).beyondTable).toBe(true);
    expect(() => clothOf({ ...none, plainMm: -1 })).toThrow('plainMm is -1; it must lie between 0 and 1000000');
    expect(() => litresOf({ areaM2: 1, coats: 1.5, m2PerLitre: 8, overShare: 0 })).toThrow('coats is 1.5');
    expect(() => wallAreaOf({ widthMm: 0, depthMm: 1, heightMm: 1, openings: [] })).toThrow('widthMm is 0');
  });
});
