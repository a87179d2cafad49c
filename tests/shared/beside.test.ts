import { overlaps } from '@enfilade/arrangement/boxes';
import { placeBeside } from '@enfilade/shared/beside';
import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { seeded } from './replicas.ts';
import { sampleShow } from './sample-show.ts';

function hung(places: Readonly<Record<PieceId, Place>>) {
  const { documents, history } = sampleShow();
  const judgements = new Judgements(documents, { get: () => undefined });
  history.perform(commands.place(documents, new Map(Object.entries(places))));
  return { documents, history, judgements };
}

describe('brought beside what it goes with', () => {
  test('reference: at the wall’s usual gap on one centre line, towards the middle, else on its foot or the other side (by hand)', () => {
    // 960 wide and 760 high as framed; a block is 200 square. The show's gap is 450.
    const { judgements, history, documents } = hung({ 'oil#1': ['dye:head', 1500, 1600, 0, 0] });
    expect(placeBeside(judgements, 'oil#1', 'blocks#1', null)).toEqual({
      place: ['dye:head', 1500 + 480 + 450 + 100, 1600, 0, 0],
      side: 'right',
      gapMm: 450,
    });
    // A doorway to the right up to 2.1 m and nothing above it: to the left there is room.
    const doorway = { kind: 'doorway', name: 'door', widthMm: 1200, heightMm: 2100, sillMm: 0 } as const;
    history.perform(commands.addOpening({ ...doorway, sides: [{ surface: 'dye:head', xMm: 2600 }] }, 'door'));
    expect(placeBeside(judgements, 'oil#1', 'blocks#1', null)).toMatchObject({
      place: ['dye:head', 1500 - 480 - 450 - 100, 1600, 0, 0],
      side: 'left',
    });
    // The left is taken on the centre line, not at its foot: 1,600 − 380 + 100.
    history.perform(commands.place(documents, new Map([['blocks#2', ['dye:head', 470, 2050, 0, 0] as Place]])));
    expect(placeBeside(judgements, 'oil#1', 'blocks#1', null)).toMatchObject({
      place: ['dye:head', 470, 1320, 0, 0],
      side: 'left',
      gapMm: 450,
    });
  });

  test('story: on a closely hung wall the gap is that of its things; where there is no room it says so and how far it is', () => {
    const row = Object.fromEntries(
      Array.from({ length: 5 }, (_, n) => [`blocks#${n + 1}`, ['dye:head', 2000 + 260 * n, 1500, 0, 0] as Place]),
    );
    const { judgements } = hung(row);
    expect(placeBeside(judgements, 'blocks#5', 'blocks#9', null)).toMatchObject({
      place: ['dye:head', 3300, 1500, 0, 0],
      gapMm: 60,
    });
    const near = placeBeside(judgements, 'blocks#3', 'blocks#9', null);
    expect(near).toMatchObject({ side: null, gapMm: 60 });
    // Straight above or below: the nearest that is free.
    expect(near).toMatchObject({ place: ['dye:head', 2520, 1500 - 260, 0, 0] });
  });

  test('story: what stands comes beside what hangs onto the floor, beside what stands with its back in line, on its level, or not', () => {
    const { judgements, history, documents } = hung({
      'oil#1': ['dye:head', 1500, 1600, 0, 0],
      'bench#1': ['dye:floor', 5800, 3000, 0, 9000],
      'blocks#1': ['carrier:bench#1/0', 300, 200, 0, 0],
    });
    // Back to the head wall of a room 6 m deep: 340 deep.
    expect(placeBeside(judgements, 'oil#1', 'trap#1', null)).toMatchObject({
      place: ['dye:floor', 1500 + 480 + 450 + 170, 6000 - 170, 0, 0],
      side: 'right',
    });
    // The bench's back is to the right wall; along it 700 + 120 + 170, its back as near to the wall.
    const beside = placeBeside(judgements, 'bench#1', 'trap#1', null);
    expect(beside).toMatchObject({ place: ['dye:floor', 5830, expect.any(Number), 0, 9000], gapMm: 120 });
    history.perform(commands.place(documents, new Map([['trap#1', (beside as { place: Place }).place]])));
    const plan = judgements.where.planOf('dye:floor').filter(({ direct }) => direct);
    expect(plan).toHaveLength(2);
    // Both are seen before the right wall, one beside the other.
    const [a, b] = judgements
      .elevationOf('dye:right')
      .filter(({ direct, pieceId }) => !direct && pieceId !== 'blocks#1');
    expect(Math.abs((a?.xMm ?? 0) - (b?.xMm ?? 0))).toBe(990);
    // A flat thing is hung on the wall behind it, the show's centre line its own.
    expect(placeBeside(judgements, 'bench#1', 'oil#1', 'dye:right')).toMatchObject({
      place: ['dye:right', expect.any(Number), 1500, 0, 0],
    });
    expect(placeBeside(judgements, 'blocks#9', 'oil#1', null)).toBeNull();
  });

  test('law: wherever there is anything, it is over nothing and inside the wall', () => {
    const random = seeded(20261129);
    const spot = (): Place => ['dye:head', 150 + random() * 5700, 200 + random() * 3200, 0, 0];
    let beside = 0;
    for (let wall = 0; wall < 60; wall++) {
      const pieces = Array.from({ length: 30 }, (_, n) => `blocks#${n + 1}`);
      const { judgements, history } = hung(Object.fromEntries(pieces.map((id) => [id, spot()])));
      const screen = { kind: 'screen', surface: 'dye:head', xMm: 1000 + random() * 4000, yMm: 1500 };
      history.perform(commands.addFixture({ ...screen, widthMm: 900, heightMm: 900, clearMm: 100 }));
      const found = placeBeside(judgements, 'blocks#1', wall % 2 === 0 ? 'oil#1' : 'blocks#40', null);
      if (found === null || 'why' in found) throw new Error('a wall so bare has room');
      const size = judgements.sizeOf(wall % 2 === 0 ? 'oil#1' : 'blocks#40')!;
      const own = { xMm: found.place[1], yMm: found.place[2], widthMm: size.widthMm, heightMm: size.heightMm };
      for (const other of [...judgements.elevationOf('dye:head'), ...judgements.keepClearOn('dye:head')])
        expect(overlaps(own, other)).toBe(false);
      expect(own.xMm - own.widthMm / 2).toBeGreaterThanOrEqual(0);
      expect(own.yMm + own.heightMm / 2).toBeLessThanOrEqual(3600);
      if (found.side !== null) beside += 1;
    }
    expect(beside).toBeGreaterThan(0);
  });
});
