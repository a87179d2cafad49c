import { floorLineOf, standingIn } from '@enfilade/space/elevation';
import { type RoomShape, WALL_SIDES } from '@enfilade/space/room';
import { describe, expect, test } from 'vitest';

const dyeHouse: RoomShape = {
  widthMm: 6000,
  depthMm: 6000,
  heightMm: 3600,
  cornersMm: [0, -30, -30, 0],
  laserMm: 1000,
  headFaces: 'east',
};
/** The bench of room.png: against the head wall, near its right end. */
const bench = { xMm: 5300, yMm: 5775, widthMm: 1200, depthMm: 450, heightMm: 450, turnCentidegrees: 0 };

describe('things standing before a wall', () => {
  test('story: a bench against the east wall is seen broad from the west and narrow from the side', () => {
    expect(standingIn(dyeHouse, 'head', bench)).toEqual({
      xMm: 5300,
      widthMm: 1200,
      heightMm: 450,
      baseMm: -26.5,
      distanceMm: 0,
    });
    expect(standingIn(dyeHouse, 'right', bench)).toMatchObject({ xMm: 225, widthMm: 450, distanceMm: 100 });
    expect(standingIn(dyeHouse, 'foot', bench)).toMatchObject({ xMm: 700, widthMm: 1200, distanceMm: 5550 });
    expect(standingIn(dyeHouse, 'left', bench)).toMatchObject({ xMm: 5775, widthMm: 450, distanceMm: 4700 });
  });

  test('law: a quarter turn changes width for depth exactly, an eighth makes a square seem √2 wide', () => {
    const turned = standingIn(dyeHouse, 'head', { ...bench, turnCentidegrees: 9000 });
    expect([turned.widthMm, turned.distanceMm]).toEqual([450, 225 - 600]);
    const plinth = { ...bench, widthMm: 400, depthMm: 400, turnCentidegrees: -4500 };
    for (const side of WALL_SIDES) {
      expect(standingIn(dyeHouse, side, plinth).widthMm).toBeCloseTo(400 * Math.SQRT2, 6);
    }
  });

  test('law: the floor line of facing walls is mirrored, and its fall is told as faced', () => {
    expect(floorLineOf(dyeHouse, 'head')).toEqual({ leftMm: 0, rightMm: -30, fallMm: 30 });
    expect(floorLineOf(dyeHouse, 'foot')).toEqual({ leftMm: -30, rightMm: 0, fallMm: -30 });
    expect(floorLineOf(dyeHouse, 'right').fallMm).toBe(0);
  });
});
