import { centimetresText, inchesText, lengthFrom, lengthText, sizeText, toInches } from '@enfilade/space/lengths';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const mm = (text: string, unit: 'cm' | 'in' = 'cm') => lengthFrom(text, unit).mm;

describe('written', () => {
  test('law: centimetres always have one decimal', () => {
    expect([1524, 1500, 5, 0, -30, 12.5, -0.4].map(centimetresText)).toEqual([
      '152.4',
      '150.0',
      '0.5',
      '0.0',
      '-3.0',
      '1.3',
      '0.0',
    ]);
  });

  // One inch is 25.4 mm exactly: international yard and pound agreement, 1959 (from memory).
  test('reference: inches are reduced fractions of a sixteenth', () => {
    expect([1525.5875, 1524, 12.7, 0, 25.4 * 0.75, 1525, -12.7, 0.1].map((each) => toInches(each))).toEqual([
      '60 1/16',
      '60',
      '1/2',
      '0',
      '3/4',
      '60 1/16',
      '-1/2',
      '0',
    ]);
    expect(inchesText(1016 + 9.525)).toEqual({ negative: false, whole: 40, numerator: 3, denominator: 8 });
    expect(toInches(25.4 * (63.99 / 64), 64)).toBe('1');
    expect(toInches(3.2, 8)).toBe('1/8');
  });

  test('law: sizes read height, width, depth; whole centimetres carry no decimal', () => {
    expect(sizeText(660, 860, 60, 'cm')).toBe('66 × 86 × 6');
    expect(sizeText(83, 83, null, 'cm')).toBe('8.3 × 8.3');
    expect(sizeText(609.6, 914.4, 63.5, 'in')).toBe('24 × 36 × 2 1/2');
    expect(sizeText(1000, 100, null, 'cm')).toBe('100 × 10');
  });

  test('law: what is no number is refused by name', () => {
    expect(() => centimetresText(Number.NaN)).toThrow(RangeError);
    expect(() => toInches(1, 0)).toThrow(new RangeError('denominator is 0; it must be a whole number of 1 or more'));
  });
});

describe('typed', () => {
  test('reference: bare numbers are in the unit of the person, 25.4 mm to the inch', () => {
    expect([mm('152.4'), mm('152,4'), mm(' 152 '), mm('.5'), mm('60', 'in'), mm('-3.0')]).toEqual([
      1524, 1524, 1520, 5, 1524, -30,
    ]);
    for (const text of ['60 1/16', '60-1/16', '60 1/16"', '60¹⁄₁₆', '60 1⁄16 in.', '5 ft 1/16 in', "5' 1/16"]) {
      expect([text, mm(text, 'in')]).toEqual([text, 1525.5875]);
    }
    expect([mm('60½', 'in'), mm('60 ½"'), mm('1/2', 'in'), mm('½ in')]).toEqual([1536.7, 1536.7, 12.7, 12.7]);
  });

  test('reference: a unit that is written overrides it', () => {
    expect([mm('1524 mm', 'in'), mm('1.524m', 'in'), mm('152,4 CM', 'in'), mm('60 inches'), mm('6 ft')]).toEqual([
      1524, 1524, 1524, 1524, 1828.8,
    ]);
    // The worked table of trade conventions, rows 18 and 19.
    expect([mm('5 ft. 4 in.'), mm('3 ft. 2 1/2 in.'), mm('6\'2"'), mm('3′11″')]).toEqual([
      1625.6, 977.9, 1879.6, 1193.8,
    ]);
  });

  test('story: what cannot be read is told and never guessed', () => {
    for (const text of [
      '',
      '  ',
      'wide',
      '12 x 9',
      '1/0',
      '60 17/16',
      '60.5 1/2',
      '1,524',
      '12 34',
      '1.2.3',
      '5 kg',
      '99999999999',
      '2 km',
      'left',
      '--5',
      '5 cm 3',
      'ft',
      '"',
      '1e3',
      'Infinity',
    ]) {
      expect([text, lengthFrom(text, 'cm').issue?.value]).toEqual([text, text]);
    }
    expect(lengthFrom('2000 m', 'cm').issue?.what).toBe('is longer than a kilometre');
    expect(lengthFrom('1,524', 'cm').issue?.what).toBe('could be thousands or decimals; write a point');
  });

  test('law: no text makes it throw, and what it answers is a finite length or an issue', () => {
    const bits = fc.constantFrom('1', '23', '/', '.', ',', ' ', '-', '½', "'", '"', 'ft', 'in', 'cm', 'm', '′′', 'x');
    const texts = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(bits).map((each) => each.join('')),
    );
    fc.assert(
      fc.property(texts, fc.constantFrom('cm' as const, 'in' as const), (text, unit) => {
        const read = lengthFrom(text, unit);
        expect(read.issue === undefined ? Number.isFinite(read.mm) : read.issue.value === text).toBe(true);
      }),
      { seed: 6, numRuns: 2000 },
    );
  });

  test('law: whole millimetres survive centimetres exactly and inches to half a sixteenth', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 20_000 }), (each) => {
        expect(mm(lengthText(each, 'cm'))).toBe(each);
        expect(Math.abs((mm(lengthText(each, 'in'), 'in') ?? Number.NaN) - each)).toBeLessThanOrEqual(25.4 / 32 + 1e-6);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });

  test('law: inches typed in sixteenths come back as they were typed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2000 }), (sixteenths) => {
        const text = toInches((sixteenths * 25.4) / 16);
        expect(toInches(mm(text, 'in') ?? Number.NaN)).toBe(text);
      }),
      { seed: 8 },
    );
  });
});
