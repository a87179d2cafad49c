import { dateLine, dateWordsOf, makerLine, makerWordsOf } from '@enfilade/shared/making-words';
import { expect, test } from 'vitest';

// Spans by CCO 2006, 4.2.3 and the house rules; EDTF by ISO 8601-2:2019, whose 12 BCE is -0011.
test.each([
  ['1887', '1887'],
  ['c. 1880', '1875 to 1885, approximate (1880~)'],
  ['before 1850', 'to 1849 (../1849)'],
  ['after 1920', 'from 1921 (1921/..)'],
  ['12–9 BCE', '12 BCE to 9 BCE (-0011/-0008)'],
  ['12 May 1876', '12 May 1876 (1876-05-12)'],
  ['1962, printed 1974', 'made 1962; printed 1974 (1962)'],
  ['n.d.', 'undated'],
  ['blue', 'not read as a date'],
])('reference: “%s” is read as %s', (text, line) => {
  const words = dateWordsOf(text);
  expect(words === null ? null : dateLine(words)).toBe(line);
});

test('story: what qualifies a maker stands apart from the name', () => {
  expect(makerLine(makerWordsOf('attributed to Jona Lind (British, 1840–1912)'))).toBe(
    'Jona Lind: attributed to, British, 1840–1912',
  );
  expect(makerLine(makerWordsOf('Unknown French maker'))).toMatch(/^not known: French/);
  expect(makerWordsOf('')).toEqual([]);
  expect(dateWordsOf(' ')).toBeNull();
});
