import { densityGroups } from './density.ts';
import { cutInto, joiningsOf } from './linkage.ts';
import { louvain } from './louvain.ts';
import type { Distance } from './mixed-distance.ts';
import { exactNeighbours, type Neighbours, nearNeighbours } from './neighbours.ts';
import { silhouetteWidth } from './silhouette-width.ts';
import { coreDistances, spanningTree, spanningTreeOfNeighbours } from './spanning-tree.ts';

/** A pool as it is seen for grouping: every distance of a small one, the neighbours alone of a large one. */
export interface Sight {
  readonly n: number;
  readonly distance: Distance;
  readonly near: Neighbours;
  readonly whole: boolean;
}

/** Up to this many things every pair is compared: 18 million distances, 36 MB. */
export const WHOLE = 3000;
const NEIGHBOURS = 15;
const LINKED = 120;
// Common practice, no source: of two things nearer than this nobody says which is the nearer (about 2 ΔE in colour alone),
// so that drawn copies are no denser a group than what is like them.
const AS_ONE = 0.03;

/** A pool of n things seen whole or by its neighbours. */
export function sightOf(n: number, distance: Distance): Sight {
  const k = Math.max(1, Math.min(NEIGHBOURS, n - 1));
  if (n > WHOLE) return { n, distance, near: nearNeighbours(n, k, distance), whole: false };
  const held = new Float32Array(n * n);
  const near = exactNeighbours(n, k, (i, j) => {
    const apart = distance(i, j);
    held[i * n + j] = apart;
    held[j * n + i] = apart;
    return apart;
  });
  return { n, distance: (i, j) => held[i * n + j]!, near, whole: true };
}

/** The same sight of some rows alone; of their neighbours those that are among them. */
export function sightOfRows(sight: Sight, rows: Int32Array): Sight {
  const n = rows.length;
  const distance: Distance = (i, j) => sight.distance(rows[i]!, rows[j]!);
  const { k, near, far } = sight.near;
  const at = new Int32Array(sight.n).fill(-1);
  for (let i = 0; i < n; i++) at[rows[i]!] = i;
  const kept = {
    n,
    k,
    near: new Int32Array(n * k).fill(-1),
    far: new Float32Array(n * k).fill(Number.POSITIVE_INFINITY),
  };
  for (let i = 0; i < n; i++)
    for (let q = rows[i]! * k, to = i * k; q < (rows[i]! + 1) * k; q++) {
      if (near[q]! < 0 || at[near[q]!]! < 0) continue;
      kept.near[to] = at[near[q]!]!;
      kept.far[to++] = far[q]!;
    }
  return { n, distance, near: kept, whole: sight.whole };
}

/** Groups by density, lasting ones then innermost ones, as labels a thing, −1 in none. */
export function denseGroups(sight: Sight, least: number): Int32Array[] {
  if (sight.n <= least) return [];
  const known = coreDistances(sight.near, Math.max(1, Math.min(5, least - 1, sight.near.k)));
  const core = known.map((far) => Math.max(far, AS_ONE));
  const tree = sight.whole ? spanningTree(sight.n, sight.distance, core) : spanningTreeOfNeighbours(sight.near, core);
  const { lasting, innermost } = densityGroups(tree, least);
  return [lasting, innermost];
}

/** Groups where density finds none: average linkage at its best silhouette in a small pool, shared neighbours in others. */
export function secondGroups(sight: Sight, least: number): Int32Array {
  const { n, distance } = sight;
  const parts = n <= LINKED ? bestCut(n, distance, least) : louvain(sight.near);
  const size = new Map<number, number>();
  for (const part of parts) size.set(part, (size.get(part) ?? 0) + 1);
  return parts.map((part) => (size.get(part)! >= least && size.get(part)! <= n / 2 ? part : -1));
}

function bestCut(n: number, distance: Distance, least: number): Int32Array {
  const joinings = joiningsOf(n, distance, 'average');
  let best = new Int32Array(n).fill(0);
  let width = Number.NEGATIVE_INFINITY;
  for (let parts = 2; parts <= Math.min(24, Math.ceil((2 * n) / least)); parts++) {
    const cut = cutInto(joinings, parts);
    const reached = silhouetteWidth(cut, distance);
    if (reached > width) {
      width = reached;
      best = new Int32Array(cut);
    }
  }
  return best;
}
