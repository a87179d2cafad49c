import {
  floorLevelAlong,
  floorLevelAt,
  planFromWall,
  type RoomShape,
  roomIssuesOf,
  WALL_SIDES,
  wallFromPlan,
  wallLengthOf,
  wallNameOf,
} from '@enfilade/space/room';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

/** The Dye House: 6.0 × 6.0 × 3.6 m, its floor falls 3 cm from the left wall to the right. */
const dyeHouse: RoomShape = {
  widthMm: 6000,
  depthMm: 6000,
  heightMm: 3600,
  cornersMm: [0, -30, -30, 0],
  laserMm: 1000,
  headFaces: 'east',
};
const oblong: RoomShape = { ...dyeHouse, widthMm: 8400, depthMm: 6200, cornersMm: [0, 0, 0, 0] };

describe('walls', () => {
  test('law: a head wall to the east puts south to the right, west at the foot and north to the left', () => {
    expect(WALL_SIDES.map((side) => wallNameOf(dyeHouse, side))).toEqual([
      'east wall',
      'south wall',
      'west wall',
      'north wall',
    ]);
    expect(wallNameOf({ headFaces: 'west' }, 'right')).toBe('north wall');
  });

  test('law: head and foot are as long as the room is wide, left and right as it is deep', () => {
    expect(WALL_SIDES.map((side) => wallLengthOf(oblong, side))).toEqual([8400, 6200, 8400, 6200]);
  });

  test('law: each wall starts at its left corner as faced from inside', () => {
    expect(planFromWall(oblong, 'head', 0)).toEqual({ xMm: 0, yMm: 6200 });
    expect(planFromWall(oblong, 'right', 0)).toEqual({ xMm: 8400, yMm: 6200 });
    expect(planFromWall(oblong, 'foot', 0)).toEqual({ xMm: 8400, yMm: 0 });
    expect(planFromWall(oblong, 'left', 0)).toEqual({ xMm: 0, yMm: 0 });
    expect(planFromWall(oblong, 'foot', 1000, 250)).toEqual({ xMm: 7400, yMm: 250 });
  });

  test('law: wall to plan and back loses nothing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...WALL_SIDES),
        fc.integer({ min: -500, max: 9000 }),
        fc.integer({ min: -500, max: 9000 }),
        (side, xMm, standOffMm) => {
          const plan = planFromWall(oblong, side, xMm, standOffMm);
          expect(wallFromPlan(oblong, side, plan.xMm, plan.yMm)).toEqual({ xMm, standOffMm });
        },
      ),
      { seed: 1 },
    );
  });
});

describe('the floor', () => {
  test('story: the Dye House floor falls 3 cm to the right wall, and every wall sees its own part of it', () => {
    expect(floorLevelAt(dyeHouse, 3000, 1234)).toBe(-15);
    expect(floorLevelAlong(dyeHouse, 'head', 6000)).toBe(-30);
    expect(floorLevelAlong(dyeHouse, 'head', 2000)).toBeCloseTo(-10, 9);
    // The foot wall is faced the other way: its left corner is the room's right.
    expect(floorLevelAlong(dyeHouse, 'foot', 0)).toBe(-30);
    expect(floorLevelAlong(dyeHouse, 'foot', 6000)).toBe(0);
    expect(floorLevelAlong(dyeHouse, 'right', 4321)).toBe(-30);
    expect(floorLevelAlong(dyeHouse, 'left', 4321)).toBe(0);
  });

  test('law: corners keep their levels, a plane stays a plane, and beyond the walls the nearest floor counts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -100, max: 100 }),
        fc.integer({ min: -100, max: 100 }),
        fc.integer({ min: 0, max: 8400 }),
        fc.integer({ min: 0, max: 6200 }),
        (right, head, xMm, yMm) => {
          const shape: RoomShape = { ...oblong, cornersMm: [0, right, right + head, head] };
          expect(floorLevelAt(shape, 8400, 6200)).toBeCloseTo(right + head, 9);
          expect(floorLevelAt(shape, xMm, yMm)).toBeCloseTo((right * xMm) / 8400 + (head * yMm) / 6200, 9);
          expect(floorLevelAt(shape, 9999, yMm)).toBeCloseTo(floorLevelAt(shape, 8400, yMm), 9);
        },
      ),
      { seed: 2 },
    );
  });
});

describe('a room as typed', () => {
  test('story: what cannot be true is named with its value, and a sound room has nothing to say', () => {
    expect(roomIssuesOf(dyeHouse)).toEqual([]);
    const wrong: RoomShape = {
      ...dyeHouse,
      widthMm: 0,
      depthMm: Number.NaN,
      cornersMm: [5, 0, 4000, 0],
      laserMm: 3600,
    };
    expect(roomIssuesOf(wrong).map(({ where, value }) => [where, value])).toEqual([
      ['width', 0],
      ['depth', Number.NaN],
      ['head right corner', 4000],
      ['foot left corner', 5],
      ['laser line', 3600],
    ]);
  });
});
