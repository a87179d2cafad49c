import { mirrored } from '@enfilade/arrangement/boxes';
import { halo } from '@enfilade/arrangement/halo';
import { displacementMm, haloCandidates } from '@enfilade/arrangement/halo-candidates';
import type { HaloTask } from '@enfilade/arrangement/halo-task';
import { describe, expect, test } from 'vitest';
import { brokenRules, fortyOf, wallOf } from './walls.ts';

const seeds = Array.from({ length: 40 }, (_, i) => i + 1);

function medianOf(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1]!;
}

describe('halo', () => {
  test('law: on 40 random walls (1,000 in the bench) no rule is ever broken, and most find room for all', () => {
    let whole = 0;
    for (const seed of seeds) {
      const task = wallOf(seed);
      const candidate = halo(task);
      expect(brokenRules(task, candidate), `wall ${seed}`).toEqual([]);
      if (candidate.unplaced.length === 0) whole++;
    }
    expect(whole).toBeGreaterThan(26);
  });

  test('law: the checker itself sees each kind of breach', () => {
    const task = fortyOf(1);
    const places = [...halo(task).places];
    const with0 = (xMm: number, yMm: number) =>
      brokenRules(task, { places: [{ xMm, yMm }, ...places.slice(1)], unplaced: [] }).join();
    expect(with0(2700, 1520)).toContain('near focal');
    expect(with0(5250, 1050)).toContain('near clear 0');
    expect(with0(0, 3000)).toContain('leaves the surface');
    expect(with0(places[1]!.xMm, places[1]!.yMm)).toContain('near 0');
    expect(with0(places[0]!.xMm + 0.5, places[0]!.yMm)).toContain('whole mm');
  });

  test('law: a mirrored wall has the mirrored answer', () => {
    for (const seed of seeds.slice(0, 15)) {
      const { leanDegrees: _, ...task } = wallOf(seed);
      const twin: HaloTask = {
        ...task,
        surface: { ...task.surface, leftMm: -task.surface.rightMm, rightMm: -task.surface.leftMm },
        focal: mirrored(task.focal),
        keepClear: task.keepClear.map(mirrored),
      };
      const [one, other] = [halo(task), halo(twin)];
      expect(other.unplaced).toEqual(one.unplaced);
      expect(other.places.map((place) => place && { xMm: 0 - place.xMm, yMm: place.yMm })).toEqual(one.places);
    }
  });

  test('law: the same seed has the same answer, another seed another', () => {
    for (const seed of [1, 2, 3]) {
      const task = fortyOf(seed, 0.5);
      expect(halo(task)).toEqual(halo(task));
      expect(displacementMm(halo(task), halo({ ...task, seed: seed + 100 }))).toBeGreaterThan(50);
    }
  });

  test('law: where there is room to spare, a wall twice the size takes twice the sizes', () => {
    const doubled = <B extends { widthMm: number; heightMm: number }>(box: B): B =>
      Object.fromEntries(Object.entries(box).map(([key, value]) => [key, 2 * (value as number)])) as unknown as B;
    for (const seed of seeds.slice(0, 6)) {
      const task = fortyOf(seed);
      const { leftMm, rightMm, bottomMm, topMm } = task.surface;
      const twice: HaloTask = {
        ...task,
        surface: { leftMm: 2 * leftMm, rightMm: 2 * rightMm, bottomMm: 2 * bottomMm, topMm: 2 * topMm },
        focal: doubled(task.focal),
        keepClear: task.keepClear.map(doubled),
        pieces: task.pieces.map(doubled),
        gapMm: 2 * task.gapMm,
      };
      const placesDoubled = halo(task).places.map((place) => place && { xMm: 2 * place.xMm, yMm: 2 * place.yMm });
      expect(brokenRules(twice, { places: placesDoubled, unplaced: [] })).toEqual([]);
      expect(halo(twice).unplaced).toEqual([]);
    }
  });

  test('law: a wall too small leaves pieces unplaced and says how many, and overlaps none', () => {
    for (const seed of seeds.slice(0, 4)) {
      const task = { ...fortyOf(seed), surface: { leftMm: 2200, rightMm: 3300, bottomMm: 900, topMm: 2300 } };
      const candidate = halo(task);
      expect(candidate.unplaced.length).toBeGreaterThan(0);
      expect(candidate.unplaced.length).toBeLessThan(40);
      expect(candidate.reasons).toContainEqual({ kind: 'no room', count: candidate.unplaced.length });
      expect(brokenRules(task, candidate)).toEqual([]);
    }
  });

  test('law: forty even pieces keep a facing-gap spread of .30 or less, without a hole wider than the focal work', () => {
    const candidates = seeds.slice(0, 20).map((seed) => halo(fortyOf(seed)));
    expect(medianOf(candidates.map(({ measures }) => measures.facingGapCv))).toBeLessThanOrEqual(0.3);
    expect(Math.max(...candidates.map(({ measures }) => measures.largestVoidMm))).toBeLessThan(760);
    expect(candidates.flatMap(({ unplaced }) => unplaced)).toEqual([]);
  });

  test('law: a loose halo has looser gaps than an even one of the same pieces', () => {
    const cv = (looseness: number) =>
      medianOf(seeds.slice(0, 20).map((seed) => halo(fortyOf(seed, looseness)).measures.facingGapCv));
    expect(cv(1)).toBeGreaterThan(cv(0));
  });

  test('law: no piece strays: 120 stay together on a wall with room for many more', () => {
    for (const seed of seeds.slice(0, 4)) {
      const task = fortyOf(seed);
      const pieces = [...task.pieces, ...fortyOf(seed + 1).pieces, ...fortyOf(seed + 2).pieces];
      const { measures } = halo({ ...task, pieces });
      expect(measures.outline.widthMm).toBeLessThan(3500);
    }
  });

  test('law: tops stay within reach where they can', () => {
    for (const seed of seeds.slice(0, 5)) {
      const { measures } = halo({ ...fortyOf(seed), reachMm: 2320 });
      expect(measures.highestTopMm).toBeLessThanOrEqual(2320);
    }
  });

  test('story: round a focal work that itself ends out of reach, pieces go above it all the same, and it is said', () => {
    const high = { ...fortyOf(1), reachMm: 2000 };
    const candidate = halo(high);
    expect(candidate.measures.highestTopMm).toBeGreaterThan(2030);
    expect(candidate.reasons).toContainEqual(expect.objectContaining({ kind: 'above reach', reachMm: 2000 }));
  });

  test('story: a person stops it, and nothing is placed', () => {
    const seen: number[] = [];
    const candidate = halo({ ...fortyOf(1), progress: (done) => seen.push(done) < 5 });
    expect(seen.length).toBe(5);
    expect(candidate.places.every((place) => place === null)).toBe(true);
    expect(candidate.reasons).toContainEqual({ kind: 'stopped' });
  });

  test('law: a bad task is the programmer’s error and named', () => {
    expect(() => halo({ ...fortyOf(1), gapMm: -1 })).toThrow(/gapMm is -1/);
    expect(() => halo({ ...fortyOf(1), pieces: [{ widthMm: 0, heightMm: 1 }] })).toThrow(/pieces\[0\].widthMm is 0/);
    expect(halo({ ...fortyOf(1), pieces: [] }).places).toEqual([]);
  });
});

/** What a person sees as a column: three or more standing straight over each other with an ordinary gap between. */
function columnsOf(task: HaloTask, places: readonly ({ xMm: number; yMm: number } | null)[]): number {
  const at = places.flatMap((place, i) => (place ? [{ ...place, ...task.pieces[i]! }] : []));
  const below = (a: (typeof at)[number], axis: 'xMm' | 'yMm') => {
    const [along, size] = axis === 'xMm' ? (['yMm', 'heightMm'] as const) : (['xMm', 'widthMm'] as const);
    return at.find((b) => {
      const gap = a[along] - b[along] - (a[size] + b[size]) / 2;
      return b !== a && Math.abs(a[axis] - b[axis]) < 8 && gap > 0 && gap < 4 * task.gapMm;
    });
  };
  let columns = 0;
  for (const axis of ['xMm', 'yMm'] as const)
    for (const a of at) {
      const second = below(a, axis);
      if (second && below(second, axis)) columns++;
    }
  return columns;
}

const moulds = (count: number, widthMm = 120, heightMm = 120) => {
  const { pieces: _, looseness: __, seed: ___, ...task } = fortyOf(1);
  return { ...task, reachMm: 2300, pieces: Array.from({ length: count }, () => ({ widthMm, heightMm })) };
};

describe('halo candidates', () => {
  test('law: pieces of one size stand in no accidental columns, loose or leaning, and even ones go all round', () => {
    for (const count of [12, 24, 40])
      for (const seed of [1, 2, 3, 4, 5]) {
        const task = moulds(count);
        const [even, loose, leaning] = haloCandidates(task, { seed });
        expect(columnsOf({ ...task, looseness: 0, seed }, loose!.places)).toBeLessThanOrEqual(1);
        expect(columnsOf({ ...task, looseness: 0, seed }, leaning!.places)).toBeLessThanOrEqual(1);
        const angles = even!.places.map((at) => Math.atan2(at!.yMm - 1520, at!.xMm - 2700)).sort((a, b) => a - b);
        const turns = angles.map((angle, i) => (angles[(i + 1) % count]! - angle + 2 * Math.PI) % (2 * Math.PI));
        expect(Math.max(...turns)).toBeLessThan(1);
      }
  });

  test('law: pieces of one size differ visibly from way to way, in gap, in balance and in place', () => {
    for (const count of [6, 12, 24, 40]) {
      const [even, loose, leaning] = haloCandidates(moulds(count), { seed: count });
      expect(Math.abs(even!.measures.balanceX)).toBeLessThan(0.1);
      expect(Math.abs(leaning!.measures.balanceX)).toBeGreaterThan(Math.abs(loose!.measures.balanceX) + 0.15);
      expect(loose!.measures.outline.widthMm).toBeGreaterThan(even!.measures.outline.widthMm);
      for (const other of [loose, leaning]) expect(displacementMm(even!, other!)).toBeGreaterThan(120);
    }
  });

  test('law: three that differ in name, place and outline, all of them lawful', () => {
    for (const seed of [1, 2, 3, 4]) {
      const { looseness: _, seed: __, ...task } = fortyOf(seed);
      const three = haloCandidates(task, { seed });
      expect(three.map(({ name }) => name)).toEqual(['even halo', 'loose halo', 'leaning halo']);
      for (const candidate of three) expect(brokenRules(fortyOf(seed), candidate)).toEqual([]);
      for (const [i, j] of [
        [0, 1],
        [0, 2],
        [1, 2],
      ] as const)
        expect(displacementMm(three[i]!, three[j]!)).toBeGreaterThan(200);
      const [even, loose, leaning] = three.map(({ measures }) => measures);
      expect(loose!.meanGapMm).toBeGreaterThan(1.4 * even!.meanGapMm);
      expect(Math.abs(leaning!.balanceX)).toBeGreaterThan(0.25);
    }
  });

  test('story: three others are asked for, and none is one of the first', () => {
    const { looseness: _, seed: __, ...task } = fortyOf(5);
    const first = haloCandidates(task, { seed: 1 });
    const others = haloCandidates(task, { seed: 2, exclude: first });
    for (const a of first) for (const b of others) expect(displacementMm(a, b)).toBeGreaterThan(100);
  });
});
