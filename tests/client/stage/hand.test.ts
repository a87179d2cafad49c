import { carrierOn, type PieceId, type Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { fitted, toDrawingPoint, toScreenPoint, zoomed } from '../../../client/src/stage/camera.ts';
import { droppedAt } from '../../../client/src/stage/drop-targets.ts';
import { OncePerFrame } from '../../../client/src/stage/frames.ts';
import { gripOf, placesOf } from '../../../client/src/stage/grip.ts';
import { Hands } from '../../../client/src/stage/hands.ts';
import { hitOf } from '../../../client/src/stage/hit.ts';
import { nudged } from '../../../client/src/stage/nudge.ts';
import { panelOf, type SceneFrame, type ScenePanel } from '../../../client/src/stage/panels.ts';
import { Scene } from '../../../client/src/stage/scene.ts';
import { ceilingFrameOf } from '../../../client/src/stage/scene-ceiling.ts';
import type { SceneItem } from '../../../client/src/stage/scene-items.ts';
import { roomFrameOf } from '../../../client/src/stage/scene-room.ts';
import { standingOf } from '../../../client/src/stage/standing.ts';
import { stageShow } from './show.ts';

function stage(places: Readonly<Record<PieceId, Place>>) {
  const { judgements, lookup, put } = stageShow();
  put(places);
  const frame = roomFrameOf(judgements, 'dye') as SceneFrame;
  const scene = new Scene(frame, lookup, Object.keys(places));
  const panel = (side: string) => panelOf(frame, `dye:${side}`) as ScenePanel;
  const drop = (pieceId: PieceId, side: string, xMm: number, yMm: number, reachMm = 50) => {
    const place = lookup.placeOf(pieceId);
    const at = standingOf(lookup, pieceId);
    return droppedAt(lookup, {
      panel: panel(side),
      xMm,
      yMm,
      size: lookup.sizeOf(pieceId) as NonNullable<ReturnType<typeof lookup.sizeOf>>,
      levelsMm: lookup.levelsOf(pieceId),
      from: place === null || at === null ? null : { place, at },
      items: scene.withinPanel(panel(side)).filter((item) => item.pieceId !== pieceId),
      centreLineMm: 1500,
      reachMm,
    });
  };
  return { lookup, frame, scene, panel, drop };
}

const BENCH = { 'bench#1': ['dye:floor', 4000, 4800, 0, 0] } as const;

describe('where a thing comes to rest', () => {
  test('story: a picture let go near the centre line hangs on it, and elsewhere on whole centimetres', () => {
    const { drop } = stage({});
    expect(drop('oil#1', 'head', 2003, 1460)).toMatchObject({
      place: ['dye:head', 2000, 1500, 0, 0],
      onCentreLine: true,
    });
    expect(drop('oil#1', 'head', 2003, 1748)).toMatchObject({
      place: ['dye:head', 2000, 1750, 0, 0],
      onCentreLine: false,
    });
    expect(drop('oil#1', 'head', 2003, 1748, 0).place).toEqual(['dye:head', 2003, 1748, 0, 0]);
  });

  test('story: a picture does not go through the corner or the ceiling', () => {
    const { drop } = stage({});
    expect(drop('oil#1', 'head', 5990, 3590).place).toEqual(['dye:head', 5570, 3270, 0, 0]);
  });

  test('story: an eel trap held over the bench stands on it; held higher it hangs; let down beside it, it stands', () => {
    const { drop } = stage(BENCH);
    // The bench top lies at −20 + 450; the trap is 780 high.
    expect(drop('trap#1', 'head', 3600, 450 - 20 + 390 + 40)).toMatchObject({
      place: [carrierOn('bench#1', 0), 300, 200, 0, 0],
      carrier: 'bench#1',
    });
    expect(drop('trap#1', 'head', 3600, 2000).place[0]).toBe('dye:head');
    expect(drop('trap#1', 'head', 1500, 400).place).toEqual(['dye:floor', 1500, 5000 - 170, 0, 0]);
  });

  test('story: a bench stays on the floor however high it is lifted, its back to the wall it comes to', () => {
    const { drop } = stage(BENCH);
    expect(drop('bench#1', 'head', 3000, 2500).place).toEqual(['dye:floor', 3000, 4800, 0, 0]);
    const { drop: fresh } = stage({});
    expect(fresh('bench#1', 'right', 2000, 2500).place).toEqual(['dye:floor', 5800, 3000, 0, 9000]);
  });

  test('story: dropped in the plan upon the bench, a block is on the bench, in the bench’s own frame', () => {
    const turned = stage({ 'bench#1': ['dye:floor', 3000, 2500, 0, 9000] });
    // Turned a quarter with the clock the bench's front looks to plan −x: its x runs down the plan.
    expect(turned.drop('block#1', 'floor', 3100, 2300).place).toEqual([carrierOn('bench#1', 0), 900, 300, 0, 0]);
    const at = turned.lookup;
    const lifted = {
      ...at,
      placeOf: (id: PieceId) => (id === 'block#1' ? turned.drop('block#1', 'floor', 3100, 2300).place : at.placeOf(id)),
    };
    expect(standingOf(lifted, 'block#1')).toMatchObject({ surface: 'dye:floor', direct: false });
    expect(standingOf(lifted, 'block#1')?.xMm).toBeCloseTo(3100, 6);
    expect(standingOf(lifted, 'block#1')?.yMm).toBeCloseTo(2300, 6);
  });
});

describe('where a thing comes to hang overhead, or to be in an opening', () => {
  /** Faced from below; the doorway of the foot wall lies between 4000 and 5200. */
  function under(places: Readonly<Record<PieceId, Place>>) {
    const { judgements, lookup, put } = stageShow();
    put(places);
    const frame = ceilingFrameOf(judgements, 'dye:ceiling') as SceneFrame;
    const panel = frame.panels[0] as ScenePanel;
    const drop = (pieceId: PieceId, xMm: number, yMm: number) => {
      const [place, at] = [lookup.placeOf(pieceId), standingOf(lookup, pieceId)];
      return droppedAt(lookup, {
        ...{ panel, xMm, yMm, items: [], levelsMm: lookup.levelsOf(pieceId), centreLineMm: 1500, reachMm: 50 },
        size: lookup.sizeOf(pieceId) as NonNullable<ReturnType<typeof lookup.sizeOf>>,
        from: place === null || at === null ? null : { place, at },
      }).place;
    };
    return { lookup, frame, drop };
  }

  test('story: let go on the ceiling it hangs there, keeps its drop and its turn, and stays within the walls', () => {
    const { drop } = under({ 'trap#1': ['dye:ceiling', 2000, 2000, 800, 4500], 'bench#1': BENCH['bench#1'] });
    expect(drop('oil#1', 1003, 2001)).toEqual(['dye:ceiling', 1000, 2000, 0, 0]);
    expect(drop('trap#1', 1003, 4990)).toEqual(['dye:ceiling', 1000, 4830, 800, 4500]);
    // What stands beneath is seen there too, and goes on standing.
    expect(drop('bench#1', 3000, 2000)).toEqual(['dye:floor', 3000, 2000, 0, 0]);
  });

  test('story: moved in an elevation it goes along the wall, up and down on what it hangs by; in plan it keeps its drop', () => {
    const { drop, lookup, scene } = stage({ 'trap#1': ['dye:ceiling', 2000, 4000, 800, 4500] });
    // 3600 − 390 − 500: half its height and 500 of drop.
    expect(drop('trap#1', 'head', 2500, 2710).place).toEqual(['dye:ceiling', 2500, 4000, 500, 4500]);
    expect(drop('trap#1', 'head', 2500, 3600).place).toEqual(['dye:ceiling', 2500, 4000, 0, 4500]);
    expect(drop('trap#1', 'left', 3000, 2410).place).toEqual(['dye:ceiling', 2000, 3000, 800, 4500]);
    expect(drop('trap#1', 'floor', 2500, 3000).place).toEqual(['dye:ceiling', 2500, 3000, 800, 4500]);
    const step = (side: string) =>
      nudged(lookup, ['trap#1'], (id) => scene.itemsOf(id).find(({ panel }) => panel.side === side), 10, -10);
    expect(step('head').get('trap#1')).toEqual(['dye:ceiling', 2010, 4000, 790, 4500]);
    expect(step('floor').get('trap#1')).toEqual(['dye:ceiling', 2010, 4010, 800, 4500]);
  });

  test('story: seen from below, the arrows follow the screen', () => {
    const { lookup, frame } = under({ 'trap#1': ['dye:ceiling', 2000, 2000, 800, 0] });
    const item = new Scene(frame, lookup, ['trap#1']).itemsOf('trap#1')[0];
    // Down the screen is towards the head wall.
    expect(nudged(lookup, ['trap#1'], () => item, 10, 10).get('trap#1')).toEqual(['dye:ceiling', 2010, 2010, 800, 0]);
  });

  test('story: let go over a doorway it fits, it is in the doorway; what is too wide hangs over it, what stands stands', () => {
    const { drop, lookup, scene } = stage({ 'block#2': ['opening:door', 600, 1000, 0, 0], ...BENCH });
    expect(drop('oil#1', 'foot', 4503, 1504).place).toEqual(['opening:door', 500, 1500, 0, 0]);
    // Against the jamb and the floor, which has fallen by 10 there, it goes no farther.
    expect(drop('oil#1', 'foot', 4010, 20).place).toEqual(['opening:door', 430, 320, 0, 0]);
    expect(drop('bench#1', 'foot', 4500, 225).place[0]).toBe('dye:floor');
    expect(drop('shelf#1', 'foot', 3990, 1500).place[0]).toBe('dye:foot');
    const item = scene.itemsOf('block#2').find(({ direct }) => direct);
    expect(nudged(lookup, ['block#2'], () => item, 10, 0).get('block#2')?.[1]).toBe(590);
  });
});

describe('what goes along', () => {
  const hang = {
    ...BENCH,
    'trap#1': [carrierOn('bench#1', 0), 300, 200, 0, 0],
    'oil#1': ['dye:head', 2000, 1500, 0, 0],
    'block#1': ['dye:head', 2600, 1700, 5, 300],
  } as const;

  test('story: a selection keeps its distances from wall to wall; a load is left to its carrier', () => {
    const { lookup, panel, drop } = stage(hang);
    const selected = ['oil#1', 'block#1'];
    const start = { panel: panel('head'), xMm: 2000, yMm: 1500 };
    const grip = gripOf(lookup, 'oil#1', selected, start, { xMm: 0, yMm: 0 });
    const dropped = drop('oil#1', 'left', 1000, 1500);
    expect([...placesOf(lookup, grip, panel('left'), dropped)]).toEqual([
      ['oil#1', ['dye:left', 1000, 1500, 0, 0]],
      ['block#1', ['dye:left', 1600, 1700, 0, 0]],
    ]);
    const all = gripOf(lookup, 'trap#1', ['trap#1', 'bench#1'], start, { xMm: 0, yMm: 0 });
    expect([all.grabbed, all.pieces]).toEqual(['bench#1', ['bench#1']]);
  });

  test('story: moved along the wall, what hangs takes what stands before it along', () => {
    const { lookup, panel, drop } = stage(hang);
    const start = { panel: panel('head'), xMm: 2000, yMm: 1500 };
    const grip = gripOf(lookup, 'oil#1', ['oil#1', 'bench#1', 'trap#1'], start, { xMm: 0, yMm: 0 });
    const places = placesOf(lookup, grip, panel('head'), drop('oil#1', 'head', 1700, 1500));
    expect(places.get('bench#1')).toEqual(['dye:floor', 3700, 4800, 0, 0]);
    expect(places.has('trap#1')).toBe(false);
  });

  test('story: arrows follow the screen on every wall of the fold-out', () => {
    const { lookup, scene } = stage(hang);
    const step = (id: PieceId, side: string, dx: number, dy: number) =>
      nudged(lookup, [id], () => scene.itemsOf(id).find(({ panel }) => panel.side === side), dx, dy).get(id);
    expect(step('oil#1', 'head', 10, -10)).toEqual(['dye:head', 2010, 1510, 0, 0]);
    // The bench in the elevation behind it: right is along the wall, up is nearer to it.
    expect(step('bench#1', 'head', 10, -10)).toEqual(['dye:floor', 4010, 4810, 0, 0]);
    expect(step('bench#1', 'floor', 10, -10)).toEqual(['dye:floor', 4010, 4810, 0, 0]);
    const turned = stage({ 'oil#1': ['dye:right', 2000, 1500, 0, 0] });
    const item = turned.scene.itemsOf('oil#1')[0];
    expect(nudged(turned.lookup, ['oil#1'], () => item, 10, 0).get('oil#1')).toEqual(['dye:right', 2000, 1510, 0, 0]);
  });
});

describe('pressing and looking', () => {
  test('story: the frontmost opaque thing is hit; through a hole in it, what lies behind', () => {
    const { scene } = stage({ 'oil#1': ['dye:head', 2000, 1500, 0, 0], 'block#1': ['dye:head', 2000, 1500, 9, 4500] });
    const all = scene.within({ minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 });
    const { X, Y } = scene.itemsOf('oil#1')[0] as SceneItem;
    expect(hitOf(all, X, Y, 0, () => true)?.pieceId).toBe('block#1');
    expect(hitOf(all, X, Y, 0, (item) => item.pieceId !== 'block#1')?.pieceId).toBe('oil#1');
    // Turned by 45°, the block's own corner lies beyond its upright square, and its square's corner outside it.
    expect(hitOf(all, X + 135, Y, 0, (item) => item.pieceId === 'block#1')?.pieceId).toBe('block#1');
    expect(hitOf(all, X + 95, Y + 95, 0, (item) => item.pieceId === 'block#1')).toBeNull();
    expect(hitOf(all, X + 460, Y, 40, () => true)?.pieceId).toBe('oil#1');
    expect(hitOf(all, X + 480, Y, 40, () => true)).toBeNull();
  });

  test('law: nearer and farther keep the point under the hand, to the pixel', () => {
    const camera = fitted(
      { minX: 0, minY: 0, maxX: 6000, maxY: 3600 },
      { width: 1440, height: 700 },
      { left: 260, right: 270, top: 20, bottom: 30 },
    );
    const under = toDrawingPoint(camera, 400, 300);
    for (const factor of [1.25, 0.5, 3]) {
      const at = toScreenPoint(zoomed(camera, factor, 400, 300), under.X, under.Y);
      expect(Math.abs(at.x - 400)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(at.y - 300)).toBeLessThanOrEqual(0.5);
    }
    expect(toScreenPoint(camera, 0, 0).x).toBeGreaterThanOrEqual(260);
    expect(toScreenPoint(camera, 6000, 0).x).toBeLessThanOrEqual(1440 - 270 + 1);
  });
});

describe('frames and hands', () => {
  test('law: however often it is asked within a frame, the work is done once, and never while nothing asks', () => {
    const waiting: (() => void)[] = [];
    const clock = { request: (call: () => void) => waiting.push(call), cancel: () => waiting.pop() };
    const frame = () => {
      for (const call of waiting.splice(0)) call();
    };
    let done = 0;
    const work = new OncePerFrame(() => done++, clock);
    frame();
    for (let i = 0; i < 50; i++) work.ask();
    expect([done, waiting.length]).toEqual([0, 1]);
    frame();
    frame();
    expect(done).toBe(1);
    work.ask();
    work.flush();
    work.flush();
    expect([done, waiting.length]).toEqual([2, 0]);
  });

  test('story: a drag of another that ended is shown where it was let go until its written place comes', () => {
    const hands = new Hands();
    const place: Place = ['dye:head', 2000, 1500, 0, 0];
    hands.takeOthers(new Map([['oil#1', place]]), 1000);
    hands.takeOthers(new Map(), 1100);
    expect(hands.placeOf('oil#1')).toEqual(place);
    hands.settle(['oil#1']);
    expect(hands.placeOf('oil#1')).toBeUndefined();
    hands.takeOthers(new Map([['oil#1', place]]), 2000);
    hands.takeOthers(new Map(), 2100);
    hands.expire(2100 + Hands.LINGER_MS);
    expect(hands.held().size).toBe(0);
  });
});
