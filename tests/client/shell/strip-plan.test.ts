import type { Opening, Room } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { northDegreesOf, stripPlanOf, wallSpanOf } from '../../../client/src/shell/strip-plan.ts';

const room = (name: string, order: number, widthMm: number, depthMm: number): Room => ({
  name,
  order,
  widthMm,
  depthMm,
  heightMm: 3600,
  headFaces: 'east',
  cornersMm: [0, 0, 0, 0],
  laserMm: 1000,
});
// The rooms of scenario.md; the doorways' middles 1950 mm from the entrance walls.
const ROOMS = new Map([
  ['count', room('Counting Room', 3, 7200, 5400)],
  ['wheel', room('Wheel Room', 1, 8400, 6200)],
  ['dye', room('Dye House', 2, 6000, 6000)],
]);
const doorway = (from: string, depthFrom: number, to: string): Opening => ({
  kind: 'doorway',
  name: `${from} to ${to}`,
  widthMm: 1200,
  heightMm: 2200,
  sillMm: 0,
  sides: [
    { surface: `${from}:right`, xMm: depthFrom - 1950 - 600 },
    { surface: `${to}:left`, xMm: 1950 - 600 },
  ],
});
const DOORWAYS = [doorway('wheel', 6200, 'dye'), doorway('dye', 6000, 'count')];

describe('the strip of plans', () => {
  test('story: three rooms stand in their order on one axis, whichever way a doorway was written down', () => {
    const turned = DOORWAYS.map((opening) => ({ ...opening, sides: [...opening.sides].reverse() }));
    for (const openings of [DOORWAYS, turned]) {
      const plan = stripPlanOf(ROOMS, openings, 420);
      expect(plan.rooms.map(({ roomId }) => roomId)).toEqual(['wheel', 'dye', 'count']);
      const axes = openings.flatMap((opening) =>
        opening.sides.map(({ surface, xMm }) => {
          const at = plan.rooms.find(({ roomId }) => surface.startsWith(roomId));
          if (at === undefined) throw new Error('no room');
          const span = wallSpanOf(at, surface.endsWith('left') ? 'left' : 'right', xMm, 1200, 300);
          return span.yMm + span.heightMm / 2;
        }),
      );
      expect(new Set(axes).size).toBe(1);
      expect(plan.widthMm).toBe(8400 + 6000 + 7200 + 2 * 420);
    }
  });

  test('law: every wall lies along the edge of its own room and inside it', () => {
    for (const at of stripPlanOf(ROOMS, DOORWAYS, 420).rooms) {
      for (const side of ['head', 'right', 'foot', 'left'] as const) {
        const long = side === 'head' || side === 'foot' ? at.room.widthMm : at.room.depthMm;
        const span = wallSpanOf(at, side, 0, long, 300);
        expect(span.xMm).toBeGreaterThanOrEqual(at.leftMm);
        expect(span.yMm).toBeGreaterThanOrEqual(at.topMm);
        expect(span.xMm + span.widthMm).toBeLessThanOrEqual(at.leftMm + at.room.widthMm);
        expect(span.yMm + span.heightMm).toBeLessThanOrEqual(at.topMm + at.room.depthMm);
        expect(Math.max(span.widthMm, span.heightMm)).toBe(long);
      }
    }
  });

  test('story: with heads to the east north lies left; with heads to the north it lies up', () => {
    expect(northDegreesOf('east')).toBe(270);
    expect(northDegreesOf('north')).toBe(0);
  });

  test('story: no room measured yet is no plan, and no error', () => {
    expect(stripPlanOf(new Map(), [], 420)).toEqual({ rooms: [], widthMm: 0, heightMm: 0 });
  });
});
