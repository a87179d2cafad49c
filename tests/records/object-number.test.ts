import { numberRangeOf, objectNumberKey, ownerKeyFrom, recordKeyOf } from '@enfilade/records/object-number';
import { picturesMatched } from '@enfilade/records/picture-matching';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

describe('object numbers', () => {
  test.each([
    ['1931.14.3', '1931-14-3'],
    ['OM 1902.7', 'om_1902/7'],
    ['1987.12a–c', '1987.12A-C'],
    [' L.2026.4 ', 'L 2026 4'],
    ['1902 – 7', '1902\u22127'],
  ])('story: %s and %s are one number', (one, other) => {
    expect(objectNumberKey(one)).toBe(objectNumberKey(other));
  });

  test.each([
    ['1902.7', '1902.71'],
    ['1950.010', '1950.01'],
    ['19.27', '192.7'],
    ['12*', '12'],
  ])('story: %s and %s are two', (one, other) => {
    expect(objectNumberKey(one)).not.toBe(objectNumberKey(other));
  });

  test('story: two lenders may use one number, and no lender is the museum', () => {
    const keys = ['', 'held', 'Parish of Saint Osk', 'A Trust'].map((lender) => recordKeyOf({ lender, number: '1.2' }));
    expect(new Set(keys).size).toBe(4);
    expect(ownerKeyFrom('  ')).toBe('held');
    expect(ownerKeyFrom('Parish of  Saint Osk')).toBe(ownerKeyFrom('parish of saint-osk'));
  });

  test.each([
    ['1902.7.1–60', 60],
    ['1902.7.1 - 60', 60],
    ['1902.7.1-1902.7.60', 60],
    ['1987.12a–c', 3],
    ['OM F.12.1–4', 4],
    ['1902.7.1-60', null],
    ['1931-14-3', null],
    ['1931–14–30', null],
    ['1888.12', null],
    ['1902.7.60–1', null],
  ])('story: %s names %s pieces (common practice, no source)', (number, count) => {
    expect(numberRangeOf(number)?.count ?? null).toBe(count);
  });
});

describe('pictures by the number in their names', () => {
  const NUMBERS = ['1931.14.3', '1902.7', '1902.71', 'OM 1919.22.4', 'OM 1924.40.1–9', '1987.12', 'L.2026.4', '412'];
  const NAMES: readonly (readonly [fileName: string, number: string | null, order?: number | null])[] = [
    ['1931-14-3.tif', '1931.14.3', null],
    ['1902.7_01.jpg', '1902.7', 1],
    ['1902.71.jpg', '1902.71', null],
    ['1902.7.jpeg', '1902.7', null],
    ['1902.72.jpg', null],
    ['1919_22_04.png', 'OM 1919.22.4', null],
    ['om-1919.22.4 verso.png', 'OM 1919.22.4', null],
    ['OM_1924.40.1-9.png', 'OM 1924.40.1–9', null],
    ['OM 1924.40_07.png', 'OM 1924.40.1–9', 7],
    ['OM 1924.40_12.png', null],
    ['1987.12b.webp', '1987.12', 2],
    ['folder/of/L.2026.4.jpg', 'L.2026.4', null],
    ['DSC_0412.jpg', null],
    ['412.jpg', '412', null],
    ['2019.412.jpg', null],
    ['map 1823 front.jpg', null],
    ['.jpg', null],
    ['', null],
  ];

  const named = NAMES.map(([fileName, number, order = null]) => ({ fileName, number, order }));

  test.each(named)('story: $fileName shows $number', ({ fileName, number, order }) => {
    const { matched, unmatched } = picturesMatched([fileName], NUMBERS);
    if (number === null) expect([matched, unmatched]).toEqual([[], [fileName]]);
    else expect([matched, unmatched]).toEqual([[{ fileName, number, order }], []]);
  });

  test('story: 1823 in a name counts once 1823 is a number, and two houses with one figure are left for a person', () => {
    expect(picturesMatched(['map 1823 front.jpg'], ['1823']).matched).toMatchObject([{ number: '1823' }]);
    expect(picturesMatched(['1919.22.4.png'], ['OM 1919.22.4', 'LW 1919.22.4']).unmatched).toEqual(['1919.22.4.png']);
  });

  test('law: each file is matched or not, once, in order, and a file named by a number finds that number', () => {
    const number = fc
      .array(fc.integer({ min: 1, max: 40 }), { minLength: 2, maxLength: 4 })
      .map((groups) => groups.join('.'));
    fc.assert(
      fc.property(fc.uniqueArray(number, { minLength: 1, maxLength: 30 }), fc.array(fc.string()), (numbers, others) => {
        const files = [...numbers.map((text) => `${text.replaceAll('.', '_')}.jpg`), ...others];
        const { matched, unmatched } = picturesMatched(files, numbers);
        expect([...matched.map(({ fileName }) => fileName), ...unmatched].toSorted()).toEqual(files.toSorted());
        for (const [i, text] of numbers.entries()) expect(matched[i]).toMatchObject({ number: text, order: null });
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});
