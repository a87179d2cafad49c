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
  const count = weight.length;
  const last = (1 << DIGITS) - 1;
  // The bits are carried along with the places, so that they are read one after another.
  let bits = new Uint32Array(new Float32Array(weight).buffer);
  let order = new Uint32Array(count);
  for (let e = 0; e < count; e++) order[e] = e;
  let nextBits = new Uint32Array(count);
  let next = new Uint32Array(count);
  for (const shift of [0, DIGITS, 2 * DIGITS]) {
    const starts = new Uint32Array(last + 2);
    for (let e = 0; e < count; e++) starts[((bits[e]! >>> shift) & last) + 1]!++;
    for (let v = 0; v < last; v++) starts[v + 1]! += starts[v]!;
    for (let q = 0; q < count; q++) {
      const to = starts[(bits[q]! >>> shift) & last]!++;
      next[to] = order[q]!;
      nextBits[to] = bits[q]!;
    }
    [order, next] = [next, order];
    [bits, nextBits] = [nextBits, bits];
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
export function spanningTreeOfNeighbours(neighbours: Neighbours, core: Float32Array): SpanningTree {
  const { n } = neighbours;
  const { from, to, reach } = pairsOf(neighbours, core);
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
  const order = lightestFirst(reach);
  for (let q = 0; q < order.length && edge < n - 1; q++) join(from[order[q]!]!, to[order[q]!]!, reach[order[q]!]!);
  const heaviest = edge > 0 ? tree.weight[edge - 1]! : 1;
  for (let i = 1; i < n && edge < n - 1; i++) join(0, i, heaviest);
  return tree;
}

/** The pairs of neighbours and their mutual reachability; of two that name each other once, by the lower. */
function pairsOf({ n, k, near, far }: Neighbours, core: Float32Array) {
  const from = new Int32Array(near.length);
  const to = new Int32Array(near.length);
  const reach = new Float32Array(near.length);
  const names = (j: number, i: number): boolean => {
    for (let q = j * k; q < (j + 1) * k; q++) if (near[q] === i) return true;
    return false;
  };
  let count = 0;
  for (let i = 0; i < n; i++)
    for (let q = i * k; q < (i + 1) * k; q++) {
      const j = near[q]!;
      if (j < 0 || (j < i && names(j, i))) continue;
      from[count] = i;
      to[count] = j;
      reach[count++] = Math.max(far[q]!, core[i]!, core[j]!);
    }
  return { from, to, reach: reach.subarray(0, count) };
}

function sorted({ from, to, weight }: SpanningTree): SpanningTree {
  const order = lightestFirst(weight);
  const by = <T extends Int32Array | Float32Array>(values: T): T => values.map((_, e) => values[order[e]!]!) as T;
  return { from: by(from), to: by(to), weight: by(weight) };
}
