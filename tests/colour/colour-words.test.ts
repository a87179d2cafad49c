import { colourFamilyOf, colourNameOf } from '@enfilade/colour/colour-words';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

describe('colour words', () => {
  // Common practice, no source: what a person across the room would call these.
  test.each([
    ['deep verdigris', 33, -25, -4, 'deep green'],
    ['old varnish over hills', 36, -20, 0, 'dark green'],
    ['straw', 80, 0, 30, 'pale straw'],
    ['alder bark', 30, 12, 14, 'dark brown'],
    ['pear wood', 52, 14, 26, 'brown'],
    ['lamp black', 8, 1, 1, 'near black'],
    ['iron', 30, 1, 1, 'dark grey'],
    ['zinc', 60, 0, -2, 'grey'],
    ['paper', 91, 0, 7, 'off-white'],
    ['gesso', 97, 0, 2, 'white'],
    ['undyed wool', 90, 0, 13, 'cream'],
    ['madder', 37, 42, 24, 'deep red'],
    ['weld', 80, -2, 60, 'bright yellow'],
    ['indigo', 24, 6, -30, 'deep blue'],
    ['slate', 43, -5, -17, 'greyed blue'],
    ['rose', 66, 26, 12, 'pink'],
  ])('story: %s (%d, %d, %d) is called %s', (_, L, a, b, name) => {
    expect(colourNameOf({ L, a, b })).toBe(name);
  });

  test('law: no hue is named where there is no chroma, on any lightness', () => {
    for (let L = 0; L <= 100; L++) {
      for (const [a, b] of [
        [0, 0],
        [2, 0],
        [-2, 1],
        [1, -3],
      ] as const) {
        expect(['black', 'grey', 'off-white', 'white']).toContain(colourFamilyOf({ L, a, b }));
      }
    }
  });

  test('law: every colour has a name of small letters that ends in its family', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: -120, max: 120, noNaN: true }),
        fc.double({ min: -120, max: 120, noNaN: true }),
        (L, a, b) => {
          const name = colourNameOf({ L, a, b });
          expect(name).toMatch(/^[a-z][a-z -]+$/);
          expect(name.endsWith(colourFamilyOf({ L, a, b }))).toBe(true);
        },
      ),
      { numRuns: 3_000, seed: 31 },
    );
  });
});
