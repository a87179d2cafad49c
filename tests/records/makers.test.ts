import { makerFrom } from '@enfilade/records/makers';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const only = (text: string) => {
  const { makers } = makerFrom(text);
  expect(makers).toHaveLength(1);
  return makers[0];
};

describe('makers as registrars write them', () => {
  // Qualifiers by CDWA, from memory; names are invented.
  test.each([
    ['Attributed to Jona Lind', ['attributed to']],
    ['Jona Lind (attributed)', ['attributed to']],
    ['Lind, Jona, attributed to', ['attributed to']],
    ['formerly attributed to Jona Lind', ['formerly attributed to']],
    ['probably by Jona Lind', ['probably by']],
    ['Possibly by Jona Lind', ['possibly by']],
    ['workshop of Jona Lind', ['workshop of']],
    ['studio of Jona Lind', ['workshop of']],
    ['Jona Lind and workshop', ['with workshop']],
    ['Circle of Jona Lind', ['circle of']],
    ['Follower of Jona Lind', ['follower of']],
    ['Lind, Jona, school of', ['school of']],
    ['manner of Jona Lind', ['manner of']],
    ['After Jona Lind', ['after']],
    ['manufactory of Jona Lind', ['manufactory of']],
    ['retailed by Jona Lind', ['retailed by']],
    ['attributed to circle of Jona Lind', ['attributed to', 'circle of']],
    ['Werkstatt von Jona Lind', ['workshop of']],
    ['nach Jona Lind', ['after']],
    ['d’après Jona Lind', ['after']],
    ['attribué à Jona Lind', ['attributed to']],
    ['Jona Lind', []],
    ['Studio Lind Jona', []],
  ])('reference: %s', (text, qualifiers) => {
    const maker = only(text);
    expect(maker).toMatchObject({ unknown: false, qualifiers });
    expect(maker?.name).toMatch(/^(Jona Lind|Lind, Jona|Studio Lind Jona)$/);
  });

  test.each([
    ['Unknown', {}],
    ['Unidentified maker', {}],
    ['Anonymous', {}],
    ['Unbekannt', {}],
    ['Unknown French', { culture: 'French' }],
    ['American, 19th century', { culture: 'American', dates: '19th century' }],
    ['Unknown maker, American, 1840s', { culture: 'American', dates: '1840s' }],
    ['Possibly French', { culture: 'French', qualifiers: ['possibly by'] }],
  ])('reference: %s names nobody', (text, said) => {
    expect(only(text)).toMatchObject({ name: '', unknown: true, ...said });
  });

  test('story: peoples, dates and roles are kept beside the name', () => {
    expect(only('Jona Lind (British, born Malta, 1840–1912)')).toMatchObject({
      name: 'Jona Lind',
      culture: 'British, born Malta',
      dates: '1840–1912',
    });
    expect(only('Jona Lind, British, 1840–1912')).toMatchObject({ name: 'Jona Lind', culture: 'British' });
    expect(only('Jona Lind?')).toMatchObject({ name: 'Jona Lind', uncertain: true });
    expect(makerFrom('Designed by Ray Aho, made by Aho & Co.').makers).toMatchObject([
      { name: 'Ray Aho', role: 'designer' },
      { name: 'Aho & Co.', role: 'maker' },
    ]);
  });

  test('story: several makers are several, a firm is one', () => {
    const names = (text: string) => makerFrom(text).makers.map(({ name }) => name);
    expect(names('Cora Aho and Ray Aho')).toEqual(['Cora Aho', 'Ray Aho']);
    expect(names('Cora Aho; Ray Aho')).toEqual(['Cora Aho', 'Ray Aho']);
    expect(names('Aho and Sons')).toEqual(['Aho and Sons']);
    expect(makerFrom('Cora Aho, after Ray Aho').makers).toMatchObject([
      { name: 'Cora Aho', qualifiers: [] },
      { name: 'Ray Aho', qualifiers: ['after'] },
    ]);
    expect(names('')).toEqual([]);
  });

  test('law: no text throws, and whoever is not unknown has a name out of the text', () => {
    const piece = fc.constantFrom(
      'Jona',
      'Lind',
      'after',
      'attributed to',
      ',',
      ';',
      '(',
      ')',
      'and',
      '1840',
      '?',
      'Unknown',
    );
    const texts = fc.oneof(
      fc.string(),
      fc.array(piece, { maxLength: 9 }).map((parts) => parts.join(' ')),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const { written, makers } = makerFrom(text);
        expect(written).toBe(text);
        for (const { name, unknown } of makers) {
          expect(name === '').toBe(unknown);
          for (const word of name.split(/[\s,]+/)) expect(text.normalize('NFC')).toContain(word);
        }
      }),
      { seed: 17, numRuns: 2000 },
    );
  });
});
