import { type Adaptation, adapted, degreeOfAdaptation } from '@enfilade/colour/adaptation';
import { labFromXyz, type Xyz, xyzFromLab } from '@enfilade/colour/cielab';
import { isInScreenGamut, type MeasuredPaint, paintColourOf, paintLrvOf } from '@enfilade/colour/paints';
import { labD65FromSrgb, lightnessFromLrv } from '@enfilade/colour/spaces';
import { labD65FromMeasured, type WhitePoint, whiteAt, whitePointFrom } from '@enfilade/colour/white-points';
import Color from 'colorjs.io';
import { adapt } from 'colorjs.io/src/CATs.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomLabs, randomOf } from './samples.ts';
import { csvRows, spectraIn, tableText } from './tables.ts';

const D50: WhitePoint = { illuminant: 'D50', observer: '2°' };
const apart = (one: ArrayLike<number>, other: ArrayLike<number>) =>
  Math.max(...Array.from(one, (value, i) => Math.abs(value - other[i]!)));

describe('adaptation', () => {
  // Bradford D65 to D50 and back, as ICC.1 and B. Lindbloom (brucelindbloom.com, chromatic adaptation) print it.
  const BRADFORD_65_TO_50: readonly Xyz[] = [
    [1.0478112, 0.0228866, -0.050127],
    [0.0295424, 0.9904844, -0.0170491],
    [-0.0092345, 0.0150436, 0.7521316],
  ];
  // CSS Color Module Level 4 (W3C), D50 to D65 by Bradford with its own whites 0.34567 0.35850 and 0.3127 0.3290.
  const CSS_50_TO_65: readonly Xyz[] = [
    [0.955473421488075, -0.02309845494876471, 0.06325924320057072],
    [-0.0283697093338637, 1.0099953980813041, 0.021041441191917323],
    [0.012314014864481998, -0.020507649298898964, 1.330365926242124],
  ];
  const columnsOf = (from: Xyz, to: Xyz, by: Adaptation) =>
    (
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as const
    ).map((unit) => adapted(unit, from, to, by));

  test('reference: Bradford D65 to D50 as printed (Lindbloom), to 1e-6 with its whites', () => {
    const columns = columnsOf([95.047, 100, 108.883], [96.422, 100, 82.521], 'Bradford');
    for (const [row, published] of BRADFORD_65_TO_50.entries()) {
      expect(
        apart(
          columns.map((column) => column[row]!),
          published,
        ),
      ).toBeLessThan(1e-5);
    }
  });

  test('reference: Bradford D50 to D65 as CSS Color 4 prints it, to 1e-6 with its whites', () => {
    const white = (x: number, y: number): Xyz => [(100 * x) / y, 100, (100 * (1 - x - y)) / y];
    const columns = columnsOf(white(0.3457, 0.3585), white(0.3127, 0.329), 'Bradford');
    for (const [row, published] of CSS_50_TO_65.entries()) {
      expect(
        apart(
          columns.map((column) => column[row]!),
          published,
        ),
      ).toBeLessThan(1e-6);
    }
  });

  test('reference: CAT16 from A to D65 as an independent library has it (colorjs.io), 1,000 seeded colours', () => {
    const random = randomOf(71);
    const [from, to] = [whiteAt({ illuminant: 'A', observer: '2°' }), whiteAt({ illuminant: 'D65', observer: '2°' })];
    const theirs = adapt([...from], [...to], 'CAT16');
    for (let i = 0; i < 1000; i++) {
      const xyz: Xyz = [random() * 100, random() * 100, random() * 100];
      const expected = theirs.map((row) => row.reduce((sum, weight, k) => sum + weight * xyz[k]!, 0));
      expect(apart(adapted(xyz, from, to, 'CAT16'), expected)).toBeLessThan(1e-9);
    }
  });

  test('law: the white goes to the white, back again is where it was, and an unsettled eye changes nothing', () => {
    const part = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(part, part, part, fc.constantFrom<Adaptation>('CAT16', 'Bradford'), (x, y, z, by) => {
        const [from, to] = [whiteAt(D50), whiteAt({ illuminant: 'A', observer: '10°' })];
        expect(apart(adapted(from, from, to, by), to)).toBeLessThan(1e-9);
        expect(apart(adapted(adapted([x, y, z], from, to, by), to, from, by), [x, y, z])).toBeLessThan(1e-9);
        expect(apart(adapted([x, y, z], from, to, by, 0), [x, y, z])).toBeLessThan(1e-9);
      }),
      { numRuns: 300, seed: 72 },
    );
    expect(() => adapted([1, 1, 1], whiteAt(D50), whiteAt(D50), 'CAT16', 1.2)).toThrow(RangeError);
  });

  test('law: an eye settles further the more light there is, never wholly', () => {
    const degrees = [0, 50, 200, 1000, 10_000].map(degreeOfAdaptation);
    expect(degrees[0]).toBeCloseTo(1 - Math.exp(-42 / 92) / 3.6, 12);
    for (let i = 1; i < degrees.length; i++) expect(degrees[i]).toBeGreaterThan(degrees[i - 1]!);
    expect(degrees.at(-1)).toBeLessThanOrEqual(1);
    expect(() => degreeOfAdaptation(-1)).toThrow(RangeError);
  });
});

describe('paint', () => {
  test('reference: a thousand random colours to and from sRGB and D50 as colorjs.io has them, within 0.01', () => {
    const random = randomOf(73);
    for (let i = 0; i < 1000; i++) {
      const [r, g, b] = [random(), random(), random()];
      const theirs = new Color('srgb', [r, g, b]);
      const ours = labD65FromSrgb(255 * r, 255 * g, 255 * b);
      expect(apart([ours.L, ours.a, ours.b], theirs.to('lab-d65').coords as number[])).toBeLessThan(0.01);
      const [L = 0, a = 0, b50 = 0] = theirs.to('lab').coords as number[];
      const fromD50 = labD65FromMeasured({ L, a, b: b50, ...D50 }, 'Bradford');
      expect(apart([fromD50.L, fromD50.a, fromD50.b], [ours.L, ours.a, ours.b])).toBeLessThan(0.05);
    }
  });

  test('story: a chart stated under D50 is adapted, by the transform that was asked for, and says so', () => {
    const patches = tableText('ColorChecker.cie')
      .match(/^[A-D]0\d.*$/gm)!
      .map((line) => line.split(/\s+/).slice(1, 4).map(Number));
    expect(patches).toHaveLength(24);
    for (const [L = 0, a = 0, b = 0] of patches) {
      const paint: MeasuredPaint = { name: 'patch', lab: { L, a, b, ...D50 } };
      const [cat16, bradford] = [paintColourOf(paint), paintColourOf(paint, 'Bradford')];
      expect(cat16.how).toBe('measured under D50/2°, adapted to D65/2° by CAT16');
      expect(bradford.how).toBe('measured under D50/2°, adapted to D65/2° by Bradford');
      expect(Math.hypot(cat16.lab.a - bradford.lab.a, cat16.lab.b - bradford.lab.b)).toBeLessThan(4);
    }
    const blue = paintColourOf({ name: 'blue', lab: { L: 28.78, a: 14.18, b: -50.3, ...D50 } });
    expect(Math.abs(blue.lab.a - 14.18)).toBeGreaterThan(2);
  });

  test('law: what is stated under D65/2° stands as it is; greys stay grey under any white point', () => {
    for (const { L, a, b } of randomLabs(200, 74)) {
      const paint = { name: 'x', lab: { L, a, b, illuminant: 'D65', observer: '2°' } } as const;
      expect(paintColourOf(paint)).toMatchObject({
        lab: { L, a, b },
        basis: 'as stated',
        how: 'measured under D65/2°',
      });
      for (const illuminant of ['A', 'C', 'D50', 'F11'] as const) {
        const grey = paintColourOf({ name: 'grey', lab: { L, a: 0, b: 0, illuminant, observer: '10°' } }).lab;
        expect(Math.hypot(grey.L - L, grey.a, grey.b)).toBeLessThan(1e-9);
      }
    }
  });

  test('law: a colour stated for the 10° observer is told to be of another eye', () => {
    const wide = paintColourOf({ name: 'x', lab: { L: 50, a: 10, b: 10, illuminant: 'D65', observer: '10°' } });
    expect(wide.basis).toBe('adapted');
    expect(wide.how).toContain('wider eye');
  });

  test('law: reflectance goes before a stated colour, and a paint with neither is a programmer’s error', () => {
    const [sample] = spectraIn('CIE-TCS.sp');
    const both = paintColourOf({ name: 'both', reflectance: sample!, lab: { L: 1, a: 0, b: 0, ...D50 } });
    expect(both.basis).toBe('reflectance');
    expect(both.lab.L).toBeCloseTo(61.55, 1);
    expect(() => paintColourOf({ name: 'none' })).toThrow(RangeError);
  });

  test('reference: what a screen shows, for two thousand random colours, as colorjs.io has it', () => {
    const told = { inside: 0, outside: 0 };
    for (const { L, a, b } of randomLabs(2000, 76)) {
      const theirs = new Color('lab-d65', [L, a * 0.7, b * 0.7]);
      // Within a thousandth of the rim the two may round apart.
      const rim = [0.001, -0.001].map((epsilon) => theirs.inGamut('srgb', { epsilon }));
      if (rim[0] !== rim[1]) continue;
      expect(isInScreenGamut({ L, a: a * 0.7, b: b * 0.7 })).toBe(rim[0]);
      told[rim[0] ? 'inside' : 'outside']++;
    }
    expect(Math.min(told.inside, told.outside)).toBeGreaterThan(300);
  });

  test('law: what no screen shows is marked, what every screen shows is not', () => {
    expect(isInScreenGamut({ L: 60, a: 95, b: 70 })).toBe(false);
    expect(isInScreenGamut({ L: 40, a: -20, b: 5 })).toBe(true);
    expect(
      paintColourOf({ name: 'glow', lab: { L: 60, a: 95, b: 70, illuminant: 'D65', observer: '2°' } }).isInScreenGamut,
    ).toBe(false);
  });

  test('law: L*a*b* there and back beside any white', () => {
    for (const { L, a, b } of randomLabs(500, 75)) {
      const white = whiteAt({ illuminant: 'F11', observer: '10°' });
      expect(apart(labFromXyz(xyzFromLab([L, a, b], white), white), [L, a, b])).toBeLessThan(1e-9);
    }
  });

  test.each([
    ['D50', '2', 'D50', '2°'],
    ['d65', '10 degree', 'D65', '10°'],
    ['F11', '2_Degree', 'F11', '2°'],
    ['FL2', '10°', 'F2', '10°'],
    ['A', 'CIE 1964 (10 deg)', 'A', '10°'],
    ['C', 'CIE 1931', 'C', '2°'],
    ['D93', '2', null, null],
    ['constructor', '2', null, null],
    ['D50', '20', null, null],
  ] as const)('law: "%s" with "%s" is the white point %s/%s', (illuminant, observer, name, angle) => {
    expect(whitePointFrom(illuminant, observer)).toEqual(name === null ? null : { illuminant: name, observer: angle });
  });
});

describe('light reflectance value', () => {
  test('law: the maker’s value goes first, then the sum at D65/10°, then lightness', () => {
    const grey = { startNm: 380, stepNm: 10, values: Array(36).fill(0.2) };
    expect(paintLrvOf({ name: 'a', lrv: 31, reflectance: grey })).toEqual({ lrv: 31, basis: 'stated' });
    const summed = paintLrvOf({ name: 'b', reflectance: grey });
    expect(summed.basis).toBe('reflectance');
    expect(summed.lrv).toBeCloseTo(20, 9);
    // The whole test colour 12, a deep blue, has Y 6.6 for the 2° observer and 8.0 for the wider one (spec2cie).
    const wide = Number(
      csvRows('test-colour-samples-xyz.csv').find(
        (row) => row.sample === 'TCS12' && row.light === 'D65' && row.observer === '10°',
      )?.Y,
    );
    expect(paintLrvOf({ name: 'blue', reflectance: spectraIn('CIE-TCS.sp')[11]! }).lrv).toBeCloseTo(wide, 1);
    const fromL = paintLrvOf({
      name: 'c',
      lab: { L: lightnessFromLrv(20), a: 0, b: 0, illuminant: 'D65', observer: '2°' },
    });
    expect(fromL.basis).toBe('lightness');
    expect(fromL.lrv).toBeCloseTo(20, 9);
  });

  test('reference: LRV of L* 50, 20, 40, 75, 90 is 18.4, 2.99, 11.3, 48.3, 76.3 (CIE 1976, BS 8493)', () => {
    for (const [L, lrv] of [
      [50, 18.4],
      [20, 2.99],
      [40, 11.3],
      [75, 48.3],
      [90, 76.3],
    ] as const) {
      const found = paintLrvOf({ name: 'grey', lab: { L, a: 0, b: 0, illuminant: 'D65', observer: '2°' } });
      expect(Number(found.lrv.toPrecision(3))).toBe(lrv);
    }
  });
});
