import { photographConfidenceOf } from '@enfilade/colour/photograph-confidence';
import { describe, expect, test } from 'vitest';
import { drawn, PEAR_BLOCK } from './samples.ts';

const LARGE = { widthPx: 4000, heightPx: 3000, profile: 'Display P3', target: true };

describe('photographConfidenceOf', () => {
  test('law: with a profile, a target, enough pixels and nothing clipped there is no doubt', () => {
    expect(photographConfidenceOf(PEAR_BLOCK, LARGE)).toEqual({ confidence: 1, doubts: [] });
  });

  test('law: each lack says so once and takes its part', () => {
    const lacks = [
      { ...LARGE, profile: null },
      { ...LARGE, target: false },
      { ...LARGE, heightPx: 120 },
    ];
    for (const facts of lacks) {
      const { confidence, doubts } = photographConfidenceOf(PEAR_BLOCK, facts);
      expect(confidence).toBeLessThan(1);
      expect(doubts).toHaveLength(1);
    }
    const all = photographConfidenceOf(PEAR_BLOCK, { widthPx: 90, heightPx: 90 });
    expect(all.doubts).toHaveLength(3);
    expect(all.confidence).toBeCloseTo(0.8 * 0.8 * 0.6, 12);
  });

  test('law: burnt lights and blocked darks count on the thing alone, not on its paper', () => {
    const half = drawn(40, 40, (x) => (x < 20 ? { L: 100, a: 0, b: 0 } : { L: 0, a: 0, b: 0 }));
    const { doubts } = photographConfidenceOf(half, LARGE);
    expect(doubts).toEqual(['Its lights are burnt out over 50 % of it.', 'Its darks are blocked up over 50 % of it.']);
    const right = Uint8Array.from({ length: 1600 }, (_, i) => (i % 40 < 20 ? 0 : 1));
    expect(photographConfidenceOf(half, LARGE, right).doubts).toEqual(['Its darks are blocked up over 100 % of it.']);
    const none = photographConfidenceOf({ data: new Uint8Array(0), width: 0, height: 0 }, LARGE);
    expect(none.confidence).toBe(1);
  });
});
