import { expect, test } from 'vitest';
import { numbersText } from '../../../client/src/shell/strip-numbers.ts';

test('story: the numbers of what waits stand at a wall, runs drawn together and no more than it has room for', () => {
  expect(numbersText([3])).toBe('3');
  expect(numbersText([3, 2])).toBe('2 3');
  expect(numbersText([1, 2, 3, 4])).toBe('1–4');
  expect(numbersText([1, 2, 6, 9])).toBe('1 2 6…');
  expect(numbersText([1, 4, 5, 6, 12])).toBe('1 4–6 12');
});
