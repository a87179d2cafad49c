import { changeSentences, changeText, piecesIn } from '@enfilade/shared/change-sentences';
import type { VignetteChange } from '@enfilade/shared/sign-off';
import { describe, expect, test } from 'vitest';

const words = {
  nameOf: (pieceId: string) => `Block ${pieceId.slice(pieceId.indexOf('#') + 1)}`,
  surfaceName: (on: string) => (on === 'dye:head' ? 'Dye House, east wall' : on),
  length: (mm: number) => (mm / 10).toFixed(1),
  onOf: (pieceId: string) => (pieceId === 'bench#1' ? 'dye:floor' : 'dye:head'),
};

describe('what changed since a signature, in words', () => {
  test('story: a block is nudged and the wall repainted, and the caption says exactly that', () => {
    const changes: VignetteChange[] = [
      { kind: 'moved', pieceId: 'block#10', dxMm: -60, dyMm: 0 },
      { kind: 'repainted', surface: 'dye:head', from: 'Verdigris, deep', to: 'Weld' },
    ];
    expect(changeText(changes, words)).toBe(
      'Block 10 moved 6.0 left; Dye House, east wall repainted from Verdigris, deep to Weld',
    );
  });

  test.each<[VignetteChange, string]>([
    [{ kind: 'moved', pieceId: 'block#1', dxMm: 50, dyMm: 20 }, 'Block 1 moved 5.0 right and 2.0 up'],
    [{ kind: 'moved', pieceId: 'block#1', dxMm: 0, dyMm: -300 }, 'Block 1 moved 30.0 down'],
    [{ kind: 'moved', pieceId: 'bench#1', dxMm: 0, dyMm: 300 }, 'Block 1 moved 30.0 back'],
    [{ kind: 'turned', pieceId: 'block#2', byCentidegrees: -450 }, 'Block 2 turned 4.5° anticlockwise'],
    [{ kind: 'lifted', pieceId: 'block#2', byMm: -40 }, 'Block 2 stands off 4.0 less'],
    [{ kind: 'joined', pieceId: 'block#41' }, 'Block 41 in'],
    [{ kind: 'left', pieceId: 'block#41' }, 'Block 41 out'],
    [{ kind: 'put back', pieceId: 'block#3' }, 'Block 3 put back to the unplaced'],
    [
      { kind: 'moved elsewhere', pieceId: 'block#3', from: 'dye:head', to: 'layout' },
      'Block 3 moved from Dye House, east wall to layout',
    ],
    [{ kind: 'focal', from: 'block#4', to: null }, 'Block 4 no longer its focal work'],
    [{ kind: 'focal', from: null, to: 'block#5' }, 'Block 5 made its focal work'],
    [{ kind: 'renamed', from: 'Blocks', to: 'Sixty impressions' }, 'renamed from ‘Blocks’ to ‘Sixty impressions’'],
    [{ kind: 'intent', from: 'One', to: '' }, 'its intent taken away'],
    [{ kind: 'repainted', surface: 'dye:head', from: null, to: 'Weld' }, 'Dye House, east wall repainted to Weld'],
    [
      { kind: 'repainted', surface: 'dye:head', from: 'Weld', to: null },
      'Dye House, east wall repainted from Weld, to no paint',
    ],
  ])('story: %j is told as one sentence', (change, sentence) => {
    expect(changeSentences([change], words)).toEqual([sentence]);
  });

  test('law: a long list is cut, and how many more there are is said, so that none is hidden', () => {
    for (let count = 1; count <= 12; count++) {
      const changes = Array.from(
        { length: count },
        (_, n): VignetteChange => ({ kind: 'joined', pieceId: `block#${n}` }),
      );
      const parts = changeText(changes, words, 4).split('; ');
      const more = /^and (\d+) more$/.exec(parts.at(-1) ?? '');
      const told = more === null ? parts.length : parts.length - 1 + Number(more[1]);
      expect(told).toBe(count);
      expect(parts.length).toBeLessThanOrEqual(4);
    }
  });

  test('law: the pieces to show are those the changes name, each once', () => {
    expect(
      piecesIn([
        { kind: 'moved', pieceId: 'a#1', dxMm: 90, dyMm: 0 },
        { kind: 'turned', pieceId: 'a#1', byCentidegrees: 900 },
        { kind: 'repainted', surface: 'dye:head', from: null, to: null },
        { kind: 'focal', from: 'b#1', to: 'c#1' },
      ]),
    ).toEqual(['a#1', 'c#1']);
  });
});
