import { newestOf, printFrom, shortDigest, versionsOf } from '@enfilade/shared/print-stamps';
import type { Version } from '@enfilade/shared/protocol';
import { describe, expect, test } from 'vitest';

const version = (number: number, what: string, digest: string): Version => ({
  number,
  what,
  digest: digest.padEnd(64, '0'),
  at: `2026-05-${10 + number}T09:00:00.000Z`,
  by: 'Dov Castellane',
});
const VERSIONS = [
  version(1, 'vignette list', '4f1c09ab'),
  version(2, 'elevation dye:head', '77aa11'),
  version(3, 'vignette list', 'beef1234'),
  version(4, 'elevation dye:left', '4f1c77'),
  version(5, 'vignette list', '4f1c09ab'),
];
const answered = (typed: string) => {
  const answer = printFrom(VERSIONS, typed);
  if (answer.kind === 'superseded') return `${answer.version.number} by ${answer.by.number}`;
  if (answer.kind === 'newest') return `${answer.version.number} newest`;
  return answer.kind === 'several' ? answer.numbers.join() : answer.kind;
};

describe('the stamp on a print', () => {
  test.each([
    ['3', '3 by 5'],
    [' Version 3 ', '3 by 5'],
    ['v.1', '1 by 5'],
    ['5', '5 newest'],
    ['2', '2 newest'],
    ['beef', '3 by 5'],
    ['BEEF 1234', '3 by 5'],
    // Frozen again after others: the print may be the newer, which is as good.
    ['4f1c09ab', '5 newest'],
    ['4f1c', '4,5'],
    ['9', 'unknown'],
    ['0000', 'unknown'],
    ['abcdef12', 'unknown'],
    ['4f1', 'not a stamp'],
    ['the green one', 'not a stamp'],
    ['', 'not a stamp'],
  ])('story: %j on a print is told as %s', (typed, told) => {
    expect(answered(typed)).toBe(told);
  });

  test('law: every version is found by its number and by what its print bears, and only the last of a paper is the newest', () => {
    for (const { number, what, digest } of VERSIONS) {
      const newest = newestOf(VERSIONS, what)?.number;
      expect(answered(String(number))).toBe(number === newest ? `${number} newest` : `${number} by ${newest}`);
      const found = printFrom(VERSIONS, shortDigest(digest));
      expect('version' in found ? found.version.digest : null).toBe(digest);
    }
    expect(versionsOf(VERSIONS, 'vignette list').map(({ number }) => number)).toEqual([5, 3, 1]);
  });
});
