import { NumberShapes } from '@enfilade/records/changed-numbers';
import { describe, expect, test } from 'vitest';

const date = (year: number, month: number, day: number) => ({ text: 'shown', date: { year, month, day } });

// What spreadsheets make of typed numbers, from practice (common practice, no source).
describe('object numbers that a spreadsheet has turned into something else', () => {
  test.each([
    ['year first', ['1987.12.4', '1990.3.1'], date(1987, 12, 5), '1987.12.5'],
    ['padded', ['1987-02-04', '1990-03-01'], date(1987, 2, 5), '1987-02-05'],
    ['short years first', ['87.12.4', '90.3.1'], date(1987, 12, 5), '87.12.5'],
  ])('story: %s: put back as its neighbours are written', (_, neighbours, cell, number) => {
    expect(new NumberShapes(neighbours).changed(cell)?.restored).toBe(number);
  });

  test('story: where day and month could be either, nothing is put back and the ways are offered', () => {
    const changed = new NumberShapes(['12-5', '3-88']).changed(date(2026, 12, 5));
    expect(changed?.restored).toBeNull();
    expect(changed?.choices).toEqual(['12-5', '5-12', '12-26']);
    expect(new NumberShapes([]).changed(date(1987, 12, 5))).toMatchObject({ restored: null, choices: ['1987.12.5'] });
  });

  test('story: noughts that a figure lost come back where its neighbours all have them', () => {
    const shapes = new NumberShapes(['1950.012', '1950.110']);
    expect(shapes.changed({ text: '1950.01', figure: 1950.01 })?.restored).toBe('1950.010');
    expect(shapes.changed({ text: '1950.123', figure: 1950.123 })).toBeNull();
    expect(new NumberShapes(['1950.1', '1950.110']).changed({ text: '1950.01', figure: 1950.01 })).toBeNull();
  });
});
