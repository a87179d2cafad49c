import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { roomMakerOn } from '@enfilade/shared/making-room';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';
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

/** One piece wanted at a place, its neighbours at 60 mm. */
function moving(judgements: Judgements, surface: SurfaceId, pieceId: PieceId, to: Place) {
  return roomMakerOn(judgements, surface, [pieceId], 60)?.(new Map([[pieceId, to]]));
}

describe('neighbours make room', () => {
  test('story: let down on its neighbour, it has its place, the neighbour gives way by the gap, others stay', () => {
    const { judgements } = row(6);
    const made = moving(judgements, 'dye:head', 'blocks#6', ['dye:head', 900, 1500, 0, 0]);
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
    const made = moving(judgements, 'dye:head', 'blocks#3', ['dye:head', 770, 1500, 0, 0]);
    expect(made?.has('blocks#2')).toBe(false);
    const [, x, y] = made!.get('blocks#3')!;
    expect(Math.max(Math.abs(x - 760) - 200, Math.abs(y - 1500) - 200)).toBeGreaterThanOrEqual(60);
    history.undo();
    expect(moving(judgements, 'dye:head', 'blocks#3', ['dye:head', 770, 1500, 0, 0])?.has('blocks#2')).toBe(true);
  });

  test('story: a large hanging gives no way to a block: the block goes beside it', () => {
    const { judgements, history, documents } = row(1);
    history.perform(commands.place(documents, new Map([['hanging#1', ['dye:head', 3500, 1500, 0, 0]]])));
    const made = moving(judgements, 'dye:head', 'blocks#1', ['dye:head', 2000, 1500, 0, 0]);
    expect([...(made?.keys() ?? [])]).toEqual(['blocks#1']);
    // The hanging is 3,100 wide: its left edge is at 1,950.
    expect(made!.get('blocks#1')![1] + 100).toBeLessThanOrEqual(1950 - 60);
  });

  test('story: where there is no room nobody gives way', () => {
    const { judgements, history } = row(2);
    // A fixture with a margin as large as the wall leaves nothing.
    const fixture = { kind: 'screen', surface: 'dye:head', xMm: 3000, yMm: 1800, widthMm: 6000, heightMm: 3600 };
    history.perform(commands.addFixture({ ...fixture, clearMm: 0 }));
    expect(moving(judgements, 'dye:head', 'blocks#1', ['dye:head', 760, 1500, 0, 0])).toBeNull();
    expect(roomMakerOn(judgements, 'dye:floor', ['blocks#1'], 60)).toBeNull();
  });

  test('story: several that are moved push as one, each as far from the other as before; a pinned one holds them all off', () => {
    const { judgements, history } = row(8);
    const two = new Map<PieceId, Place>([
      ['blocks#1', ['dye:head', 1380, 1500, 0, 0]],
      ['blocks#2', ['dye:head', 1640, 1500, 0, 0]],
    ]);
    const push = () => roomMakerOn(judgements, 'dye:head', ['blocks#1', 'blocks#2'], 60)?.(two) ?? new Map();
    const made = push();
    expect([made.get('blocks#1'), made.get('blocks#2')]).toEqual([...two.values()]);
    expect(made.size).toBeGreaterThan(2);
    const stand = (places: ReadonlyMap<PieceId, Place>) =>
      Array.from(
        { length: 8 },
        (_, n) => places.get(`blocks#${n + 1}`) ?? judgements.where.placeOf(`blocks#${n + 1}`)!,
      );
    const clear = (places: readonly Place[]) =>
      places.every((a, i) =>
        places.slice(i + 1).every((b) => Math.max(Math.abs(a[1] - b[1]), Math.abs(a[2] - b[2])) >= 260),
      );
    expect(clear(stand(made))).toBe(true);
    history.perform(commands.pin(['blocks#4', 'blocks#5'], true));
    const held = push();
    expect(held.has('blocks#4')).toBe(false);
    expect(held.get('blocks#2')![1] - held.get('blocks#1')![1]).toBe(260);
    expect(held.get('blocks#2')![2]).toBe(held.get('blocks#1')![2]);
    expect(clear(stand(held))).toBe(true);
  });
});
