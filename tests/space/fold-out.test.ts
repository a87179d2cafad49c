import {
  arrowOnPanel,
  ceilingPanelOf,
  foldOutOf,
  fromDrawing,
  ontoPanel,
  type Panel,
  toDrawing,
  wallPanelOf,
} from '@enfilade/space/fold-out';
import { planFromWall, type RoomShape, WALL_SIDES, wallLengthOf } from '@enfilade/space/room';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const room: RoomShape = {
  widthMm: 8400,
  depthMm: 6200,
  heightMm: 3600,
  cornersMm: [0, -30, -30, 0],
  laserMm: 1000,
  headFaces: 'east',
};
const GAP = 120;
const drawn = foldOutOf(room, GAP);
const panel = (side: Panel['side']): Panel => {
  const found = drawn.panels.find((each) => each.side === side);
  if (!found) throw new Error(`no ${side}`);
  return found;
};

describe('the fold-out', () => {
  test('law: the plan lies in the middle with the head wall above it', () => {
    expect([drawn.widthMm, drawn.heightMm]).toEqual([8400 + 2 * 3720, 6200 + 2 * 3720]);
    expect(toDrawing(panel('floor'), 0, 0)).toEqual({ X: 3720, Y: 3720 + 6200 });
    expect(toDrawing(panel('floor'), 8400, 6200)).toEqual({ X: 3720 + 8400, Y: 3720 });
    expect(toDrawing(panel('head'), 0, 3600)).toEqual({ X: 3720, Y: 0 });
  });

  test("law: every wall's base runs beside its own edge of the plan, a gap away, and its top points outwards", () => {
    const outward = { head: [0, -1], right: [1, 0], foot: [0, 1], left: [-1, 0] } as const;
    for (const side of WALL_SIDES) {
      const [outX, outY] = outward[side];
      for (const xMm of [0, 1700, wallLengthOf(room, side)]) {
        const plan = planFromWall(room, side, xMm);
        const edge = toDrawing(panel('floor'), plan.xMm, plan.yMm);
        for (const yMm of [0, 1500, 3600]) {
          expect(toDrawing(panel(side), xMm, yMm)).toEqual({
            X: edge.X + outX * (GAP + yMm),
            Y: edge.Y + outY * (GAP + yMm),
          });
        }
      }
    }
  });

  test('law: any point of any surface goes to the drawing and comes back as itself', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...drawn.panels),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (each, u, v) => {
          const xMm = Math.round(u * each.widthMm);
          const yMm = Math.round(each.lowestMm + v * (each.heightMm - each.lowestMm));
          const { X, Y } = toDrawing(each, xMm, yMm);
          expect(fromDrawing(drawn, X, Y)).toEqual({ side: each.side, xMm, yMm });
          expect(ontoPanel(each, X, Y)).toEqual({ xMm, yMm });
        },
      ),
      { seed: 3, numRuns: 1000 },
    );
  });

  test('law: between and beyond the panels there is no surface, yet a drag goes on in its own axes', () => {
    expect(fromDrawing(drawn, 3720 + 10, 3720 - GAP / 2)).toBeNull();
    expect(fromDrawing(drawn, 100, 100)).toBeNull();
    expect(fromDrawing(drawn, -5, 5000)).toBeNull();
    expect(ontoPanel(panel('head'), 3720 - 100, -50)).toEqual({ xMm: -100, yMm: 3650 });
  });

  test('law: a floor that falls below the level plane lengthens the walls it falls along, and no others', () => {
    expect(WALL_SIDES.map((side) => panel(side).lowestMm)).toEqual([-30, -30, -30, 0]);
    const { X, Y } = toDrawing(panel('right'), 100, -30);
    expect(fromDrawing(drawn, X, Y)).toEqual({ side: 'right', xMm: 100, yMm: -30 });
  });

  test('law: a ceiling from below is the plan mirrored: what is left stays left, the head wall lies at the foot', () => {
    const ceiling = ceilingPanelOf(room);
    expect(toDrawing(ceiling, 0, 0)).toEqual({ X: 0, Y: 0 });
    expect(toDrawing(ceiling, 8400, 6200)).toEqual({ X: 8400, Y: 6200 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 8400 }), fc.integer({ min: 0, max: 6200 }), (xMm, yMm) => {
        const { X, Y } = toDrawing(ceiling, xMm, yMm);
        expect(ontoPanel(ceiling, X, Y)).toEqual({ xMm, yMm });
        const plan = toDrawing(panel('floor'), xMm, yMm);
        expect({ X, Y }).toEqual({ X: plan.X - 3720, Y: 6200 - (plan.Y - 3720) });
      }),
      { seed: 4, numRuns: 200 },
    );
    expect(arrowOnPanel(ceiling, 10, 10)).toEqual({ dxMm: 10, dyMm: 10 });
  });

  test('story: the right arrow moves a work to the right of the screen, whatever way its wall lies', () => {
    expect(arrowOnPanel(panel('head'), 10, 0)).toEqual({ dxMm: 10, dyMm: 0 });
    expect(arrowOnPanel(panel('foot'), 10, 0)).toEqual({ dxMm: -10, dyMm: 0 });
    expect(arrowOnPanel(panel('left'), 10, 0)).toEqual({ dxMm: 0, dyMm: -10 });
    expect(arrowOnPanel(panel('right'), 10, 0)).toEqual({ dxMm: 0, dyMm: 10 });
    // Up the screen: up the head wall, towards the foot wall's own floor.
    expect(arrowOnPanel(panel('head'), 0, -10)).toEqual({ dxMm: 0, dyMm: 10 });
    expect(arrowOnPanel(panel('foot'), 0, -10)).toEqual({ dxMm: 0, dyMm: -10 });
    expect(arrowOnPanel(panel('floor'), 0, -10)).toEqual({ dxMm: 0, dyMm: 10 });
  });

  test('law: a step on the screen and the same step on the surface end at one point', () => {
    const step = fc.integer({ min: -500, max: 500 });
    fc.assert(
      fc.property(fc.constantFrom(...drawn.panels), step, step, (each, dX, dY) => {
        const from = toDrawing(each, 1000, 1000);
        const { dxMm, dyMm } = arrowOnPanel(each, dX, dY);
        expect(toDrawing(each, 1000 + dxMm, 1000 + dyMm)).toEqual({ X: from.X + dX, Y: from.Y + dY });
      }),
      { seed: 4 },
    );
  });

  test('law: a wall faced alone is upright with its upper left corner at the origin', () => {
    const alone = wallPanelOf(room, 'foot');
    expect(toDrawing(alone, 0, 3600)).toEqual({ X: 0, Y: 0 });
    expect(toDrawing(alone, 8400, 0)).toEqual({ X: 8400, Y: 3600 });
  });

  test('law: a negative gap is refused by name', () => {
    expect(() => foldOutOf(room, -1)).toThrow(new RangeError('gapMm is -1; it must be 0 or more'));
  });
});
