import { dateFrom } from '@enfilade/records/dates';
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { makerFrom } from '@enfilade/records/makers';
import { outerSizeOf } from '@enfilade/records/outer-size';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rowsOf } from './rows.ts';

const FILES = [
  'dimensions-tate-gold.tsv',
  'dimensions-wcma.tsv',
  'dimensions-lido-raw.txt',
  'dates-cmoa-gold.tsv',
  'dates-tate-gold.tsv',
  'dates-wcma-gold.tsv',
  'dates-lido-raw.txt',
];

describe('real texts, damaged', () => {
  test('law: a cut, doubled, mixed or overwritten text throws nowhere and is kept as written', () => {
    const real = FILES.flatMap((file) => rowsOf(file).map(([raw = '']) => raw));
    const text = fc.constantFrom(...real);
    const damaged = fc.oneof(
      fc
        .tuple(text, fc.nat(200), fc.nat(200))
        .map(([one, from, to]) => one.slice(Math.min(from, to), Math.max(from, to))),
      fc.tuple(text, fc.integer({ min: 2, max: 12 })).map(([one, times]) => one.repeat(times)),
      fc.tuple(text, text, fc.nat(60)).map(([one, other, at]) => one.slice(0, at) + other + one.slice(at)),
      fc
        .tuple(text, fc.nat(60), fc.string({ unit: 'grapheme', maxLength: 6 }))
        .map(([one, at, put]) => one.slice(0, at) + put + one.slice(at + put.length)),
      fc.array(text, { minLength: 2, maxLength: 6 }).map((some) => some.join(' ')),
    );
    fc.assert(
      fc.property(damaged, (one) => {
        const reading = dimensionsFrom(one);
        expect(reading.written).toBe(one);
        outerSizeOf({ dimensions: reading, framed: reading });
        expect(dateFrom(one).written).toBe(one);
        expect(makerFrom(one).written).toBe(one);
      }),
      { seed: 23, numRuns: 3000 },
    );
  });
});
