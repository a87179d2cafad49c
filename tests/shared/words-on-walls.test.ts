import type { Paint } from '@enfilade/shared/schema';
import { sizesOfWords, wordsOnPaint } from '@enfilade/shared/words-on-walls';
import { describe, expect, test } from 'vitest';

const paint = (L: number, fields: Partial<Paint> = {}): Paint => ({
  name: 'paint',
  lab: { L, a: 0, b: 0 },
  order: 'a0',
  ...fields,
});

describe('words on walls', () => {
  // WCAG 2.2, 1.4.3: (L1 + 0.05) / (L2 + 0.05) of relative luminances, here L* 95 (0.8762) and L* 18 (0.0265) on a stated LRV.
  test('reference: ratios are WCAG’s of the measured LRV, the better letters first', () => {
    const dark = wordsOnPaint(paint(33, { lrv: 8 }));
    expect(dark.letters.map(({ name }) => name)).toEqual(['White letters', 'Black letters']);
    expect(dark.letters[0]?.ratio).toBeCloseTo((0.8762 + 0.05) / (0.08 + 0.05), 2);
    expect(dark.letters[1]?.ratio).toBeCloseTo((0.08 + 0.05) / (0.0265 + 0.05), 1);
    expect(dark.letters[0]).toMatchObject({ use: 'enhanced', lrvWord: 'enough' });
    expect(dark.letters[1]).toMatchObject({ use: 'none', lrvWord: 'short' });
    expect(dark).toMatchObject({ lrv: 8, lrvBasis: 'as its maker states it' });
    expect(wordsOnPaint(paint(85)).letters[0]?.name).toBe('Black letters');
  });

  // BS 8300-2:2018, annex B: 30 points of LRV for what must be found.
  test('reference: a white label is found on a dark wall and hardly on a pale one', () => {
    expect(wordsOnPaint(paint(33)).label.words).toBe('A white label is found at once.');
    const pale = wordsOnPaint(paint(90)).label;
    expect(pale.lrvPoints).toBeLessThan(20);
    expect(pale.words).toContain('give it an edge');
  });

  test('law: letters never get smaller with distance, nor under the standard’s least, and where contrast allows none there are none', () => {
    expect(sizesOfWords(2000, 'none')).toEqual([]);
    let before = sizesOfWords(100, 'all');
    for (const distance of [500, 1000, 2500, 6000, 15_000]) {
      const sizes = sizesOfWords(distance, 'all');
      for (const [i, size] of sizes.entries()) {
        expect(size.points).toBeGreaterThanOrEqual(before[i]?.points ?? Number.NaN);
        expect(size.capitalMm).toBeGreaterThan(size.xHeightMm);
      }
      before = sizes;
    }
    // The least of a national museum's standard: 24, 35 and 75 points, whatever the distance.
    expect(sizesOfWords(100, 'all').map(({ points, by }) => [points, by])).toEqual([
      [24, 'standard'],
      [35, 'standard'],
      [75, 'standard'],
    ]);
    expect(sizesOfWords(15_000, 'all').every(({ by }) => by === 'distance')).toBe(true);
  });
});
