import type { Distance } from './mixed-distance.ts';
import type { Neighbours } from './neighbours.ts';

/** The n − 1 edges that join n things with the least weight, lightest first. */
export interface SpanningTree {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly weight: Float32Array;
}

/** Things joined into parts; `partOf` finds a thing's part, halving the way to it as it goes. */
export function partsOf(n: number): { partOf(i: number): number; parent: Int32Array } {
  const parent = Int32Array.from({ length: n }, (_, i) => i);
  const partOf = (start: number): number => {
    let i = start;
    while (parent[i] !== i) {
      parent[i] = parent[parent[i]!]!;
      i = parent[i]!;
    }
    return i;
  };
  return { partOf, parent };
}

/** The places of weights (0 or more), lightest first: a radix sort of their bits, ties in order. */
export function lightestFirst(weight: Float32Array): Uint32Array<ArrayBuffer> {
  const bits = new Uint32Array(Float32Array.from(weight, (w) => w + 0).buffer);
  let order = Uint32Array.from({ length: weight.length }, (_, i) => i);
  for (const shift of [0, 16]) {
    const starts = new Uint32Array(65537);
    for (const b of bits) starts[((b >>> shift) & 65535) + 1]!++;
    for (let v = 0; v < 65536; v++) starts[v + 1]! += starts[v]!;
    const next = new Uint32Array(order.length);
    for (const i of order) next[starts[(bits[i]! >>> shift) & 65535]!++] = i;
    order = next;
  }
  return order;
}

/** The distance to the m-th nearest of each thing, or to the last one known. RangeError when rows hold fewer than m. */
export function coreDistances({ n, k, far }: Neighbours, m: number): Float32Array {
  if (m > k) throw new RangeError(`coreDistances: the ${m}th of ${k} neighbours is not known`);
  return Float32Array.from({ length: n }, (_, i) => {
    let at = i * k + m - 1;
    while (at > i * k && far[at] === Number.POSITIVE_INFINITY) at--;
    return far[at]!;
  });
}

/** The spanning tree of every pair under mutual reachability: the largest of the distance and both core distances (Prim). */
export function spanningTree(n: number, distance: Distance, core: Float32Array): SpanningTree {
  const edges = n > 0 ? n - 1 : 0;
  const tree = { from: new Int32Array(edges), to: new Int32Array(edges), weight: new Float32Array(edges) };
  const best = new Float32Array(n).fill(Number.POSITIVE_INFINITY);
  const via = new Int32Array(n);
  const open = Int32Array.from({ length: n }, (_, i) => n - 1 - i);
  let current = 0;
  for (let left = edges; left > 0; left--) {
    let nearest = -1;
    let least = Number.POSITIVE_INFINITY;
    const own = core[current]!;
    for (let p = 0; p < left; p++) {
      const j = open[p]!;
      const reach = Math.max(distance(current, j), own, core[j]!);
      if (reach < best[j]!) {
        best[j] = reach;
        via[j] = current;
      }
      if (best[j]! < least || nearest < 0) {
        least = best[j]!;
        nearest = p;
      }
    }
    current = open[nearest]!;
    open[nearest] = open[left - 1]!;
    const edge = edges - left;
    tree.from[edge] = via[current]!;
    tree.to[edge] = current;
    tree.weight[edge] = least;
  }
  return sorted(tree);
}

/**
 * The spanning tree of the neighbours alone under mutual reachability (Kruskal). Parts that no neighbour joins are joined
 * at the heaviest weight there is: they are at least so far apart, and how much farther decides nothing.
 */
export function spanningTreeOfNeighbours({ n, k, near, far }: Neighbours, core: Float32Array): SpanningTree {
  const reach = new Float32Array(n * k);
  for (let i = 0, q = 0; i < n; i++)
    for (let p = 0; p < k; p++, q++)
      reach[q] = near[q]! < 0 ? Number.POSITIVE_INFINITY : Math.max(far[q]!, core[i]!, core[near[q]!]!);
  const tree = { from: new Int32Array(n - 1), to: new Int32Array(n - 1), weight: new Float32Array(n - 1) };
  const { partOf, parent } = partsOf(n);
  let edge = 0;
  const join = (i: number, j: number, weight: number): void => {
    const [a, b] = [partOf(i), partOf(j)];
    if (a === b) return;
    parent[a] = b;
    tree.from[edge] = i;
    tree.to[edge] = j;
    tree.weight[edge++] = weight;
  };
  for (const q of lightestFirst(reach)) {
    if (edge === n - 1 || near[q]! < 0) break;
    join(Math.floor(q / k), near[q]!, reach[q]!);
  }
  const heaviest = edge > 0 ? tree.weight[edge - 1]! : 1;
  for (let i = 1; i < n && edge < n - 1; i++) join(0, i, heaviest);
  return tree;
}

function sorted({ from, to, weight }: SpanningTree): SpanningTree {
  const order = lightestFirst(weight);
  const by = <T extends Int32Array | Float32Array>(values: T): T => values.map((_, e) => values[order[e]!]!) as T;
  return { from: by(from), to: by(to), weight: by(weight) };
}
