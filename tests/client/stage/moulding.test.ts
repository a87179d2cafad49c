import { FRAME_COLOURS, FRAME_FINISHES } from '@enfilade/colour/frames';
import { labD65FromHex } from '@enfilade/colour/spaces';
import { correctObject } from '@enfilade/shared/commands';
import type { FrameFact } from '@enfilade/shared/schema';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mouldingTonesOf, sightOf } from '../../../client/src/stage/moulding.ts';
import type { SceneFrame } from '../../../client/src/stage/panels.ts';
import { itemsOf } from '../../../client/src/stage/scene-items.ts';
import { roomFrameOf } from '../../../client/src/stage/scene-room.ts';
import { wallFrameOf } from '../../../client/src/stage/scene-wall.ts';
import { stageShow } from './show.ts';

describe('frames on the stage', () => {
  test('reference: a moulding of 43 mm round 860 × 660 is a twentieth of its width (worked by hand)', () => {
    const { documents, judgements, lookup, put } = stageShow();
    put({ 'oil#1': ['dye:head', 3000, 1500, 0, 0] });
    const itemNow = () => itemsOf(wallFrameOf(judgements, 'dye:head') as SceneFrame, lookup, 'oil#1')[0];
    const frameIt = (frame: FrameFact) => documents.write(correctObject('oil', { frame }).changes, 'test');
    expect(itemNow()).toMatchObject({ moulding: null, shape: 860 / 660 });
    frameIt({ kind: 'gilt', widthMm: 43 });
    expect(itemNow()).toMatchObject({
      moulding: { finish: 'gilt', across: 0.05, up: 43 / 660 },
      shape: (860 - 86) / (660 - 86),
    });
    frameIt({ kind: 'from the picture', widthMm: 43 });
    expect(itemNow()).toMatchObject({ moulding: null, shape: 860 / 660 });
  });

  test('story: a framed bench has its frame where it is faced, none in its footprint', () => {
    const { documents, judgements, lookup, put } = stageShow();
    put({ 'bench#1': ['dye:floor', 4000, 4800, 0, 0] });
    documents.write(correctObject('bench', { frame: { kind: 'wood', widthMm: 30 } }).changes, 'test');
    const items = itemsOf(roomFrameOf(judgements, 'dye') as SceneFrame, lookup, 'bench#1');
    expect(items.map(({ as }) => as)).toContain('footprint');
    for (const { as, moulding } of items) expect(moulding !== null).toBe(as === 'picture');
  });

  test('law: at every zoom the sight lies in the middle of its rectangle, on whole pixels, and is never nothing', () => {
    const share = fc.double({ min: 0.0001, max: 0.4999, noNaN: true });
    const side = fc.integer({ min: 1, max: 3000 });
    fc.assert(
      fc.property(share, share, side, side, (across, up, w, h) => {
        const sight = sightOf({ finish: 'black', across, up }, { x: 7, y: 9, w, h });
        expect(Math.min(sight.w, sight.h)).toBeGreaterThanOrEqual(1);
        expect(2 * (sight.x - 7) + sight.w).toBe(w);
        expect(2 * (sight.y - 9) + sight.h).toBe(h);
        expect(sight.x === 7).toBe(sight.y === 9);
        for (const figure of Object.values(sight)) expect(Number.isInteger(figure)).toBe(true);
        expect(sight.x - 7).toBeLessThanOrEqual(Math.round(across * w));
      }),
      { seed: 31, numRuns: 500 },
    );
  });

  test('law: a frame’s four sides average its own colour, which is what the reading takes', () => {
    for (const finish of FRAME_FINISHES) {
      const { sides, slopes, flat } = mouldingTonesOf(finish);
      for (const four of [sides, slopes]) {
        const L = four.reduce((sum, hex) => sum + (labD65FromHex(hex)?.L ?? Number.NaN) / 4, 0);
        // White has no room left above it.
        expect(Math.abs(L - FRAME_COLOURS[finish].L)).toBeLessThan(finish === 'white' ? 1.5 : 0.6);
      }
      expect(Math.abs((labD65FromHex(flat)?.L ?? 0) - FRAME_COLOURS[finish].L)).toBeLessThan(0.6);
    }
  });
});
