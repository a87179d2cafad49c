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

const DIGITS = 11;

/** The places of weights (0 or more), lightest first: a radix sort of their bits, eleven at a time, ties in order. */
export function lightestFirst(weight: Float32Array): Uint32Array<ArrayBuffer> {
  const bits = new Uint32Array(new Float32Array(weight).buffer);
  const last = (1 << DIGITS) - 1;
  let order = Uint32Array.from(weight.keys());
  let next = new Uint32Array(order.length);
  for (const shift of [0, DIGITS, 2 * DIGITS]) {
    const starts = new Uint32Array(last + 2);
    for (let e = 0; e < bits.length; e++) starts[((bits[e]! >>> shift) & last) + 1]!++;
    for (let v = 0; v < last; v++) starts[v + 1]! += starts[v]!;
    for (let q = 0; q < order.length; q++) {
      const e = order[q]!;
      next[starts[(bits[e]! >>> shift) & last]!++] = e;
    }
    [order, next] = [next, order];
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
  const known = Uint32Array.from(near.keys()).filter((q) => near[q]! >= 0);
  const reach = new Float32Array(known.length);
  for (let e = 0; e < known.length; e++) {
    const q = known[e]!;
    reach[e] = Math.max(far[q]!, core[Math.floor(q / k)]!, core[near[q]!]!);
  }
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
  for (const e of lightestFirst(reach)) {
    if (edge === n - 1) break;
    join(Math.floor(known[e]! / k), near[known[e]!]!, reach[e]!);
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
