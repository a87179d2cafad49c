import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rect } from '../../../client/src/stage/scene-items.ts';
import { type WordTask, wordPlaceOf } from '../../../client/src/stage/word-place.ts';

const work: Rect = { minX: 400, minY: 300, maxX: 520, maxY: 390 };
const wall: Rect = { minX: 0, minY: 0, maxX: 1000, maxY: 600 };
const task: WordTask = { work, width: 60, height: 18, within: wall, taken: [], pixel: 1 };

const meets = (a: Rect, b: Rect) => a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

describe('where a work’s word stands', () => {
  test('story: over the work where the wall is bare, beside it where something hangs above, nowhere in a thicket', () => {
    expect(wordPlaceOf(task)).toMatchObject({ x: 460, y: 256 });
    const above = { minX: 300, minY: 0, maxX: 640, maxY: 295 };
    expect(wordPlaceOf({ ...task, taken: [above] })).toMatchObject({ x: 546, y: 300 });
    const thicket = { minX: 0, minY: 0, maxX: 1000, maxY: 600 };
    expect(wordPlaceOf({ ...task, taken: [thicket] })).toBe(null);
  });

  test('law: a word touches nothing that is taken, its work neither, and stays on its wall', () => {
    const box = fc
      .tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 550 }), fc.integer({ min: 5, max: 160 }))
      .map(([x, y, side]) => ({ minX: x, minY: y, maxX: x + side, maxY: y + side }));
    let placed = 0;
    fc.assert(
      fc.property(fc.array(box, { maxLength: 25 }), box, fc.constantFrom(1, 2), (taken, at, pixel) => {
        const place = wordPlaceOf({ ...task, work: at, taken, pixel });
        if (place === null) return;
        placed += 1;
        const word = { minX: place.x, minY: place.y, maxX: place.x + 60, maxY: place.y + 18 };
        expect([at, ...taken].filter((rect) => meets(rect, word))).toEqual([]);
        expect([word.minX >= 0, word.minY >= 0, word.maxX <= 1000, word.maxY <= 600]).toEqual([true, true, true, true]);
      }),
      { seed: 21, numRuns: 500 },
    );
    expect(placed).toBeGreaterThan(250);
  });
});
