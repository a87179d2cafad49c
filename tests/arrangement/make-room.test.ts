import type { Box } from '@enfilade/arrangement/boxes';
import { hang } from '@enfilade/arrangement/hangs';
import { makeRoom, type RoomTask } from '@enfilade/arrangement/make-room';
import { nearestFree } from '@enfilade/arrangement/nearest-free';
import { seeded } from '@enfilade/arrangement/seeded';
import { describe, expect, test } from 'vitest';
import { brokenHang, hangWallOf } from './hang-walls.ts';

const box = (xMm: number, yMm = 1500, widthMm = 400, heightMm = 400) => ({ xMm, yMm, widthMm, heightMm });
const wall = { leftMm: 0, rightMm: 6000, bottomMm: 300, topMm: 3300 };
const row = (over: Partial<RoomTask> = {}): RoomTask => ({
  surface: wall,
  boxes: [box(1000), box(1500), box(2000), box(4000)],
  moved: 0,
  to: { xMm: 1250, yMm: 1500 },
  pinned: [],
  keepClear: [],
  gapMm: 60,
  ...over,
});

/** A salon that hangs, one piece of it taken somewhere else, some others pinned. */
function movedWall(seed: number) {
  const task = hangWallOf(seed);
  const { places } = hang('massed salon', task);
  const hung = task.pieces.flatMap((piece, i) => {
    const at = places[i];
    return at && !piece.pinnedAt ? [{ ...at, widthMm: piece.widthMm, heightMm: piece.heightMm }] : [];
  });
  const random = seeded(seed + 99);
  const { surface, gapMm } = task;
  const standing = task.pieces.flatMap((p) => (p.pinnedAt ? [{ ...p, ...p.pinnedAt }] : []));
  const keepClear: Box[] = [...task.keepClear, ...standing];
  const room: RoomTask = {
    surface,
    boxes: hung,
    moved: Math.floor(random() * hung.length),
    to: { xMm: Math.round(surface.rightMm * random()), yMm: Math.round(1000 + 1200 * random()) },
    pinned: hung.flatMap((_, i) => (random() < 0.15 ? [i] : [])),
    keepClear,
    gapMm,
  };
  return room;
}

describe('neighbours make room', () => {
  test('law: on 100 random walls no rule is broken, the pinned stay, and who gives way was in the way', () => {
    let gave = 0;
    for (let seed = 1; seed <= 100; seed++) {
      const room = movedWall(seed);
      if (room.boxes.length === 0) continue;
      const { places, gaveWay, refused } = makeRoom(room);
      const stands = {
        ...hangWallOf(seed),
        keepClear: room.keepClear,
        pieces: room.boxes.map(({ widthMm, heightMm }) => ({ widthMm, heightMm })),
      };
      expect(brokenHang(stands, { places, unplaced: [] }), `wall ${seed}`).toEqual([]);
      const still = room.boxes.flatMap((_, i) => (i === room.moved || gaveWay.includes(i) ? [] : [i]));
      for (const i of [...still, ...room.pinned.filter((k) => k !== room.moved)])
        expect(places[i]).toEqual({ xMm: room.boxes[i]!.xMm, yMm: room.boxes[i]!.yMm });
      if (refused) expect(gaveWay).toEqual([]);
      gave += gaveWay.length;
    }
    expect(gave).toBeGreaterThan(100);
  });

  test('story: put between two, it sends each its own way, and what stands apart stays', () => {
    const { places, gaveWay } = makeRoom(row({ moved: 3, to: { xMm: 1730, yMm: 1500 } }));
    expect(places[3]).toEqual({ xMm: 1730, yMm: 1500 });
    expect(gaveWay).toEqual([1, 2, 0]);
    expect(places[1]!.xMm).toBe(1270);
    expect(places[2]!.xMm).toBe(2190);
    expect(places[0]!.xMm).toBe(810);
  });

  test('story: a pinned neighbour stays, so the one moved stops beside it', () => {
    const { places, gaveWay } = makeRoom(row({ pinned: [1], to: { xMm: 1300, yMm: 1500 } }));
    expect(places[0]).toEqual({ xMm: 1040, yMm: 1500 });
    expect(gaveWay).toEqual([]);
  });

  test('story: moved where nothing stands, it troubles nobody', () => {
    const { places, gaveWay } = makeRoom(row({ to: { xMm: 3000, yMm: 2500 } }));
    expect(places[0]).toEqual({ xMm: 3000, yMm: 2500 });
    expect(gaveWay).toEqual([]);
  });

  test('story: a wall with no room refuses, and nothing has moved', () => {
    const surface = { leftMm: 0, rightMm: 900, bottomMm: 1300, topMm: 1700 };
    const task = row({ surface, boxes: [box(200), box(700)], to: { xMm: 450, yMm: 1500 } });
    expect(makeRoom(task)).toEqual({
      places: task.boxes.map(({ xMm, yMm }) => ({ xMm, yMm })),
      gaveWay: [],
      refused: true,
    });
    expect(() => makeRoom(row({ moved: 9 }))).toThrow(/moved is 9/);
    expect(() => makeRoom(row({ gapMm: -1 }))).toThrow(/gapMm is -1/);
  });
});

describe('the nearest free place', () => {
  test('law: brute force over every millimetre finds none nearer', () => {
    const surface = { leftMm: 0, rightMm: 60, bottomMm: 0, topMm: 50 };
    for (let seed = 1; seed <= 60; seed++) {
      const random = seeded(seed);
      const size = () => 2 * Math.round(2 + 5 * random());
      const at = () => ({ xMm: Math.round(60 * random()), yMm: Math.round(50 * random()) });
      const obstacles = Array.from({ length: 9 }, () => {
        return { ...at(), widthMm: size(), heightMm: size(), gapMm: Math.round(2 * random()) };
      });
      const wanted = { ...at(), widthMm: size(), heightMm: size() };
      const start = {
        xMm: Math.min(60 - wanted.widthMm / 2, Math.max(wanted.widthMm / 2, wanted.xMm)),
        yMm: Math.min(50 - wanted.heightMm / 2, Math.max(wanted.heightMm / 2, wanted.yMm)),
      };
      let least = Infinity;
      for (let x = wanted.widthMm / 2; x <= 60 - wanted.widthMm / 2; x++)
        for (let y = wanted.heightMm / 2; y <= 50 - wanted.heightMm / 2; y++) {
          const clear = obstacles.every(
            (o) =>
              Math.abs(x - o.xMm) >= (wanted.widthMm + o.widthMm) / 2 + o.gapMm ||
              Math.abs(y - o.yMm) >= (wanted.heightMm + o.heightMm) / 2 + o.gapMm,
          );
          if (clear) least = Math.min(least, Math.hypot(x - start.xMm, y - start.yMm));
        }
      const found = nearestFree(wanted, obstacles, surface);
      if (least === Infinity) expect(found).toBeUndefined();
      else expect(Math.hypot(found!.xMm - start.xMm, found!.yMm - start.yMm)).toBeCloseTo(least, 9);
    }
  });
});
