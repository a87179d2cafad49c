import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bracketsOf, labelSpanOf, rowsOf } from '../../../client/src/stage/brackets.ts';
import type { SceneFrame } from '../../../client/src/stage/panels.ts';
import { Scene } from '../../../client/src/stage/scene.ts';
import { roomFrameOf } from '../../../client/src/stage/scene-room.ts';
import { SLAB_MM, wallFrameOf } from '../../../client/src/stage/scene-wall.ts';
import { ROOM, stageShow } from './show.ts';

const pair = { id: 'v1', members: ['block#1', 'block#2', 'oil#1'] };

describe('brackets of vignettes', () => {
  test('reference: beneath a faced wall, from the first piece to the last; what hangs elsewhere is left out (by hand)', () => {
    const { judgements, lookup, put } = stageShow();
    put({
      'block#1': ['dye:head', 1000, 1500, 0, 0],
      'block#2': ['dye:head', 3000, 1500, 0, 0],
      'oil#1': ['dye:foot', 5000, 1500, 0, 0],
    });
    const scene = new Scene(wallFrameOf(judgements, 'dye:head') as SceneFrame, lookup, pair.members);
    // The floor falls 30 mm to the right; blocks are 200 wide.
    expect(bracketsOf(scene, [{ ...pair, surface: 'dye:head' }])).toEqual([
      { id: 'v1', surface: 'dye:head', edge: 'below', fromMm: 900, toMm: 3100, atMm: ROOM.heightMm + 30 + SLAB_MM },
    ]);
    expect(bracketsOf(scene, [{ ...pair, surface: 'dye:foot' }])).toEqual([]);
    expect(bracketsOf(scene, [{ ...pair, surface: null }])).toEqual([]);
  });

  test('reference: in the fold-out each lies along the ceiling edge of its wall, on the screen’s own side (by hand)', () => {
    const { judgements, lookup, put } = stageShow();
    const frame = roomFrameOf(judgements, 'dye') as SceneFrame;
    const margin = ROOM.heightMm + 120;
    const edges: Record<string, unknown> = {};
    for (const side of ['head', 'right', 'foot', 'left']) {
      put({ 'block#1': [`dye:${side}`, 1000, 1500, 0, 0] });
      const [bracket] = bracketsOf(new Scene(frame, lookup, ['block#1']), [{ ...pair, surface: `dye:${side}` }]);
      edges[side] = [bracket?.edge, bracket?.fromMm, bracket?.atMm];
    }
    expect(edges).toEqual({
      head: ['above', margin + 900, 0],
      right: ['right', margin + 900, frame.bounds.maxX],
      foot: ['below', margin + 6000 - 1100, frame.bounds.maxY],
      left: ['left', margin + 5000 - 1100, 0],
    });
  });

  test('law: in one row no two spans come nearer than the gap, and none is a row lower than it need be', () => {
    const span = fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 1, max: 200 }));
    fc.assert(
      fc.property(fc.array(span, { maxLength: 12 }), (pairs) => {
        const spans = pairs.map(([from, long]) => ({ from, to: from + long }));
        const rows = rowsOf(spans, 10);
        const near = (i: number, j: number) => {
          const [a, b] = [spans[i], spans[j]];
          return a !== undefined && b !== undefined && a.from < b.to + 10 && b.from < a.to + 10;
        };
        const all = [...spans.keys()];
        const deepest = Math.max(
          0,
          ...all.map((i) => all.filter((j) => near(i, j) && (spans[j]?.from ?? 0) <= (spans[i]?.from ?? 0)).length),
        );
        expect(all.some((i) => all.some((j) => i < j && rows[i] === rows[j] && near(i, j)))).toBe(false);
        expect(Math.max(0, ...rows.map((row) => row + 1))).toBe(deepest);
      }),
      { seed: 20, numRuns: 300 },
    );
  });

  test('law: a name lies over its bracket’s middle unless the wall ends first', () => {
    const limits = { from: 0, to: 600 };
    expect(labelSpanOf({ from: 200, to: 300 }, 120, limits)).toEqual({ from: 190, to: 310 });
    expect(labelSpanOf({ from: 0, to: 40 }, 120, limits)).toEqual({ from: 0, to: 120 });
    expect(labelSpanOf({ from: 560, to: 600 }, 120, limits)).toEqual({ from: 480, to: 600 });
  });
});
