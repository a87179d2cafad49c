import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { roomMakerOn } from '@enfilade/shared/making-room';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

/** Blocks of 200 × 200 mm in a row at 1,500 mm, 260 mm from middle to middle. */
function row(count: number) {
  const { documents, history } = sampleShow();
  const judgements = new Judgements(documents, { get: () => undefined });
  const places = new Map(
    Array.from({ length: count }, (_, n): [PieceId, Place] => [
      `blocks#${n + 1}`,
      ['dye:head', 500 + 260 * n, 1500, 0, 0],
    ]),
  );
  history.perform(commands.place(documents, places));
  return { documents, history, judgements };
}

describe('neighbours make room', () => {
  test('story: let down on its neighbour, it has its place, the neighbour gives way by the gap, others stay', () => {
    const { judgements } = row(6);
    const made = roomMakerOn(judgements, 'dye:head', 'blocks#6', 60)?.(['dye:head', 900, 1500, 0, 0]);
    expect(made?.get('blocks#6')).toEqual(['dye:head', 900, 1500, 0, 0]);
    const gave = [...(made ?? new Map<PieceId, Place>())].filter(([id]) => id !== 'blocks#6');
    expect(gave.length).toBeGreaterThan(0);
    const all = new Map(
      [...Array.from({ length: 6 }, (_, n) => `blocks#${n + 1}`)].map((id) => [id, judgements.where.placeOf(id)!]),
    );
    for (const [id, at] of made!) all.set(id, at);
    const boxes = [...all.values()];
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const apart = Math.max(Math.abs(a[1] - b[1]) - 200, Math.abs(a[2] - b[2]) - 200);
        expect(apart).toBeGreaterThanOrEqual(60);
      }
    });
  });

  test('story: a pinned neighbour stays, and what is moved goes beside it', () => {
    const { judgements, history } = row(3);
    history.perform(commands.pin(['blocks#2'], true));
    const made = roomMakerOn(judgements, 'dye:head', 'blocks#3', 60)?.(['dye:head', 770, 1500, 0, 0]);
    expect(made?.has('blocks#2')).toBe(false);
    const [, x, y] = made!.get('blocks#3')!;
    expect(Math.max(Math.abs(x - 760) - 200, Math.abs(y - 1500) - 200)).toBeGreaterThanOrEqual(60);
    history.undo();
    expect(roomMakerOn(judgements, 'dye:head', 'blocks#3', 60)?.(['dye:head', 770, 1500, 0, 0])?.has('blocks#2')).toBe(
      true,
    );
  });

  test('story: a large hanging gives no way to a block: the block goes beside it', () => {
    const { judgements, history, documents } = row(1);
    history.perform(commands.place(documents, new Map([['hanging#1', ['dye:head', 3500, 1500, 0, 0]]])));
    const made = roomMakerOn(judgements, 'dye:head', 'blocks#1', 60)?.(['dye:head', 2000, 1500, 0, 0]);
    expect([...(made?.keys() ?? [])]).toEqual(['blocks#1']);
    // The hanging is 3,100 wide: its left edge is at 1,950.
    expect(made!.get('blocks#1')![1] + 100).toBeLessThanOrEqual(1950 - 60);
  });

  test('story: where there is no room nobody gives way', () => {
    const { judgements, history } = row(2);
    // A fixture with a margin as large as the wall leaves nothing.
    const fixture = { kind: 'screen', surface: 'dye:head', xMm: 3000, yMm: 1800, widthMm: 6000, heightMm: 3600 };
    history.perform(commands.addFixture({ ...fixture, clearMm: 0 }));
    expect(roomMakerOn(judgements, 'dye:head', 'blocks#1', 60)?.(['dye:head', 760, 1500, 0, 0])).toBeNull();
    expect(roomMakerOn(judgements, 'dye:floor', 'blocks#1', 60)).toBeNull();
  });
});
