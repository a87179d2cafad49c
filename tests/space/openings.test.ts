import { boxesToKeepClear, type Fixture, tooNearOf } from '@enfilade/space/boxes-to-keep-clear';
import { type Opening, openingIssuesOf, openingsOn, otherSideOf } from '@enfilade/space/openings';
import type { RoomShape } from '@enfilade/space/room';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const wheelRoom: RoomShape = {
  widthMm: 6200,
  depthMm: 8400,
  heightMm: 3600,
  cornersMm: [0, 0, 0, 0],
  laserMm: 1000,
  headFaces: 'east',
};
const dyeHouse: RoomShape = { ...wheelRoom, widthMm: 6000, depthMm: 6000, cornersMm: [0, -30, -30, 0] };
const shapes: Record<string, RoomShape> = { wheel: wheelRoom, dye: dyeHouse };
const shapeOf = (roomId: string) => shapes[roomId];

const doorway: Opening = {
  id: 'to-dye',
  kind: 'doorway',
  widthMm: 1200,
  heightMm: 2200,
  sillMm: 0,
  sides: [
    { surface: 'wheel:right', xMm: 3000 },
    { surface: 'dye:left', xMm: 2000 },
  ],
};
const window: Opening = {
  id: 'river',
  kind: 'window',
  widthMm: 1400,
  heightMm: 1900,
  sillMm: 800,
  sides: [{ surface: 'dye:foot', xMm: 600 }],
};

describe('openings', () => {
  test('story: one doorway is a box on both its walls, and each side leads to the other', () => {
    expect(openingsOn('wheel:right', [doorway, window])).toEqual([
      { id: 'to-dye', kind: 'doorway', xMm: 3600, yMm: 1100, widthMm: 1200, heightMm: 2200 },
    ]);
    expect(openingsOn('dye:left', [doorway, window])).toMatchObject([{ xMm: 2600 }]);
    expect(otherSideOf(doorway, 'dye:left')).toEqual({ surface: 'wheel:right', xMm: 3000 });
    expect(otherSideOf(window, 'dye:foot')).toBeNull();
    expect(otherSideOf(window, 'dye:head')).toBeNull();
  });

  test('law: a doorway reaches down to the fallen floor, a window keeps its sill', () => {
    const low: Opening = { ...doorway, sides: [{ surface: 'dye:right', xMm: 100 }] };
    expect(openingsOn('dye:right', [low], dyeHouse)).toMatchObject([{ yMm: 1085, heightMm: 2230 }]);
    expect(openingsOn('dye:foot', [window], dyeHouse)).toMatchObject([{ yMm: 1750, heightMm: 1900 }]);
  });

  test('story: sound openings pass; each kind of mistake is named, and nothing throws', () => {
    expect(openingIssuesOf([doorway, window], shapeOf)).toEqual([]);
    const what = (opening: Partial<Opening>) =>
      openingIssuesOf([{ ...window, ...opening }], shapeOf).map((issue) => [issue.what, issue.value]);
    expect(what({ sides: [{ surface: 'dye:foot', xMm: 4700 }] })).toEqual([['runs past the end of the wall', 6100]]);
    expect(what({ sides: [{ surface: 'dye:foot', xMm: -1 }] })).toEqual([['starts before the wall', -1]]);
    expect(what({ sillMm: 1800 })).toEqual([['is higher than the wall', 3700]]);
    expect(what({ sillMm: -31 })).toEqual([['starts below the floor', -31]]);
    expect(what({ sides: [] })).toEqual([['is in no wall', 0]]);
    expect(what({ widthMm: 0 })).toEqual([['has no width', 0]]);
    expect(what({ sides: [{ surface: 'mill:foot', xMm: 0 }] })).toEqual([
      ['is in a wall that is not known', 'mill:foot'],
    ]);
    expect(what({ sides: [{ surface: 'dye:floor', xMm: 0 }] })).toEqual([
      ['is in a wall that is not known', 'dye:floor'],
    ]);
    const twice = [
      { surface: 'dye:left', xMm: 0 },
      { surface: 'dye:right', xMm: 0 },
    ];
    expect(what({ sides: twice })).toEqual([['has two sides in one room', 'dye']]);
  });

  test('law: openings that share a part of a wall are told once; touching, above or elsewhere they are not', () => {
    const beside = (xMm: number, sillMm = 800): Opening => ({
      ...window,
      id: 'second',
      sillMm,
      sides: [{ surface: 'dye:foot', xMm }],
    });
    expect(openingIssuesOf([window, beside(1999)], shapeOf)).toEqual([
      { where: 'river', what: 'overlaps another opening', value: 'second' },
    ]);
    expect(openingIssuesOf([window, beside(2000)], shapeOf)).toEqual([]);
    expect(openingIssuesOf([beside(2000), window], shapeOf)).toEqual([]);
    expect(openingIssuesOf([{ ...window, heightMm: 900 }, { ...beside(600, 1700) }], shapeOf)).toEqual([]);
  });
});

describe('fixtures to keep clear', () => {
  const thermostat: Fixture = {
    id: 't',
    kind: 'thermostat',
    surface: 'dye:head',
    xMm: 5000,
    yMm: 1500,
    widthMm: 80,
    heightMm: 120,
    clearMm: 300,
  };

  test('story: a view hung 9 cm from the thermostat is too near, and moved away it is not', () => {
    const view = { xMm: 5000 - 40 - 90 - 430, yMm: 1524, widthMm: 860, heightMm: 660 };
    expect(tooNearOf('dye:head', view, [thermostat])).toEqual([
      { id: 't', kind: 'thermostat', gapMm: 90, clearMm: 300 },
    ]);
    expect(tooNearOf('dye:head', { ...view, xMm: view.xMm - 210 }, [thermostat])).toEqual([]);
    expect(tooNearOf('dye:foot', view, [thermostat])).toEqual([]);
    expect(tooNearOf('dye:head', { ...view, xMm: 5000 }, [thermostat])).toMatchObject([{ gapMm: 0 }]);
  });

  test('law: too near is the same as overlapping the box to keep clear', () => {
    const [box] = boxesToKeepClear('dye:head', [thermostat]);
    expect(box).toMatchObject({ xMm: 5000, yMm: 1500, widthMm: 680, heightMm: 720 });
    const at = fc.integer({ min: 0, max: 3000 });
    fc.assert(
      fc.property(at, at, fc.integer({ min: 2, max: 900 }), fc.integer({ min: 2, max: 900 }), (x, y, w, h) => {
        const piece = { xMm: x + 3500, yMm: y, widthMm: w, heightMm: h };
        const overlaps = 2 * Math.abs(piece.xMm - 5000) < w + 680 && 2 * Math.abs(piece.yMm - 1500) < h + 720;
        expect(tooNearOf('dye:head', piece, [thermostat]).length > 0).toBe(overlaps);
      }),
      { seed: 5, numRuns: 1000 },
    );
  });
});
