import type { Column } from '@enfilade/grouping/columns';
import { densityGroups } from '@enfilade/grouping/density';
import { cutInto, joiningsOf } from '@enfilade/grouping/linkage';
import { euclidean, mixedDistance } from '@enfilade/grouping/mixed-distance';
import { leastDistance, moversDistance } from '@enfilade/grouping/movers-distance';
import { exactNeighbours, nearNeighbours } from '@enfilade/grouping/neighbours';
import { seeded } from '@enfilade/grouping/seeded';
import { silhouetteWidth } from '@enfilade/grouping/silhouette-width';
import { coreDistances, spanningTree, spanningTreeOfNeighbours } from '@enfilade/grouping/spanning-tree';
import { describe, expect, test } from 'vitest';
import { agreement } from './agreement.ts';
import { iris } from './iris.ts';
import { agriculture, flower, ruspini } from './small-sets.ts';

const irisDistance = euclidean(iris.values, iris.width);

/** Two half circles in one another, 200 points each with a little jitter, as scikit-learn's make_moons lays them. */
function twoMoons() {
  const random = seeded(5);
  const jitter = () => 0.05 * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const values = Float64Array.from(
    Array.from({ length: 400 }, (_, i) => {
      const angle = (Math.PI * (i % 200)) / 199;
      return i < 200
        ? [Math.cos(angle) + jitter(), Math.sin(angle) + jitter()]
        : [1 - Math.cos(angle) + jitter(), 0.5 - Math.sin(angle) + jitter()];
    }).flat(),
  );
  return { distance: euclidean(values, 2), moon: Array.from({ length: 400 }, (_, i) => Math.floor(i / 200)) };
}

describe('linkages', () => {
  test.each([
    ['single', 0.5638],
    ['complete', 0.6423],
    ['average', 0.7592],
    ['ward', 0.7312],
  ] as const)(
    'reference: iris, three groups by %s, agree with the species by %f (scikit-learn, R hclust)',
    (linkage, expected) => {
      const parts = cutInto(joiningsOf(150, irisDistance, linkage), 3);
      expect(agreement(parts, iris.species)).toBeCloseTo(expected, 4);
    },
  );

  test('reference: the agglomerative coefficient of agriculture by average is .7818932 (R agnes)', () => {
    const joinings = joiningsOf(12, euclidean(agriculture.values, 2), 'average');
    const last = joinings.at(-1)!.height;
    const first = Array.from({ length: 12 }, (_, i) => joinings.find(({ one, other }) => one === i || other === i)!);
    expect(first.reduce((sum, { height }) => sum + 1 - height / last, 0) / 12).toBeCloseTo(0.7818932, 6);
  });

  test('reference: the four groups of ruspini have a mean silhouette of .737657 (R pam)', () => {
    const distance = euclidean(ruspini.values, 2);
    const parts = cutInto(joiningsOf(75, distance, 'average'), 4);
    expect(silhouetteWidth(parts, distance)).toBeCloseTo(0.737657, 5);
  });
});

describe('density groups', () => {
  test('reference: iris has two, setosa and the rest, agreeing with the species by .5681 (hdbscan)', () => {
    const core = coreDistances(exactNeighbours(150, 5, irisDistance), 5);
    const { lasting } = densityGroups(spanningTree(150, irisDistance, core), 5);
    expect(agreement(lasting, iris.species)).toBeCloseTo(0.5681, 4);
  });

  test('reference: two moons are found whole (hdbscan: agreement 1)', () => {
    const { distance, moon } = twoMoons();
    const core = coreDistances(exactNeighbours(400, 5, distance), 5);
    expect(agreement(densityGroups(spanningTree(400, distance, core), 20).lasting, moon)).toBe(1);
  });

  test('law: the tree of the neighbours alone finds the moons too', () => {
    const { distance, moon } = twoMoons();
    const near = nearNeighbours(400, 15, distance);
    const tree = spanningTreeOfNeighbours(near, coreDistances(near, 5));
    expect(agreement(densityGroups(tree, 20).lasting, moon)).toBe(1);
  });

  test('law: a spanning tree has n − 1 edges that rise, and no lighter one is left out (Kruskal over every pair)', () => {
    const random = seeded(2);
    const values = Float64Array.from({ length: 3 * 120 }, random);
    const distance = euclidean(values, 3);
    const core = new Float32Array(120);
    const prim = spanningTree(120, distance, core);
    const kruskal = spanningTreeOfNeighbours(exactNeighbours(120, 119, distance), core);
    expect(prim.weight).toHaveLength(119);
    expect(Math.max(...prim.weight.map((w, e) => (e ? prim.weight[e - 1]! - w : 0)))).toBeLessThanOrEqual(0);
    expect(prim.weight).toEqual(kruskal.weight);
  });
});

test('law: near neighbours hold 93 of 100 of the nearest of all (every tenth thing, brute force), in 12 and in 30 columns', () => {
  for (const width of [12, 30]) {
    const random = seeded(width);
    const centres = Float64Array.from({ length: 40 * width }, random);
    const values = Float32Array.from(
      { length: 3000 * width },
      (_, q) => centres[(Math.floor(q / width) % 40) * width + (q % width)]! + 0.2 * random(),
    );
    const distance = euclidean(values, width);
    const { near } = nearNeighbours(3000, 15, distance);
    let found = 0;
    for (let i = 0; i < 3000; i += 10) {
      const row = new Set(near.subarray(15 * i, 15 * i + 15));
      expect(row.size).toBe(15);
      const apart = Float64Array.from({ length: 3000 }, (_, j) => (j === i ? 9 : distance(i, j)));
      const farthest = apart.slice().sort()[14]!;
      for (const j of row) if (apart[j]! <= farthest) found++;
    }
    expect(found / 4500).toBeGreaterThan(0.93);
  }
});

test('law: neighbours by trying every pair are the nearest of all, nearest first', () => {
  const random = seeded(3);
  const distance = euclidean(Float32Array.from({ length: 200 * 4 }, random), 4);
  const { near } = exactNeighbours(200, 7, distance);
  for (let i = 0; i < 200; i++) {
    const all = Array.from({ length: 200 }, (_, j) => j).filter((j) => j !== i);
    all.sort((a, b) => distance(i, a) - distance(i, b));
    expect([...near.subarray(7 * i, 7 * i + 7)]).toEqual(all.slice(0, 7));
  }
});

describe('mixed distance', () => {
  const words = flower.words.map((codes): Column => {
    return { kind: 'word', name: '', look: 'use', codes: Int32Array.from(codes), words: [] };
  });
  const numbers = flower.numbers.map((values): Column => {
    const range = Math.max(...values) - Math.min(...values);
    return { kind: 'number', name: '', look: 'size', unit: '', values: Float64Array.from(values), range };
  });

  test('reference: daisy(flower) of R, the first flower to the next five', () => {
    const distance = mixedDistance([...words, ...numbers], new Float64Array(8).fill(1));
    const expected = [0.8875408, 0.5272467, 0.3517974, 0.4115605, 0.2269199];
    for (const [i, value] of expected.entries()) expect(distance(0, i + 1)).toBeCloseTo(value, 6);
  });

  test('law: asked for what is nearer than a bound, a distance is the same under it and not under it beyond', () => {
    const random = seeded(11);
    const numbers = Array.from({ length: 19 }, (): Column => {
      const values = Float64Array.from({ length: 60 }, random);
      return { kind: 'number', name: '', look: 'size', unit: '', values, range: 1 };
    });
    const codes = Int32Array.from({ length: 60 }, () => Math.floor(3 * random()) - 1);
    const word: Column = { kind: 'word', name: '', look: 'use', codes, words: ['a', 'b'] };
    const of = (columns: readonly Column[]) => mixedDistance(columns, new Float64Array(columns.length).fill(1 / 3));
    const rows = Float32Array.from({ length: 60 * 19 }, random);
    for (const distance of [of(numbers), of([...numbers, word]), euclidean(rows, 19)])
      for (let i = 0; i < 60; i++)
        for (let j = 0; j < i; j++) {
          const whole = distance(i, j);
          const within = Math.fround(whole * (0.5 + random()));
          const bounded = distance(i, j, within);
          if (whole < within) expect(bounded).toBe(whole);
          else expect(Math.fround(bounded)).toBeGreaterThanOrEqual(within);
        }
  });

  test('law: what is not known of one is left out, and ignorance is not likeness', () => {
    const known: Column = { kind: 'number', name: '', look: 'size', unit: '', values: Float64Array.of(1, 1), range: 4 };
    const unknown: Column = { ...known, values: Float64Array.of(3, Number.NaN) };
    const distance = (...columns: Column[]) => mixedDistance(columns, new Float64Array(columns.length).fill(1))(0, 1);
    expect(distance(known, unknown)).toBe(0);
    expect(distance(known, unknown, unknown, unknown)).toBe(0.5);
    expect(distance(unknown)).toBe(1);
  });
});

describe("earth mover's distance", () => {
  test("reference: Rubner's own example is 160.5428 (example1.c of his code)", () => {
    const from = [100, 40, 22, 211, 20, 2, 32, 190, 150, 2, 100, 100];
    const to = [0, 0, 0, 50, 100, 80, 255, 255, 255];
    const costs = Array.from({ length: 12 }, (_, q) => {
      const [i, j] = [3 * Math.floor(q / 3), 3 * (q % 3)];
      return Math.hypot(from[i]! - to[j]!, from[i + 1]! - to[j + 1]!, from[i + 2]! - to[j + 2]!);
    });
    expect(moversDistance(costs, [0.4, 0.3, 0.2, 0.1], [0.5, 0.3, 0.2]).distance).toBeCloseTo(160.5428, 4);
  });

  test('law: it is never under its bound, moves all there is, and is the best of every way on equal heaps', () => {
    const random = seeded(9);
    for (let round = 0; round < 300; round++) {
      const costs = Float64Array.from({ length: 16 }, random);
      const { distance, moves } = moversDistance(costs, [1, 1, 1, 1], [1, 1, 1, 1]);
      let best = Number.POSITIVE_INFINITY;
      for (let code = 0; code < 256; code++) {
        const way = [code & 3, (code >> 2) & 3, (code >> 4) & 3, (code >> 6) & 3];
        if (new Set(way).size === 4) best = Math.min(best, way.reduce((sum, j, i) => sum + costs[4 * i + j]!, 0) / 4);
      }
      expect(distance).toBeCloseTo(best, 10);
      expect(moves.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 10);
      expect(leastDistance(costs, [0.25, 0.25, 0.25, 0.25], [0.25, 0.25, 0.25, 0.25])).toBeLessThanOrEqual(
        distance + 1e-12,
      );
    }
  });
});
