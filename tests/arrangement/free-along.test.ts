import type { Box } from '@enfilade/arrangement/boxes';
import { overlaps } from '@enfilade/arrangement/boxes';
import { freeAlong } from '@enfilade/arrangement/free-along';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const wanted: Box = { xMm: 3000, yMm: 1500, widthMm: 800, heightMm: 600 };
const bare = { wanted, surfaceWidthMm: 6000, others: [], keepClear: [], gapMm: 450 };

describe('a free place along a wall', () => {
  test('reference: in the middle of a bare wall; beside what hangs there, by the gap; clear of a doorway (by hand)', () => {
    expect(freeAlong(bare)).toBe(3000);
    const hung: Box = { xMm: 3100, yMm: 1500, widthMm: 1000, heightMm: 900 };
    // To the left: 3100 − 500 − 450 − 400.
    expect(freeAlong({ ...bare, others: [hung] })).toBe(1750);
    const doorway: Box = { xMm: 1600, yMm: 1050, widthMm: 1200, heightMm: 2100 };
    // The left is a doorway now; to the right: 3100 + 500 + 450 + 400.
    expect(freeAlong({ ...bare, others: [hung], keepClear: [doorway] })).toBe(4450);
  });

  test('story: what hangs above the line is no hindrance; on a full wall less than the gap is taken, or nothing is free', () => {
    const above: Box = { xMm: 3000, yMm: 3200, widthMm: 2000, heightMm: 400 };
    expect(freeAlong({ ...bare, others: [above] })).toBe(3000);
    const [left, right] = [
      { xMm: 1200, yMm: 1500, widthMm: 2400, heightMm: 600 },
      { xMm: 4800, yMm: 1500, widthMm: 2400, heightMm: 600 },
    ];
    // 1,200 mm between them leave 200 to either side of 800.
    expect(freeAlong({ ...bare, others: [left, right] })).toBe(3000);
    expect(freeAlong({ ...bare, others: [{ ...left, widthMm: 9000 }] })).toBe(undefined);
  });

  test('law: it stays on the wall, and covers nothing it was told of wherever that can be had', () => {
    const box = fc.record({
      xMm: fc.integer({ min: 0, max: 6000 }),
      yMm: fc.integer({ min: 300, max: 3300 }),
      widthMm: fc.integer({ min: 100, max: 1200 }),
      heightMm: fc.integer({ min: 100, max: 1200 }),
    });
    let moved = 0;
    fc.assert(
      fc.property(fc.array(box, { maxLength: 8 }), fc.array(box, { maxLength: 2 }), (others, keepClear) => {
        const xMm = freeAlong({ ...bare, others, keepClear });
        const clear = (x: number) => ![...others, ...keepClear].some((other) => overlaps({ ...wanted, xMm: x }, other));
        const somewhere = Array.from({ length: 5201 }, (_, i) => 400 + i).some((x) =>
          [...others.map((other) => [other, 45] as const), ...keepClear.map((other) => [other, 0] as const)].every(
            ([other, gap]) => !overlaps({ ...wanted, xMm: x }, other, gap),
          ),
        );
        if (xMm !== 3000) moved += 1;
        expect(xMm !== undefined).toBe(somewhere);
        if (xMm !== undefined) expect([clear(xMm), xMm >= 400, xMm <= 5600]).toEqual([true, true, true]);
      }),
      { seed: 22, numRuns: 200 },
    );
    expect(moved).toBeGreaterThan(60);
  });
});
