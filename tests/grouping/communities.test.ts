import { densityGroups } from '@enfilade/grouping/density';
import { louvain } from '@enfilade/grouping/louvain';
import { euclidean } from '@enfilade/grouping/mixed-distance';
import { exactNeighbours, type Neighbours } from '@enfilade/grouping/neighbours';
import { seeded } from '@enfilade/grouping/seeded';
import { coreDistances, spanningTree } from '@enfilade/grouping/spanning-tree';
import { describe, expect, test } from 'vitest';
import { agreement } from './agreement.ts';

function normals(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Every way of parting n things, as labels: 4,140 of eight (Bell's numbers). */
function* partings(n: number, begun: readonly number[] = []): Generator<readonly number[]> {
  if (begun.length === n) yield begun;
  else for (let label = 0; label <= Math.max(-1, ...begun) + 1; label++) yield* partings(n, [...begun, label]);
}

/** M. E. J. Newman, M. Girvan, Phys. Rev. E 69, 2004, over links as `louvain` says it weighs them, written out anew. */
function modularity({ n, k, near }: Neighbours, label: ArrayLike<number>): number {
  const named = Array.from({ length: n }, (_, i) => new Set(near.subarray(i * k, i * k + k)));
  const weight = (i: number, j: number) => {
    if (i === j || !(named[i]!.has(j) || named[j]!.has(i))) return 0;
    const shared = [...named[i]!].filter((one) => named[j]!.has(one)).length;
    return (shared + 1) / (2 * k - shared);
  };
  const rows = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, j) => weight(i, j)));
  const degree = rows.map((row) => row.reduce((sum, w) => sum + w, 0));
  const all = degree.reduce((sum, d) => sum + d, 0);
  let inside = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) if (label[i] === label[j]) inside += rows[i]![j]! - (degree[i]! * degree[j]!) / all;
  return inside / all;
}

describe('communities by shared neighbours', () => {
  test('law: on eight things they are nearly the best of all 4,140 ways to part them (brute force)', () => {
    const ways = [...partings(8)];
    expect(ways).toHaveLength(4140);
    for (let seed = 1; seed <= 2; seed++) {
      const neighbours = exactNeighbours(8, 3, euclidean(Float64Array.from({ length: 16 }, seeded(seed)), 2));
      const best = Math.max(...ways.map((way) => modularity(neighbours, way)));
      expect(modularity(neighbours, louvain(neighbours))).toBeGreaterThan(0.95 * best);
    }
  });

  test('law: where clouds run into one another and density tells less than half, they find the three', () => {
    const random = seeded(6);
    const normal = normals(random);
    const truth = Int32Array.from({ length: 450 }, (_, i) => i % 3);
    const values = Float64Array.from({ length: 450 * 8 }, (_, q) => {
      const [i, c] = [Math.floor(q / 8), q % 8];
      return normal() + (c === truth[i]! ? 4 : 0);
    });
    const distance = euclidean(values, 8);
    const neighbours = exactNeighbours(450, 15, distance);
    const { lasting } = densityGroups(spanningTree(450, distance, coreDistances(neighbours, 5)), 8);
    expect(agreement(lasting, truth)).toBeLessThan(0.5);
    expect(agreement(louvain(neighbours), truth)).toBeGreaterThan(0.9);
  });
});
