import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Findable, found, searchFrom, sorted } from '../../../client/src/shell/rail-search.ts';

const base: Findable = {
  objectId: 'o',
  number: 'OM 1868.2',
  title: 'Mould, fluted',
  kind: 'copper mould',
  medium: 'Copper, tinned',
  maker: 'Unknown',
  dateText: 'c. 1868',
  lender: '',
  sizeKnown: true,
  heightMm: 190,
  widthMm: 190,
};
const mould = base;
const gear: Findable = {
  ...base,
  objectId: 'g',
  number: 'L.2026.4',
  title: 'Sluice gear',
  kind: 'machine',
  medium: 'Cast iron',
  dateText: 'c. 1870',
  lender: 'Lower Weir Conservancy',
  heightMm: 1480,
  widthMm: 780,
};
const unsized: Findable = { ...base, objectId: 'u', number: 'OM 2', title: 'Cuivre étamé', sizeKnown: false };

describe('finding among the unplaced', () => {
  test('story: copper, 1868, under 30 cm finds the mould and neither the gear nor what has no size', () => {
    const search = searchFrom('copper, 1868, under 30 cm', 'cm');
    expect([mould, gear, unsized].filter((one) => found(search, one))).toEqual([mould]);
  });

  test('story: a bare number is in the person’s unit; a named unit stands', () => {
    expect(searchFrom('under 12', 'in').underMm).toBeCloseTo(304.8, 6);
    expect(searchFrom('under 12', 'cm').underMm).toBe(120);
    expect(searchFrom('over 1.5 m, under 200 cm', 'in')).toEqual({ words: [], underMm: 2000, overMm: 1500 });
  });

  test('story: under and over limit the longer side', () => {
    expect(found(searchFrom('over 100 cm', 'cm'), gear)).toBe(true);
    expect(found(searchFrom('over 150 cm', 'cm'), gear)).toBe(false);
    expect(found(searchFrom('under 100 cm', 'cm'), gear)).toBe(false);
  });

  test('story: accents and capitals do not stand in the way, either way round', () => {
    expect(found(searchFrom('ETAME', 'cm'), unsized)).toBe(true);
    expect(found(searchFrom('étamé', 'cm'), { ...unsized, title: 'etame' })).toBe(true);
  });

  test('story: a year is a word and not a length', () => {
    expect(searchFrom('1868', 'cm')).toEqual({ words: ['1868'], underMm: null, overMm: null });
  });

  test('law: every further word finds no more than before', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('copper', 'gear', 'om', 'unknown', 'zzz'), { maxLength: 4 }), (words) => {
        const all = [mould, gear, unsized];
        const count = (text: string) => all.filter((one) => found(searchFrom(text, 'cm'), one)).length;
        for (let n = 1; n <= words.length; n++) {
          expect(count(words.slice(0, n).join(' '))).toBeLessThanOrEqual(count(words.slice(0, n - 1).join(' ')));
        }
      }),
      { seed: 5 },
    );
  });

  test('story: by size the largest stands first and what has no size last', () => {
    expect(sorted([unsized, mould, gear], 'size').map(({ objectId }) => objectId)).toEqual(['g', 'o', 'u']);
  });

  test('story: numbers within one kind go as people count, 2 before 10', () => {
    const ten = { ...base, objectId: '10', number: 'OM 10' };
    const two = { ...base, objectId: '2', number: 'OM 2' };
    expect(sorted([ten, two], 'kind').map(({ objectId }) => objectId)).toEqual(['2', '10']);
  });
});
