import * as commands from '@enfilade/shared/commands';
import { onFaceOf, placeIn } from '@enfilade/shared/in-openings';
import { Judgements } from '@enfilade/shared/judgements';
import { dropFor, fromBelow } from '@enfilade/shared/overhead';
import type { Opening, Place, Room } from '@enfilade/shared/schema';
import { planFromWall, WALL_SIDES, wallFromPlan } from '@enfilade/space/room';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

/** Between the Dye House's head wall and the Counting Room's foot wall. */
const DOORWAY: Opening = {
  kind: 'doorway',
  name: 'doorway to the Counting Room',
  widthMm: 1200,
  heightMm: 2200,
  sillMm: 0,
  sides: [
    { surface: 'dye:head', xMm: 1000 },
    { surface: 'counting:foot', xMm: 2800 },
  ],
};
const WINDOW: Opening = {
  kind: 'window',
  name: 'north light',
  widthMm: 1500,
  heightMm: 1400,
  sillMm: 900,
  sides: [{ surface: 'dye:left', xMm: 2000 }],
};

function show() {
  const { documents, history } = sampleShow();
  const judgements = new Judgements(documents, { get: () => undefined });
  const dye = documents.get('rooms', 'dye') as Room;
  history.perform(commands.addRoom({ ...dye, name: 'Counting Room', order: 2, headFaces: 'east' }, 'counting'));
  history.perform(commands.addOpening(DOORWAY, 'door'));
  history.perform(commands.addOpening(WINDOW, 'window'));
  history.perform(
    commands.addObjects(documents, [
      { id: 'tray', object: work('S.1', { dimensionsText: 'H 4 x W 90 x D 30 cm', levelsMm: [40] }) },
    ]),
  );
  const put = (places: Readonly<Record<string, Place>>) =>
    history.perform(commands.place(documents, new Map(Object.entries(places))));
  const seenOn = (surface: string, pieceId: string) =>
    judgements.elevationOf(surface).find((seen) => seen.pieceId === pieceId);
  const inPlan = (surface: string, pieceId: string) =>
    judgements.where.planOf(surface).find((seen) => seen.pieceId === pieceId);
  return { dye, judgements, put, seenOn, inPlan };
}

describe('what hangs from a ceiling', () => {
  test('reference: a trap 78 cm high dropped 50 cm from a ceiling at 360 has its foot at 232 (worked by hand)', () => {
    const { put, seenOn, inPlan } = show();
    put({ 'trap#1': ['dye:ceiling', 2000, 4800, 500, 0] });
    expect(seenOn('dye:head', 'trap#1')).toMatchObject({ xMm: 2000, yMm: 2320 + 390, held: 'overhead', direct: false });
    expect(seenOn('dye:left', 'trap#1')).toMatchObject({ xMm: 4800, yMm: 2320 + 390 });
    // 1200 mm off the head wall's far side: nearer to the left wall than to the right one, and far from the foot wall.
    expect(seenOn('dye:foot', 'trap#1')).toBeUndefined();
    expect(seenOn('dye:right', 'trap#1')).toBeUndefined();
    expect(inPlan('dye:floor', 'trap#1')).toMatchObject({ xMm: 2000, yMm: 4800, held: 'overhead', direct: false });
    expect(inPlan('dye:ceiling', 'trap#1')).toMatchObject({ xMm: 2000, yMm: 4800, direct: true, standOffMm: 1280 });
  });

  test('reference: turned clockwise as seen from below it is turned the other way as seen from above', () => {
    const { put, inPlan } = show();
    put({ 'bench#1': ['dye:ceiling', 2000, 3000, 500, 3000] });
    expect(inPlan('dye:ceiling', 'bench#1')?.turnDegrees).toBe(30);
    expect(inPlan('dye:floor', 'bench#1')?.turnDegrees).toBe(330);
    expect([fromBelow(0), fromBelow(360), fromBelow(90)]).toEqual([0, 0, 270]);
  });

  test('law: plan and elevations agree on where it hangs and how high, and each is seen in two walls at least', () => {
    const { dye, judgements, put, seenOn, inPlan } = show();
    const at = fc.record({
      x: fc.integer({ min: 0, max: 6000 }),
      y: fc.integer({ min: 0, max: 6000 }),
      drop: fc.integer({ min: 0, max: 2500 }),
      turn: fc.integer({ min: 0, max: 35_999 }),
    });
    fc.assert(
      fc.property(at, ({ x, y, drop, turn }) => {
        put({ 'bench#1': ['dye:ceiling', x, y, drop, turn], 'trap#1': ['carrier:bench#1/0', 300, 200, 0, 0] });
        for (const pieceId of ['bench#1', 'trap#1']) {
          const above = inPlan('dye:floor', pieceId);
          const below = inPlan('dye:ceiling', pieceId);
          if (above === undefined || below === undefined) throw new Error(`${pieceId} is not in plan`);
          expect([below.xMm, below.yMm]).toEqual([above.xMm, above.yMm]);
          expect(below.standOffMm).toBeCloseTo(dye.heightMm - above.standOffMm, 6);
          const walls = WALL_SIDES.filter((side) => seenOn(`dye:${side}`, pieceId) !== undefined);
          expect(walls.length).toBeGreaterThanOrEqual(2);
          for (const side of walls) {
            const seen = seenOn(`dye:${side}`, pieceId);
            expect(seen?.xMm).toBeCloseTo(wallFromPlan(dye, side, above.xMm, above.yMm).xMm, 6);
            // The plan's stand-off is the height of its foot.
            expect((seen?.yMm ?? 0) - (seen?.heightMm ?? 0) / 2).toBeCloseTo(above.standOffMm, 6);
          }
        }
        expect(judgements.where.surfaceOf('trap#1')).toBe('dye:ceiling');
        expect(dropFor(dye, inPlan('dye:floor', 'bench#1')?.standOffMm ?? 0, 450)).toBeCloseTo(drop, 6);
      }),
      { seed: 31, numRuns: 200 },
    );
  });
});

describe('what is to be minded', () => {
  test('story: under a trap let down too far one cannot walk; on the layout floor it neither stands nor hangs', () => {
    const { judgements, put } = show();
    const kinds = () => judgements.cautionsOf('trap#1').map(({ kind }) => kind);
    // Its foot is counted from the fallen floor: 3600 − 805 − 780 = 2015 above the level plane, 15 more above the floor.
    put({ 'trap#1': ['dye:ceiling', 3000, 3000, 805, 0] });
    expect(kinds()).toEqual(['weight not known', 'hung overhead']);
    put({ 'trap#1': ['dye:ceiling', 3000, 3000, 806, 0] });
    expect(kinds()).toEqual(['weight not known', 'hung overhead', 'headroom']);
    put({ 'trap#1': ['layout', 0, 0, 0, 0] });
    expect(kinds()).toEqual([]);
  });

  test('story: two things in one doorway narrow it together; hung above headroom it is not narrowed', () => {
    const { judgements, put } = show();
    const kinds = (pieceId: string) => judgements.cautionsOf(pieceId).map(({ kind }) => kind);
    // 340 of 1200 leave 860; a tray 900 wide over the head of the way leaves it whole.
    put({ 'trap#1': ['opening:door', 170, 390, 0, 0], 'tray#1': ['opening:door', 600, 2100, 0, 0] });
    expect(kinds('trap#1')).toEqual(['way out']);
    put({ 'tray#1': ['opening:door', 600, 1000, 0, 0] });
    expect(kinds('trap#1')).toEqual(['way out', 'way narrowed']);
    expect(kinds('tray#1')).toEqual(['way out', 'way narrowed']);
  });
});

describe('what is in an opening', () => {
  test('reference: a doorway’s hanging is seen from both rooms, from the second mirrored (worked by hand)', () => {
    const { judgements, put, seenOn, inPlan } = show();
    put({ 'trap#1': ['opening:door', 300, 1000, 0, 500] });
    expect(seenOn('dye:head', 'trap#1')).toMatchObject({ xMm: 1300, yMm: 1000, turnDegrees: 5, held: 'in an opening' });
    expect(seenOn('counting:foot', 'trap#1')).toMatchObject({ xMm: 2800 + 900, yMm: 1000, turnDegrees: 355 });
    expect(seenOn('dye:left', 'trap#1')).toBeUndefined();
    expect(inPlan('dye:floor', 'trap#1')).toMatchObject({ xMm: 1300, yMm: 6000, held: 'in an opening' });
    // The Counting Room's foot wall runs against plan x.
    expect(inPlan('counting:floor', 'trap#1')).toMatchObject({ xMm: 6000 - 3700, yMm: 0 });
    expect(judgements.where.surfaceOf('trap#1')).toBe('dye:head');
  });

  test('story: a tray in a window has its own load, seen there too', () => {
    const { put, seenOn } = show();
    put({ 'tray#1': ['opening:window', 750, 20, 0, 0], 'trap#1': ['carrier:tray#1/0', 450, 150, 0, 0] });
    expect(seenOn('dye:left', 'tray#1')).toMatchObject({ xMm: 2750, yMm: 920 });
    expect(seenOn('dye:left', 'trap#1')).toMatchObject({ xMm: 2750, yMm: 900 + 40 + 390, held: 'in an opening' });
  });

  test('law: what is held at a spot of either wall comes to be at that spot, and plan and elevation agree', () => {
    const { dye, put, seenOn, inPlan } = show();
    const spot = fc.tuple(fc.constantFrom(0, 1), fc.integer({ min: 0, max: 1200 }), fc.integer({ min: 0, max: 2200 }));
    fc.assert(
      fc.property(spot, fc.integer({ min: 0, max: 35_999 }), ([index, along, y], turn) => {
        const side = DOORWAY.sides[index];
        if (side === undefined) return;
        const place = placeIn('door', DOORWAY, side.surface, side.xMm + along, y, turn);
        if (place === null) throw new Error('not in its wall');
        put({ 'trap#1': place });
        expect(onFaceOf(DOORWAY, side.surface, place)).toEqual({
          xMm: side.xMm + along,
          yMm: y,
          turnDegrees: turn / 100,
        });
        for (const { surface } of DOORWAY.sides) {
          const [roomId, wall] = surface.split(':') as [string, (typeof WALL_SIDES)[number]];
          const plan = planFromWall(dye, wall, seenOn(surface, 'trap#1')?.xMm ?? Number.NaN);
          expect(inPlan(`${roomId}:floor`, 'trap#1')).toMatchObject(plan);
        }
      }),
      { seed: 32, numRuns: 200 },
    );
    expect(placeIn('door', DOORWAY, 'dye:left', 0, 0)).toBeNull();
  });

  test('story: with its opening taken away it is on no wall and breaks nothing', () => {
    const { judgements, put } = show();
    put({ 'trap#1': ['opening:gone', 300, 1000, 0, 0] });
    expect(judgements.where.surfaceOf('trap#1')).toBeNull();
    expect(judgements.elevationOf('dye:head')).toEqual([]);
    expect(judgements.where.planOf('dye:floor')).toEqual([]);
  });
});
