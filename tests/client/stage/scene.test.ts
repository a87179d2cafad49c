import { labelOn, setSetting } from '@enfilade/shared/commands';
import { carrierOn, type Place } from '@enfilade/shared/schema';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SceneFrame, surfaceAt } from '../../../client/src/stage/panels.ts';
import { Scene } from '../../../client/src/stage/scene.ts';
import { ceilingFrameOf } from '../../../client/src/stage/scene-ceiling.ts';
import { itemsOf } from '../../../client/src/stage/scene-items.ts';
import { SceneLabels } from '../../../client/src/stage/scene-labels.ts';
import { layoutFrameOf } from '../../../client/src/stage/scene-layout.ts';
import { roomFrameOf } from '../../../client/src/stage/scene-room.ts';
import { wallFrameOf } from '../../../client/src/stage/scene-wall.ts';
import { standingOf } from '../../../client/src/stage/standing.ts';
import { ROOM, SIZES, stageShow } from './show.ts';

/** Own geometry, worked by hand from the conventions in the brief of the room: head up, right turned 90°, and so on. */
describe('where things are drawn', () => {
  test('reference: a picture on the head wall of a faced elevation lies at x and at height − y (worked by hand)', () => {
    const { judgements, lookup, put } = stageShow();
    put({ 'oil#1': ['dye:head', 4690, 1524, 0, 0] });
    const frame = wallFrameOf(judgements, 'dye:head') as SceneFrame;
    const [item] = itemsOf(frame, lookup, 'oil#1');
    expect(item).toMatchObject({ X: 4690, Y: 3600 - 1524, widthMm: 860, heightMm: 660, rotationDegrees: 0 });
    expect([item?.minX, item?.maxY]).toEqual([4690 - 430, 3600 - 1524 + 330]);
  });

  test('reference: in the fold-out each wall turns a quarter further, its ceiling outwards (worked by hand)', () => {
    const { judgements, lookup, put } = stageShow();
    const frame = roomFrameOf(judgements, 'dye') as SceneFrame;
    // Walls stand off the plan by 90 mm and the floor's fall of 30.
    const gap = 120;
    const margin = ROOM.heightMm + gap;
    const spots = { head: [1000, 1500], right: [1000, 1500], foot: [1000, 1500], left: [1000, 1500] } as const;
    const drawn: Record<string, unknown> = {};
    for (const [side, [x, y]] of Object.entries(spots)) {
      put({ 'oil#1': [`dye:${side}`, x, y, 0, 0] });
      const [item] = itemsOf(frame, lookup, 'oil#1');
      drawn[side] = [item?.X, item?.Y, item?.rotationDegrees];
    }
    expect(drawn).toEqual({
      head: [margin + 1000, margin - gap - 1500, 0],
      right: [margin + 6000 + gap + 1500, margin + 1000, 90],
      foot: [margin + 6000 - 1000, margin + 5000 + gap + 1500, 180],
      left: [margin - gap - 1500, margin + 5000 - 1000, 270],
    });
  });

  test('reference: a bench against the head wall is a footprint in the plan and a picture in the elevation', () => {
    const { judgements, lookup, put } = stageShow();
    put({ 'bench#1': ['dye:floor', 4000, 4800, 0, 0], 'trap#1': [carrierOn('bench#1', 0), 300, 200, 0, 0] });
    const frame = roomFrameOf(judgements, 'dye') as SceneFrame;
    const bench = itemsOf(frame, lookup, 'bench#1');
    expect(bench.map(({ key, as }) => [key, as])).toContainEqual(['bench#1@dye:floor', 'footprint']);
    const faced = bench.find(({ key }) => key === 'bench#1@dye:head');
    // Its foot is the floor's level under its centre: 30 mm of fall over 6 m, at 4 m.
    expect(faced).toMatchObject({ as: 'picture', xMm: 4000, yMm: -20 + 225, widthMm: 1400 });
    const trap = itemsOf(frame, lookup, 'trap#1').find(({ key }) => key === 'trap#1@dye:head');
    expect(trap).toMatchObject({ xMm: 4000 - 700 + 300, yMm: -20 + 450 + 390 });
  });

  test('law: of the labels on a drawing only what changed is told, and none of what is under a hand', () => {
    const { documents, judgements, put } = stageShow();
    put({ 'oil#1': ['dye:head', 1500, 1500, 0, 0], 'block#1': ['dye:head', 4500, 1500, 0, 0] });
    const frame = roomFrameOf(judgements, 'dye') as SceneFrame;
    const labels = new SceneLabels();
    expect(labels.read(judgements, frame, new Set())).toEqual([]);
    documents.write(setSetting('labelsOnWalls', true).changes, 'test');
    expect(labels.read(judgements, frame, new Set())).toHaveLength(2);
    expect(labels.read(judgements, frame, new Set())).toEqual([]);
    // In the fold-out the head wall lies upright: its label stands 60 mm right of the work, 54 in over the floor (by hand).
    const [first] = labels.shown;
    const gap = 120;
    expect(first?.minX).toBeCloseTo(ROOM.heightMm + gap + 1500 + 430 + 60, 6);
    expect(first === undefined ? null : (first.minY + first.maxY) / 2).toBeCloseTo(
      ROOM.heightMm - (1371.6 + judgements.where.wallOf('dye:head')!.floorAt(first?.label.xMm ?? 0)),
      6,
    );
    expect(labels.read(judgements, frame, new Set(['oil#1']))).toHaveLength(1);
    expect(labels.shown.map(({ label }) => label.pieces)).toEqual([['block#1']]);
    expect(labels.read(judgements, frame, new Set())).toHaveLength(1);
    documents.write(labelOn(['block#1'], 'none').changes, 'test');
    expect(labels.read(judgements, frame, new Set())).toHaveLength(1);
  });

  test('reference: a ceiling is seen from below: the head wall at its foot, left and right as on that wall (by hand)', () => {
    const { judgements, lookup, put } = stageShow();
    put({ 'bench#1': ['dye:ceiling', 1000, 4600, 700, 3000] });
    const frame = ceilingFrameOf(judgements, 'dye:ceiling') as SceneFrame;
    const [below] = itemsOf(frame, lookup, 'bench#1');
    expect(below).toMatchObject({ X: 1000, Y: 4600, rotationDegrees: 30, as: 'footprint', direct: true });
    expect(surfaceAt(frame, 1000, 4600)).toMatchObject({ xMm: 1000, yMm: 4600 });
    put({ 'trap#1': ['dye:floor', 2000, 3000, 0, 0], 'block#1': [carrierOn('trap#1', 0), 100, 100, 0, 0] });
    // What stands beneath is told by its outline, so that one hangs clear of it; what stands on that is left out.
    expect(itemsOf(frame, lookup, 'trap#1')).toMatchObject([{ X: 2000, Y: 3000, as: 'overhead', direct: false }]);
    expect(itemsOf(frame, lookup, 'block#1')).toEqual([]);
    const room = itemsOf(roomFrameOf(judgements, 'dye') as SceneFrame, lookup, 'bench#1');
    const above = room.find(({ panel }) => panel.kind === 'floor');
    expect(above).toMatchObject({ xMm: 1000, yMm: 4600, rotationDegrees: 330, as: 'overhead', direct: false });
    // Its foot: 3600 − 700 − 450; what it hangs by is drawn up to the ceiling.
    const faced = room.find(({ panel }) => panel.side === 'head');
    expect(faced).toMatchObject({ xMm: 1000, yMm: 2450 + 225, hangsFromMm: 3600, minY: 0 });
  });

  test('law: every point of a fold-out panel comes back to the surface and place it was drawn from', () => {
    const { judgements, lookup, put } = stageShow();
    const frame = roomFrameOf(judgements, 'dye') as SceneFrame;
    const sides = fc.constantFrom('head', 'right', 'foot', 'left', 'floor');
    fc.assert(
      fc.property(sides, fc.integer({ min: 1, max: 4999 }), fc.integer({ min: 1, max: 3599 }), (side, x, y) => {
        put({ 'oil#1': [`dye:${side}`, x, y, 0, 0] });
        const item = itemsOf(frame, lookup, 'oil#1').find(({ direct }) => direct);
        const back = surfaceAt(frame, item?.X ?? 0, item?.Y ?? 0);
        return back?.panel.surface === `dye:${side}` && back.xMm === x && back.yMm === y;
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});

/** Places of every kind: on walls, floor, ceiling and layout floor, in a doorway, on the bench, on the shelf, on one another. */
const anyPlace = (carrier: string) =>
  fc.tuple(
    fc.constantFrom(
      ...['dye:head', 'dye:right', 'dye:foot', 'dye:left', 'dye:floor', 'dye:ceiling'],
      ...['layout', 'opening:door', carrier],
    ),
    fc.integer({ min: 0, max: 5000 }),
    fc.integer({ min: 0, max: 3500 }),
    fc.integer({ min: 0, max: 80 }),
    fc.constantFrom(0, 1500, 9000, 18_000, 27_000),
  );

const anyHang = fc.record({
  'bench#1': anyPlace('layout'),
  'shelf#1': anyPlace(carrierOn('bench#1', 0)),
  'trap#1': anyPlace(carrierOn('bench#1', 0)),
  'block#1': anyPlace(carrierOn('shelf#1', 0)),
  'block#2': anyPlace(carrierOn('trap#1', 0)),
  'oil#1': anyPlace(carrierOn('bench#1', 0)),
});

describe('the scene and the model', () => {
  test('law: the stage sees in every view what the judgements see, and sees it in the same place', () => {
    fc.assert(
      fc.property(anyHang, (places) => {
        const { judgements, lookup, put } = stageShow();
        put(places);
        const room = roomFrameOf(judgements, 'dye') as SceneFrame;
        const ceiling = ceilingFrameOf(judgements, 'dye:ceiling') as SceneFrame;
        const frames = [room, roomFrameOf(judgements, 'wheel') as SceneFrame, ceiling, layoutFrameOf(judgements)];
        for (const frame of frames) {
          const scene = new Scene(frame, lookup, Object.keys(places));
          for (const panel of frame.panels) {
            const { surface } = panel;
            const drawn = Object.keys(places).flatMap((id) =>
              scene.itemsOf(id).filter((item) => item.panel.surface === surface),
            );
            const seen =
              panel.kind === 'wall' ? judgements.where.elevationOf(surface) : judgements.where.planOf(surface);
            for (const item of drawn) {
              const same = seen.find(({ pieceId }) => pieceId === item.pieceId);
              expect(same, `${item.key} is drawn and not seen`).toBeDefined();
              for (const key of ['xMm', 'yMm', 'widthMm', 'heightMm'] as const) {
                expect(item[key], `${item.key} ${key}`).toBeCloseTo(same?.[key] ?? Number.NaN, 6);
              }
              if (panel.kind === 'ceiling')
                expect(item.rotationDegrees).toBeCloseTo(same?.turnDegrees ?? Number.NaN, 6);
            }
            // In an elevation, what stands on furniture is drawn where it faces the wall's viewer, and else left out.
            const due = seen.filter(({ pieceId }) => {
              const at = standingOf(lookup, pieceId);
              return panel.kind !== 'wall' || at?.kind !== 'floor' || at.direct;
            });
            for (const { pieceId } of due) expect(drawn.map((item) => item.pieceId)).toContain(pieceId);
          }
        }
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  test('law: refreshed piece by piece, a scene is the scene built anew', () => {
    fc.assert(
      fc.property(anyHang, anyHang, (before, after) => {
        const { judgements, lookup, put } = stageShow();
        put(before);
        const frame = roomFrameOf(judgements, 'dye') as SceneFrame;
        const scene = new Scene(frame, lookup, Object.keys(before));
        const all = { minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 };
        for (const [id, place] of Object.entries(after)) {
          put({ [id]: place as Place });
          scene.refresh([id, ...judgements.where.loadOf(id)]);
        }
        const fresh = new Scene(frame, lookup, Object.keys(after));
        const told = (of: Scene) =>
          of.within(all).map(({ key, X, Y, rotationDegrees }) => [key, X, Y, rotationDegrees]);
        expect(told(scene)).toEqual(told(fresh));
      }),
      { seed: 9, numRuns: 60 },
    );
  });

  test('story: a remote move of one block repaints where it was and where it is, and nothing else', () => {
    const { judgements, lookup, put } = stageShow();
    put({ 'block#1': ['dye:head', 500, 1500, 0, 0], 'block#2': ['dye:head', 900, 1500, 0, 0] });
    const scene = new Scene(wallFrameOf(judgements, 'dye:head') as SceneFrame, lookup, ['block#1', 'block#2']);
    const still = scene.itemsOf('block#2')[0];
    put({ 'block#1': ['dye:head', 2000, 1800, 0, 0] });
    const half = SIZES.block.widthMm / 2;
    expect(scene.refresh(['block#1']).map(({ minX, minY }) => [minX, minY])).toEqual([
      [500 - half, 3600 - 1500 - half],
      [2000 - half, 3600 - 1800 - half],
    ]);
    expect(scene.itemsOf('block#2')[0]).toBe(still);
  });

  test('story: what is under a hand is no longer among what rests, and comes back to it', () => {
    const { judgements, lookup, put } = stageShow();
    put({ 'block#1': ['dye:head', 500, 1500, 0, 0] });
    const scene = new Scene(wallFrameOf(judgements, 'dye:head') as SceneFrame, lookup, ['block#1']);
    const near = { minX: 400, minY: 2000, maxX: 600, maxY: 2200 };
    expect(scene.lift(new Set(['block#1']))).toHaveLength(1);
    expect(scene.within(near)).toEqual([]);
    // It moves while it is held: nothing of what rests is to be painted.
    put({ 'block#1': ['dye:head', 520, 1500, 0, 0] });
    expect(scene.refresh(['block#1'])).toEqual([]);
    expect(scene.lift(new Set())).toHaveLength(1);
    expect(scene.within(near).map(({ xMm }) => xMm)).toEqual([520]);
  });
});
