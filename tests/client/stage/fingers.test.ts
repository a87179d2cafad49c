import { describe, expect, test } from 'vitest';
import { Fingers } from '../../../client/src/stage/fingers.ts';

describe('fingers on the stage', () => {
  test('story: two fingers going apart scale about the point between them; going together they move', () => {
    const fingers = new Fingers();
    fingers.put(1, 100, 100);
    fingers.put(2, 200, 100);
    expect(fingers.count).toBe(2);
    expect(fingers.put(2, 300, 100)).toEqual({ dx: 50, dy: 0, factor: 2, x: 200, y: 100 });
    fingers.put(1, 100, 140);
    const step = fingers.put(2, 300, 140);
    expect([step.dy, step.y]).toEqual([20, 140]);
    fingers.lift(1);
    expect([fingers.count, fingers.has(1), fingers.has(2)]).toEqual([1, false, true]);
  });
});
