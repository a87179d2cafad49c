import type { Box } from '@enfilade/arrangement/boxes';
import { hang } from '@enfilade/arrangement/hangs';
import { trueToName } from '@enfilade/arrangement/true-to-name';
import { describe, expect, test } from 'vitest';

const box = (xMm: number, yMm = 1500, widthMm = 200, heightMm = 200): Box => ({ xMm, yMm, widthMm, heightMm });

describe('a way is offered only where a person would see in it what it is called', () => {
  test('story: pairs want an even number and clearly wider gaps between them; one pair is no stack (own rules)', () => {
    // Within 150, between 250 and then 200.
    expect(
      trueToName(
        'line in pairs',
        [0, 350, 800, 1150].map((x) => box(x)),
        60,
      ),
    ).toBe(true);
    expect(
      trueToName(
        'line in pairs',
        [0, 350, 750, 1100].map((x) => box(x)),
        60,
      ),
    ).toBe(false);
    expect(
      trueToName(
        'line in pairs',
        [0, 350, 900].map((x) => box(x)),
        60,
      ),
    ).toBe(false);
    expect(trueToName('pendants stacked', [box(0), box(900)], 60)).toBe(false);
  });

  test('story: a frame by itself is no salon; a rectangle with a hollow in it is no double hang (own rules)', () => {
    const three = [box(0), box(260), box(130, 1760)];
    expect(trueToName('massed salon', three, 60)).toBe(true);
    expect(trueToName('massed salon', [...three, box(900)], 60)).toBe(false);
    const rows = (low: number) => [box(0, 1000, 200, low), box(260, 1000), box(0, 1600), box(260, 1600)];
    expect(trueToName('double hang in a rectangle', rows(390), 60)).toBe(true);
    expect(trueToName('double hang in a rectangle', rows(410), 60)).toBe(false);
  });

  test('law: what finds no room leaves an arch all the same: no end is heavier than the other', () => {
    // Widths fall from 1,200 to 250: more than 6 m hold.
    const pieces = Array.from({ length: 20 }, (_, i) => ({ widthMm: 1200 - 50 * i, heightMm: 500 }));
    const surface = { leftMm: 0, rightMm: 6000, bottomMm: 300, topMm: 3300 };
    const task = { surface, pieces, keepClear: [], gapMm: 60, centreLineMm: 1500, seed: 1 };
    for (const name of ['line that fills the wall', 'double hang on an axis'] as const) {
      const { places, unplaced, measures } = hang(name, task);
      expect(unplaced.length, name).toBeGreaterThan(0);
      expect(Math.abs(measures.balanceX), name).toBeLessThan(0.2);
      const along = pieces.flatMap(({ widthMm }, i) => (places[i] ? [{ widthMm, xMm: places[i].xMm }] : []));
      along.sort((a, b) => a.xMm - b.xMm);
      const widest = Math.max(...along.map(({ widthMm }) => widthMm));
      for (const end of [along[0], along.at(-1)]) expect(end!.widthMm, name).toBeLessThan(widest);
    }
  });
});
