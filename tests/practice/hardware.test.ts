import { hardwareFrom, hardwareIssuesOf } from '@enfilade/practice/hardware';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

describe('hardware as written', () => {
  test('story: what preparators write on cards is understood', () => {
    const cards: readonly [string, object][] = [
      ['2 D-rings, drop 95 mm, 50 cm apart', { kind: 'D-rings', hooks: 2, dropMm: 95, spacingMm: 500 }],
      ['D-rings', { kind: 'D-rings', hooks: 2 }],
      ['one D-ring, drop 4 cm', { kind: 'D-rings', hooks: 1, dropMm: 40 }],
      ['Two d rings 24 in apart; 3 3/4" below the top', { kind: 'D-rings', hooks: 2, dropMm: 95.25, spacingMm: 609.6 }],
      ['wire, 2 hooks 30 cm apart, drop 3½ in.', { kind: 'wire', hooks: 2, dropMm: 88.9, spacingMm: 300 }],
      ['wire on 2 D-rings, drop: 40mm', { kind: 'wire', hooks: 1, dropMm: 40 }],
      ['4 mirror plates', { kind: 'plates', hooks: 4 }],
      ['Cleat, 1/2 in drop', { kind: 'cleat', hooks: 1, dropMm: 12.7 }],
      ['batten, three hooks, spacing 1,2 m', { kind: 'batten', hooks: 3, spacingMm: 1200 }],
      ['plates, drop 15/16 in', { kind: 'plates', hooks: 2, dropMm: 23.8125 }],
      ['none', { kind: 'none', hooks: 0 }],
      ['Stands on the floor', { kind: 'none', hooks: 0 }],
    ];
    for (const [text, hardware] of cards) expect([text, hardwareFrom(text)]).toEqual([text, hardware]);
  });

  test('story: a figure without its unit, or a kind nobody knows, is told and not guessed', () => {
    expect(hardwareFrom('2 D-rings, drop 95')).toEqual({
      where: 'drop',
      what: 'has no unit',
      value: '2 D-rings, drop 95',
    });
    expect(hardwareFrom('2 D-rings, 50 apart')).toMatchObject({ where: 'spacing', what: 'has no unit' });
    expect(hardwareFrom('2 D-rings, 1/0 in apart')).toMatchObject({ where: 'spacing', what: 'has no number' });
    expect(hardwareFrom('chewing gum')).toMatchObject({ where: 'hardware', value: 'chewing gum' });
    expect(hardwareFrom('')).toMatchObject({ where: 'hardware', value: '' });
    expect(hardwareFrom('400 D-rings')).toMatchObject({ where: 'hooks', value: 400 });
  });

  test('story: hardware that is not of this piece is told', () => {
    const hardware = { kind: 'D-rings', hooks: 2, dropMm: 95, spacingMm: 500 } as const;
    expect(hardwareIssuesOf(hardware, { widthMm: 600, heightMm: 400 })).toEqual([]);
    expect(hardwareIssuesOf(hardware, { widthMm: 400, heightMm: 90 }).map(({ where }) => where)).toEqual([
      'drop',
      'spacing',
    ]);
  });

  test('law: no text makes it throw, and every figure it answers is finite', () => {
    const bits = fc.constantFrom(
      '2 ',
      'D-rings',
      ' wire',
      ', drop ',
      '95',
      ' mm',
      ' 1/0',
      ' apart',
      '"',
      ' cm',
      '½',
      ' hooks',
    );
    const texts = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(bits).map((each) => each.join('')),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const read = hardwareFrom(text);
        if ('what' in read) expect(read.where).not.toBe('');
        else expect([read.hooks, read.dropMm ?? 0, read.spacingMm ?? 0].every(Number.isFinite)).toBe(true);
      }),
      { seed: 2, numRuns: 2000 },
    );
  });
});
