import { changeSentences, changeText, piecesIn } from '@enfilade/shared/change-sentences';
import type { VignetteChange } from '@enfilade/shared/sign-off';
import { describe, expect, test } from 'vitest';
import { seeded } from './replicas.ts';

const words = {
  nameOf: (pieceId: string) => `Block ${pieceId.slice(pieceId.indexOf('#') + 1)}`,
  surfaceName: (on: string) => (on === 'dye:head' ? 'Dye House, east wall' : on),
  length: (mm: number) => (mm / 10).toFixed(1),
  onOf: (pieceId: string) => (pieceId === 'bench#1' ? 'dye:floor' : pieceId === 'trap#1' ? 'dye:ceiling' : 'dye:head'),
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
    [{ kind: 'lifted', pieceId: 'trap#1', byMm: -40 }, 'Block 1 hangs 4.0 higher'],
    [{ kind: 'moved', pieceId: 'trap#1', dxMm: 0, dyMm: 300 }, 'Block 1 moved 30.0 back'],
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

  describe('like changes are counted', () => {
    const counting = {
      ...words,
      nameOf: (pieceId: string) => (pieceId.startsWith('block') ? words.nameOf(pieceId) : pieceId.replace('#1', '')),
      recordOf: (pieceId: string) =>
        pieceId.startsWith('block') ? { title: 'Printing blocks', count: 60 } : { title: pieceId, count: 1 },
    };
    const moved = (pieceId: string, dxMm: number, dyMm = 0): VignetteChange => ({ kind: 'moved', pieceId, dxMm, dyMm });
    const blocks = (count: number) => Array.from({ length: count }, (_, n) => `block#${n + 1}`);
    const told = (changes: readonly VignetteChange[]) => changeSentences(changes, counting);

    test('story: 41 blocks moved with their focal work are one sentence, and the work another', () => {
      const changes = [moved('oil#1', -30), ...blocks(41).map((id) => moved(id, -30))];
      expect(told(changes)).toEqual(['oil moved 3.0 left', 'Printing blocks: 41 pieces moved 3.0 left']);
    });

    test('story: one block fewer, two more, one turned: a set is counted, a single piece of it moved is named', () => {
      expect(
        told([
          { kind: 'left', pieceId: 'block#9' },
          { kind: 'joined', pieceId: 'block#41' },
          { kind: 'joined', pieceId: 'block#42' },
          { kind: 'turned', pieceId: 'block#3', byCentidegrees: 900 },
          { kind: 'left', pieceId: 'oil#1' },
        ]),
      ).toEqual([
        'Printing blocks: one piece fewer',
        'Printing blocks: 2 pieces more',
        'Block 3 turned 9° clockwise',
        'oil out',
      ]);
    });

    test('story: a halo laid out anew is told by how far its pieces went at most; works keep their names longer', () => {
      const changes = [
        ...blocks(12).map((id, n) => moved(id, 30 + n, n)),
        moved('oil#1', 40),
        moved('jug#1', 80),
        moved('trap#1', 120),
        moved('net#1', 160),
      ];
      expect(told(changes)).toEqual([
        'Printing blocks: 12 pieces moved, by up to 4.2',
        'oil moved 4.0 right',
        'jug moved 8.0 right',
        'trap moved 12.0 right',
        'net moved 16.0 right',
      ]);
    });

    test('law: however changes are drawn together, every one is in exactly one sentence', () => {
      for (let seed = 1; seed <= 60; seed++) {
        const random = seeded(seed);
        const pick = (n: number): number => Math.floor(random() * n);
        const changes = blocks(2 + pick(14)).map((id, n): VignetteChange => {
          const pieceId = pick(3) === 0 ? `work${n}#1` : id;
          const kind = pick(5);
          if (kind === 0) return { kind: 'joined', pieceId };
          if (kind === 1) return { kind: 'turned', pieceId, byCentidegrees: 100 * (1 + pick(6)) };
          return moved(pieceId, 30 * (1 + pick(4)));
        });
        const count = told(changes).reduce((sum, sentence) => {
          const [, figure] = /(?:^|: )(\d+) pieces /.exec(sentence) ?? [];
          return sum + Number(figure ?? 1);
        }, 0);
        expect(count, `seed ${seed}`).toBe(changes.length);
      }
    });
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
