import { gapsOf } from '@enfilade/arrangement/neighbour-gaps';
import { outerBoxOf } from '@enfilade/shared/aligning';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { centredMoveOf, moveForGap } from '../../../client/src/cards/gap-moves.ts';

const WALL = { leftMm: 0, rightMm: 6000, bottomMm: 0, topMm: 3600 };

describe('a typed gap moves the piece', () => {
  test('law: moved as told, the gap on that side measures what was typed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('left', 'right', 'above', 'below' as const),
        fc.integer({ min: 0, max: 800 }),
        fc.integer({ min: 1800, max: 4200 }),
        fc.integer({ min: 1000, max: 2600 }),
        (side, wantedMm, xMm, yMm) => {
          const box = { xMm, yMm, widthMm: 600, heightMm: 400 };
          const before = gapsOf(box, [], WALL)[side as 'left'];
          const { dxMm, dyMm } = moveForGap(side as 'left', before.mm, wantedMm);
          const after = gapsOf({ ...box, xMm: xMm + dxMm, yMm: yMm + dyMm }, [], WALL)[side as 'left'];
          expect(after.mm).toBe(wantedMm);
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });

  test('story: 47.5 cm to the block on the left becomes 30, so the view goes 17.5 cm left and nothing else', () => {
    expect(moveForGap('left', 475, 300)).toEqual({ dxMm: -175, dyMm: 0 });
    expect(moveForGap('right', 475, 300)).toEqual({ dxMm: 175, dyMm: 0 });
    expect(moveForGap('below', 734, 700)).toEqual({ dxMm: 0, dyMm: -34 });
  });

  test('law: the box round a turned piece covers its corners and no more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 3000 }),
        fc.integer({ min: 10, max: 3000 }),
        fc.integer({ min: 0, max: 359 }),
        (widthMm, heightMm, degrees) => {
          const box = outerBoxOf({ widthMm, heightMm }, degrees);
          const turn = (degrees * Math.PI) / 180;
          const corners = [
            [1, 1],
            [1, -1],
            [-1, 1],
            [-1, -1],
          ].map(([sx, sy]) => {
            const [x, y] = [((sx as number) * widthMm) / 2, ((sy as number) * heightMm) / 2];
            return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)] as const;
          });
          expect(box.widthMm / 2).toBeCloseTo(Math.max(...corners.map(([x]) => x)), 6);
          expect(box.heightMm / 2).toBeCloseTo(Math.max(...corners.map(([, y]) => y)), 6);
        },
      ),
      { seed: 12, numRuns: 200 },
    );
  });

  test('law: a centred group leaves as much on its left as on its right', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ xMm: fc.integer({ min: 0, max: 6000 }), widthMm: fc.integer({ min: 10, max: 900 }) }), {
          minLength: 1,
          maxLength: 12,
        }),
        (boxes) => {
          const dx = centredMoveOf(boxes, 3000);
          const left = Math.min(...boxes.map((box) => box.xMm + dx - box.widthMm / 2));
          const right = 6000 - Math.max(...boxes.map((box) => box.xMm + dx + box.widthMm / 2));
          expect(left).toBeCloseTo(right, 6);
        },
      ),
      { seed: 13, numRuns: 200 },
    );
  });
});
