import type { RemarkThread } from '@enfilade/shared/remarks';
import type { Place } from '@enfilade/shared/schema';
import type { RemarkAbout } from '@enfilade/shared/talk';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SceneFrame } from '../../../client/src/stage/panels.ts';
import { Scene } from '../../../client/src/stage/scene.ts';
import { roomFrameOf } from '../../../client/src/stage/scene-room.ts';
import { wallFrameOf } from '../../../client/src/stage/scene-wall.ts';
import { type RemarkMark, RING_PX, remarkMarksOf } from '../../../client/src/talk/remark-marks.ts';
import { stageShow } from '../stage/show.ts';

const NOBODY = { lifted: new Set<string>(), held: new Set<string>() };
const SCALE = 0.12;

function thread(about: RemarkAbout, id: string, settled = false): RemarkThread {
  const word = { by: 'isolde', name: 'Isolde Fennimarsh', role: 'guest artist', at: '2026-05-12T02:10:00Z' } as const;
  const remark = { about, text: 'Lower?', ...word, ...(settled ? { settled: word } : {}) };
  return { id, remark, answers: [], lastAt: word.at, waitsForAnswer: false };
}

const onPiece = (pieceId: string, id: string, settled = false) => thread({ kind: 'piece', pieceId }, id, settled);
const onSpot = (xMm: number, yMm: number) => thread({ kind: 'spot', surface: 'dye:head', xMm, yMm }, `${xMm}`);

function wall(places: Readonly<Record<string, Place>>): Scene {
  const { judgements, lookup, put } = stageShow();
  put(places);
  return new Scene(wallFrameOf(judgements, 'dye:head') as SceneFrame, lookup, Object.keys(places));
}

/** Whether a mark's ring lies over a piece. */
function covers(scene: Scene, mark: RemarkMark, pieceId: string): boolean {
  return scene
    .itemsOf(pieceId)
    .some(
      ({ minX, minY, maxX, maxY }) =>
        mark.x + RING_PX > minX * SCALE &&
        mark.x - RING_PX < maxX * SCALE &&
        mark.y + RING_PX > minY * SCALE &&
        mark.y - RING_PX < maxY * SCALE,
    );
}

describe('rings of remarks on the stage', () => {
  test('story: two on one work are one mark at its upper right corner; a settled one, or one on what is elsewhere, is none', () => {
    const scene = wall({ 'oil#1': ['dye:head', 3000, 1500, 0, 0] });
    const threads = [onPiece('oil#1', 'a'), onPiece('oil#1', 'b'), onPiece('oil#1', 'c', true), onPiece('trap#1', 'd')];
    const marks = remarkMarksOf(scene, threads, SCALE, NOBODY);
    expect(marks.map(({ threads: all }) => all.map(({ id }) => id))).toEqual([['a', 'b']]);
    const [mark] = marks as [RemarkMark];
    expect(mark.x).toBeGreaterThan((3000 + 430) * SCALE);
    expect(mark.y).toBeLessThan((3600 - 1500) * SCALE);
    expect(covers(scene, mark, 'oil#1')).toBe(false);
  });

  test('story: it steps aside while the work is under a hand, and beside the ring of whoever holds it', () => {
    const scene = wall({ 'oil#1': ['dye:head', 3000, 1500, 0, 0] });
    const threads = [onPiece('oil#1', 'a')];
    expect(remarkMarksOf(scene, threads, SCALE, { ...NOBODY, lifted: new Set(['oil#1']) })).toEqual([]);
    const [mark] = remarkMarksOf(scene, threads, SCALE, { ...NOBODY, held: new Set(['oil#1']) });
    // The holder's ring is drawn 3 px right of the corner, 10 px round.
    expect(mark?.x ?? 0).toBeGreaterThan((3000 + 430) * SCALE + 3 + 2 * RING_PX);
  });

  test('story: in the fold-out a spot on the right wall is marked where that wall lies, turned with it', () => {
    const { judgements, lookup } = stageShow();
    const scene = new Scene(roomFrameOf(judgements, 'dye') as SceneFrame, lookup, []);
    const about = { kind: 'spot', surface: 'dye:right', xMm: 1000, yMm: 1500 } as const;
    const [mark] = remarkMarksOf(scene, [thread(about, 'a')], 1, NOBODY);
    // As tests/client/stage/scene.test.ts has a picture at the same place.
    expect(mark?.spot).toEqual({ x: 3720 + 6000 + 120 + 1500, y: 3720 + 1000 });
  });

  test('law: a ring lies over no work wherever there is room, also where its spot lies on one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1200, max: 4800 }),
        fc.integer({ min: 1000, max: 2400 }),
        fc.integer({ min: -300, max: 300 }),
        fc.integer({ min: -300, max: 300 }),
        (x, y, dx, dy) => {
          const scene = wall({
            'oil#1': ['dye:head', x, y, 0, 0],
            'block#1': ['dye:head', x + 560, y + 230, 0, 0],
          });
          const threads = [onPiece('oil#1', 'a'), onPiece('block#1', 'b'), onSpot(x + dx, y + dy)];
          const marks = remarkMarksOf(scene, threads, SCALE, NOBODY);
          expect(marks).toHaveLength(3);
          for (const mark of marks) {
            for (const piece of ['oil#1', 'block#1']) expect(covers(scene, mark, piece)).toBe(false);
          }
          for (const [i, a] of marks.entries()) {
            for (const b of marks.slice(i + 1)) {
              expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(2 * RING_PX);
            }
          }
        },
      ),
      { seed: 20260512, numRuns: 200 },
    );
  });
});
