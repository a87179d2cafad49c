import { lightOf } from '@enfilade/colour/lights';
import { surfaceFromLab } from '@enfilade/colour/seen';
import { DIRECT_BY_SPOTS, wallBounceOf } from '@enfilade/colour/wall-bounce';
import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { roomBounceOf } from '@enfilade/shared/room-bounce';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const D65 = lightOf('D65');

function room() {
  const { documents, history } = sampleShow();
  return { documents, history, judgements: new Judgements(documents, { get: () => undefined }) };
}

describe('what a room throws on white mounts', () => {
  test('law: it is the engine’s answer for the surveyed box, its paints, and its openings as light that is gone', () => {
    const { history, judgements } = room();
    history.perform(commands.repaint('dye:right', 'weld'));
    history.perform(
      commands.addOpening({
        kind: 'doorway',
        name: 'to the Wheel Room',
        widthMm: 1200,
        heightMm: 2200,
        sillMm: 0,
        sides: [{ surface: 'dye:right', xMm: 2000 }],
      }),
    );
    const found = roomBounceOf(judgements, 'dye', { light: D65 });
    const face = (lab: { L: number; a: number; b: number }, side: keyof typeof DIRECT_BY_SPOTS, openMm2 = 0) => ({
      surface: surfaceFromLab(lab),
      parts: [{ areaMm2: openMm2 }],
      direct: DIRECT_BY_SPOTS[side],
    });
    const white = { L: 92, a: 0, b: 3 };
    // The floor falls 30 mm, so the opening reaches down with it.
    const open = judgements.openingsOn('dye:right').reduce((sum, box) => sum + box.widthMm * box.heightMm, 0);
    expect(open).toBeGreaterThanOrEqual(1200 * 2200);
    const byHand = wallBounceOf(
      {
        ...{ widthMm: 6000, depthMm: 6000, heightMm: 3600 },
        head: face({ L: 33, a: -25, b: -4 }, 'head'),
        right: face({ L: 80, a: -2, b: 60 }, 'right', open),
        foot: face(white, 'foot'),
        left: face(white, 'left'),
        floor: face({ L: 55, a: 8, b: 22 }, 'floor'),
        ceiling: face({ L: 94, a: 0, b: 2 }, 'ceiling'),
      },
      D65,
    );
    expect(found?.mounts.map(({ wallName }) => wallName)).toEqual([
      'east wall',
      'south wall',
      'west wall',
      'north wall',
    ]);
    for (const [i, side] of (['head', 'right', 'foot', 'left'] as const).entries()) {
      const expected = byHand.find((bounce) => bounce.face === side);
      expect(found?.mounts[i]?.deltaE).toBeCloseTo(expected?.deltaE ?? Number.NaN, 6);
    }
    // Walls are called as the room calls them, and what was taken for granted is said.
    expect(found?.mounts[3]?.words).toContain('south wall');
    expect(found?.assumptions[0]).toBe(
      'Nothing is recorded of some faces: the west wall as white, the north wall as white, the floor as oiled oak and the ceiling as white is taken for granted.',
    );
  });

  test('law: a paint tried on one wall tints mounts on the walls that see it, and the hang stays as it is', () => {
    const { judgements } = room();
    const paint = surfaceFromLab({ L: 42, a: 55, b: 35 });
    const before = roomBounceOf(judgements, 'dye', { light: D65 });
    const tried = roomBounceOf(judgements, 'dye', { light: D65, tried: { surface: 'dye:right', paint } });
    const gain = (name: string): number => {
      const of = (bounce: typeof tried) =>
        bounce?.mounts.find(({ wallName }) => wallName === name)?.deltaE ?? Number.NaN;
      return of(tried) - of(before);
    };
    expect(gain('north wall')).toBeGreaterThan(2);
    // What hangs on the red wall itself sees its red only by way of the others.
    expect(gain('south wall')).toBeLessThan(gain('north wall'));
    expect(roomBounceOf(judgements, 'dye', { light: D65 })).toEqual(before);
  });

  test('law: a room that is gone, or has no size, has no answer; openings beyond their wall break nothing', () => {
    const { history, judgements } = room();
    expect(roomBounceOf(judgements, 'gone', { light: D65 })).toBeNull();
    for (let n = 0; n < 4; n++) {
      history.perform(
        commands.addOpening({
          kind: 'window',
          name: 'all of it',
          widthMm: 6000,
          heightMm: 3600,
          sillMm: 0,
          sides: [{ surface: 'dye:left', xMm: 0 }],
        }),
      );
    }
    for (const { deltaE } of roomBounceOf(judgements, 'dye', { light: D65 })?.mounts ?? []) {
      expect(Number.isFinite(deltaE)).toBe(true);
    }
    history.perform(commands.correctRoom('dye', { heightMm: 0 }));
    expect(roomBounceOf(judgements, 'dye', { light: D65 })).toBeNull();
  });
});
