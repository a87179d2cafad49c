import { mirrored } from '@enfilade/arrangement/boxes';
import type { HangTask } from '@enfilade/arrangement/hang-task';
import { type HangKind, hang, hangs, waysOf } from '@enfilade/arrangement/hangs';
import { describe, expect, test } from 'vitest';
import { brokenHang, hangWallOf, salonOf } from './hang-walls.ts';

const KINDS: readonly HangKind[] = ['salon', 'line', 'double', 'pendants'];
const CENTRE = 1500;
const INCH = 25.4;
const wall = (widthsMm: readonly number[], over: Partial<HangTask> = {}): HangTask => ({
  surface: { leftMm: 0, rightMm: 6096, bottomMm: 600, topMm: 3500 },
  pieces: widthsMm.map((widthMm, i) => ({ widthMm, heightMm: 400 + 30 * (i % 3) })),
  keepClear: [],
  gapMm: 60,
  centreLineMm: CENTRE,
  seed: 1,
  ...over,
});

describe('hangs', () => {
  test('law: on 20 random walls no way of any kind breaks a rule (1,000 in the bench)', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const task = hangWallOf(seed);
      for (const kind of KINDS)
        for (const candidate of hangs(kind, task))
          expect(brokenHang(task, candidate), `${candidate.name} on wall ${seed}`).toEqual([]);
    }
  });

  test('law: the checker itself sees each kind of breach', () => {
    const task = {
      ...salonOf(1),
      pieces: salonOf(1).pieces.map((piece, i) => (i === 5 ? { ...piece, weightKg: 20 } : piece)),
    };
    const places = [...hang('massed salon', task).places];
    const moved = (i: number, xMm: number, yMm: number, of = task) =>
      brokenHang(of, { places: places.map((at, k) => (k === i ? { xMm, yMm } : at)), unplaced: [] }).join();
    expect(moved(0, 700, 1050)).toContain('near clear 0');
    expect(moved(0, 0, 3000)).toContain('leaves the surface');
    expect(moved(0, places[1]!.xMm, places[1]!.yMm)).toContain('1 comes too near 0');
    expect(moved(5, 3000, 3000)).toContain('heavy');
    expect(moved(0, 10.5, 3000)).toContain('whole mm');
    const pinned = {
      ...task,
      pieces: task.pieces.map((p, i) => (i === 0 ? { ...p, pinnedAt: { xMm: 1, yMm: 1 } } : p)),
    };
    expect(moved(0, 2, 1, pinned)).toContain('pinned');
  });

  test('law: the ways of a kind differ visibly, in place and in what is measured', () => {
    for (const seed of [1, 2, 3, 4]) {
      const three = hangs('salon', salonOf(seed));
      expect(three.map(({ name }) => name)).toEqual(waysOf('salon'));
      expect(three.flatMap(({ unplaced }) => unplaced)).toEqual([]);
      const [massed, axis, columns] = three.map(({ measures }) => measures);
      expect(columns!.alignment).toBeGreaterThan(massed!.alignment);
      expect(columns!.outline.fill).toBeGreaterThan(Math.max(massed!.outline.fill, axis!.outline.fill));
      for (const [a, b] of [
        [0, 1],
        [0, 2],
        [1, 2],
      ] as const) {
        const far = three[a]!.places.map((at, i) =>
          Math.hypot(at!.xMm - three[b]!.places[i]!.xMm, at!.yMm - three[b]!.places[i]!.yMm),
        );
        expect(far.reduce((sum, mm) => sum + mm, 0) / far.length).toBeGreaterThan(200);
      }
    }
  });

  test('law: a salon on an axis: no frame crosses it, a quarter or more stand half a gap from it, one gap apart, in two rows about as long', () => {
    for (const seed of [1, 2, 3, 4]) {
      const task = salonOf(seed);
      const { places } = hang('salon on an axis', task);
      const off = places.map((at, i) => Math.abs(at!.yMm - CENTRE) - task.pieces[i]!.heightMm / 2);
      expect(Math.min(...off)).toBeGreaterThanOrEqual(task.gapMm / 2 - 1);
      const atAxis = off.flatMap((mm, i) => (mm <= task.gapMm / 2 + 1 ? [i] : []));
      expect(atAxis.length).toBeGreaterThanOrEqual(40 / 4);
      const lengths = [1, -1].map((side) => {
        const row = atAxis.filter((i) => side * (places[i]!.yMm - CENTRE) > 0);
        const ends = row.map((i) => [places[i]!.xMm, task.pieces[i]!.widthMm / 2] as const).sort((a, b) => a[0] - b[0]);
        for (const [k, [x, half]] of ends.slice(1).entries())
          expect(Math.abs(x - half - ends[k]![0] - ends[k]![1] - task.gapMm)).toBeLessThanOrEqual(2);
        return ends.at(-1)![0] + ends.at(-1)![1] - ends[0]![0] + ends[0]![1];
      });
      expect(Math.max(...lengths) / Math.min(...lengths)).toBeLessThan(1.4);
    }
  });

  test('story: two pendants have two ways, for one pair stacked would look like one pair close', () => {
    expect(hangs('pendants', wall([500, 480])).map(({ name }) => name)).toEqual(['pendants close', 'pendants wide']);
    expect(hangs('pendants', wall([500, 480, 400, 390]))).toHaveLength(3);
  });

  test('law: the same task has the same answer', () => {
    for (const kind of KINDS) expect(hangs(kind, hangWallOf(7))).toEqual(hangs(kind, hangWallOf(7)));
  });

  test('law: a mirrored wall has the mirrored answer, but a line keeps the order it was given', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const task = hangWallOf(seed);
      const twin: HangTask = {
        ...task,
        surface: { ...task.surface, leftMm: -task.surface.rightMm, rightMm: -task.surface.leftMm },
        keepClear: task.keepClear.map(mirrored),
        pieces: task.pieces.map((piece) =>
          piece.pinnedAt ? { ...piece, pinnedAt: { ...piece.pinnedAt, xMm: -piece.pinnedAt.xMm } } : piece,
        ),
      };
      if (task.keepClear.length === 0 && task.pieces.every(({ pinnedAt }) => !pinnedAt)) continue;
      for (const way of KINDS.flatMap(waysOf).filter((name) => name !== 'line with one gap'))
        expect(hang(way, twin).places.map((at) => at && { xMm: 0 - at.xMm, yMm: at.yMm })).toEqual(
          hang(way, task).places,
        );
    }
    const order = (of: HangTask) => hang('line with one gap', of).places.map((at) => at!.xMm);
    const row = wall([300, 500, 400]);
    expect(order(row)).toEqual([...order(row)].sort((a, b) => a - b));
  });

  test('law: the order the pieces are given in changes nothing but the line that keeps it', () => {
    for (let seed = 1; seed <= 4; seed++) {
      const task = salonOf(seed);
      // No two of one area or one width, so that every size knows its place.
      const pieces = task.pieces.map((piece, i) => ({
        ...piece,
        widthMm: piece.widthMm + i / 97,
        heightMm: piece.heightMm + i / 89,
      }));
      const back = [...pieces].reverse();
      for (const way of [...waysOf('salon'), ...waysOf('double'), ...waysOf('pendants'), 'line in pairs' as const])
        expect([...hang(way, { ...task, pieces: back }).places].reverse(), way).toEqual(
          hang(way, { ...task, pieces }).places,
        );
    }
  });

  test('story: heavy works hang below reach, unless a person says otherwise', () => {
    const heavy = salonOf(2).pieces.map((piece, i) => ({ ...piece, weightKg: i < 12 ? 18 : 3 }));
    const task = { ...salonOf(2), pieces: heavy, reachMm: 2000 };
    for (const { places } of hangs('salon', task))
      for (const [i, at] of places.slice(0, 12).entries())
        if (at) expect(at.yMm + heavy[i]!.heightMm / 2).toBeLessThanOrEqual(2000);
    const waived = hang('salon in columns', { ...task, heavyMayHangHigh: true });
    expect(Math.max(...waived.places.slice(0, 12).map((at, i) => at!.yMm + heavy[i]!.heightMm / 2))).toBeGreaterThan(
      2000,
    );
  });

  test('reference: ADA 307.2: more than 4 in deep between 27 and 80 in is told; with its foot at 27 in it is not', () => {
    const at = (footInches: number, depthMm: number) => {
      const pinnedAt = { xMm: 3000, yMm: Math.round(footInches * INCH + 200) };
      return hang('line with one gap', wall([], { pieces: [{ widthMm: 300, heightMm: 400, depthMm, pinnedAt }] }))
        .reasons;
    };
    const told = { kind: 'stands out', pieces: [0], mostMm: 4 * INCH };
    expect(at(34, 140)).toContainEqual(told);
    expect(at(26, 140)).not.toContainEqual(told);
    expect(at(82, 140)).not.toContainEqual(told);
    expect(at(34, 101)).not.toContainEqual(told);
  });

  test('story: colours are heard of where they are known, and only there', () => {
    expect(hang('line with one gap', wall([500, 500])).measures.colourRhythm).toBeNull();
    const known = wall([500, 500, 500], { difference: (a, b) => (a + b === 1 ? 10 : 30) });
    expect(hang('line with one gap', known).measures.colourRhythm).toEqual({ mean: 20, cv: 0.5 });
  });

  test('story: stopped, it keeps what was done and gives no half-made way', () => {
    let told = 0;
    expect(hangs('salon', { ...salonOf(1), progress: () => ++told < 3 })).toEqual([]);
    expect(hangs('salon', { ...salonOf(1), progress: (done, of) => done / of < 0.5 })).toHaveLength(2);
  });

  test('law: a bad task is the programmer’s error and named; no pieces are no trouble', () => {
    expect(() => hangs('line', wall([0]))).toThrow(/pieces\[0\].widthMm is 0/);
    expect(() => hangs('line', wall([100], { gapMm: -1 }))).toThrow(/gapMm is -1/);
    expect(() => hangs('line', wall([100], { focal: 3 }))).toThrow(/focal is 3/);
    for (const kind of KINDS) for (const { places } of hangs(kind, wall([]))) expect(places).toEqual([]);
  });
});

describe('a line', () => {
  test('reference: practice section 3 (common practice): wall 240 in, widths 30, 24, 48, 24, 30 filled → gap 14.0 in', () => {
    const task = wall([30, 24, 48, 24, 30].map((inches) => inches * INCH));
    const { measures, places } = hang('line that fills the wall', task);
    expect(measures.meanGapMm / INCH).toBeCloseTo(14, 1);
    expect(places[2]!.xMm).toBe(3048);
  });

  test('reference: practice section 3 (common practice): one gap of 12 to 24 in, the group centred, wider ends, centres on the line', () => {
    const { measures, places } = hang('line with one gap', wall([600, 700, 500, 600]));
    expect(measures.meanGapMm).toBeGreaterThanOrEqual(12 * INCH);
    expect(measures.meanGapMm).toBeLessThanOrEqual(24 * INCH);
    expect(places.map((at) => at!.yMm)).toEqual([CENTRE, CENTRE, CENTRE, CENTRE]);
    const ends = [places[0]!.xMm - 300, 6096 - places[3]!.xMm - 300];
    expect(Math.abs(ends[0]! - ends[1]!)).toBeLessThanOrEqual(2);
    expect(ends[0]).toBeGreaterThan(measures.meanGapMm);
  });

  test('reference: practice section 3 (common practice): pairs 4 to 8 in apart', () => {
    const { places } = hang('line in pairs', wall([600, 590, 300, 310]));
    const inside = Math.abs(places[0]!.xMm - places[1]!.xMm) - 595;
    expect(inside).toBeGreaterThanOrEqual(4 * INCH);
    expect(inside).toBeLessThanOrEqual(8 * INCH);
  });

  test('story: a door in the middle parts the line in two', () => {
    const door = { xMm: 3000, yMm: 1050, widthMm: 900, heightMm: 2100 };
    const { places, unplaced } = hang('line with one gap', wall([600, 600, 600, 600], { keepClear: [door] }));
    expect(unplaced).toEqual([]);
    expect(places.map((at) => Math.sign(at!.xMm - 3000))).toEqual([-1, -1, 1, 1]);
  });
});

describe('two rows and pendants', () => {
  const sizes = [620, 600, 480, 500, 380, 400];

  test('law: on an axis, every upper foot and every lower top lies half a gap from one height', () => {
    const task = wall(sizes);
    const { places } = hang('double hang on an axis', task);
    const lines = places.map((at, i) => {
      const half = task.pieces[i]!.heightMm / 2;
      return Math.min(...[at!.yMm - half - 30, at!.yMm + half + 30].map((edge) => Math.abs(edge - CENTRE)));
    });
    expect(Math.max(...lines)).toBeLessThanOrEqual(31);
    expect(new Set(places.map((at) => at!.xMm)).size).toBe(3);
  });

  test('law: in a rectangle, upper tops are one line and lower feet another', () => {
    const task = wall(sizes);
    const { places } = hang('double hang in a rectangle', task);
    const upper = places.flatMap((at, i) => (at!.yMm > CENTRE ? [at!.yMm + task.pieces[i]!.heightMm / 2] : []));
    const lower = places.flatMap((at, i) => (at!.yMm < CENTRE ? [at!.yMm - task.pieces[i]!.heightMm / 2] : []));
    expect(upper).toHaveLength(3);
    for (const edges of [upper, lower]) expect(Math.max(...edges) - Math.min(...edges)).toBeLessThanOrEqual(1);
  });

  test('law: pendants stand as far to the left of the middle as to the right, the work between them in it', () => {
    const { places } = hang('pendants close', wall([900, 500, 500, 400, 400], { focal: 0 }));
    expect(places[0]).toEqual({ xMm: 3048, yMm: CENTRE });
    for (const [a, b] of [
      [1, 2],
      [3, 4],
    ] as const)
      expect(places[a]!.xMm + places[b]!.xMm).toBe(2 * 3048);
  });

  test('story: two pendants flank a door where the wall has one in its middle', () => {
    const door = { xMm: 2900, yMm: 1050, widthMm: 900, heightMm: 2100 };
    const { places } = hang('pendants close', wall([500, 500], { keepClear: [door] }));
    expect(places[0]!.xMm + places[1]!.xMm).toBe(2 * 2900);
    expect(Math.abs(places[0]!.xMm - places[1]!.xMm)).toBeGreaterThan(900 + 500);
  });
});
