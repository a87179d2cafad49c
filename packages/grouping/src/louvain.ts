import type { Neighbours } from './neighbours.ts';
import { seeded, shuffledUpTo } from './seeded.ts';

/** Links as rows one after another: those of i stand from starts[i] to starts[i + 1]; `own` is what a part holds inside. */
interface Graph {
  readonly starts: Int32Array;
  readonly to: Int32Array;
  readonly weight: Float64Array;
  readonly own: Float64Array;
}

/**
 * The communities of things by the neighbours they share: links weighted by the part of their neighbours two have in common,
 * then moved to the best community until nothing gains, joined, and again (V. Blondel, J.-L. Guillaume, R. Lambiotte,
 * E. Lefebvre, "Fast unfolding of communities in large networks", J. Stat. Mech. 2008). After the first round only those
 * are looked at again beside whom something moved (V. Traag, L. Waltman, N. J. van Eck, "From Louvain to Leiden",
 * Sci. Rep. 9, 2019). One label a thing.
 */
export function louvain(neighbours: Neighbours, seed = 1): Int32Array {
  const random = seeded(seed);
  let graph = sharedNeighbours(neighbours);
  let label = Int32Array.from({ length: neighbours.n }, (_, i) => i);
  for (let level = 0; level < 10; level++) {
    const { community, count } = moved(graph, random);
    label = label.map((i) => community[i]!);
    if (count === graph.own.length) break;
    graph = joined(graph, community, count);
  }
  return label;
}

function sharedNeighbours({ n, k, near }: Neighbours): Graph {
  const weights = new Float64Array(n * k);
  const mark = new Int32Array(n).fill(-1);
  // Of two that name each other the link is told once, by the lower; of two of whom one names the other, by that one.
  const from: number[] = [];
  const places: number[] = [];
  for (let i = 0; i < n; i++) {
    for (let q = i * k; q < (i + 1) * k; q++) if (near[q]! >= 0) mark[near[q]!] = i;
    for (let q = i * k; q < (i + 1) * k; q++) {
      const j = near[q]!;
      if (j < 0) continue;
      let shared = 0;
      let mutual = false;
      for (let p = j * k; p < (j + 1) * k; p++) {
        if (near[p] === i) mutual = true;
        else if (near[p]! >= 0 && mark[near[p]!] === i) shared++;
      }
      weights[q] = (shared + 1) / (2 * k - shared);
      if (mutual && j < i) continue;
      from.push(i);
      places.push(q);
    }
  }
  return bothWays(
    n,
    Int32Array.from(from),
    Int32Array.from(places, (q) => near[q]!),
    Float64Array.from(places, (q) => weights[q]!),
    new Float64Array(n),
  );
}

/** A graph from links that are each told once. */
function bothWays(n: number, from: Int32Array, onto: Int32Array, of: Float64Array, own: Float64Array): Graph {
  const starts = new Int32Array(n + 1);
  for (const ends of [from, onto]) for (const i of ends) starts[i + 1]!++;
  for (let i = 0; i < n; i++) starts[i + 1]! += starts[i]!;
  const next = starts.slice();
  const to = new Int32Array(2 * from.length);
  const weight = new Float64Array(2 * from.length);
  for (let e = 0; e < from.length; e++)
    for (const [i, j] of [
      [from[e]!, onto[e]!],
      [onto[e]!, from[e]!],
    ] as const) {
      to[next[i]!] = j;
      weight[next[i]!++] = of[e]!;
    }
  return { starts, to, weight, own };
}

/** The community of each, named from 0 in order, and how many there are. */
function moved({ starts, to, weight, own }: Graph, random: () => number): { community: Int32Array; count: number } {
  const n = own.length;
  const community = Int32Array.from({ length: n }, (_, i) => i);
  const degree = Float64Array.from(own, (inside) => 2 * inside);
  for (let i = 0; i < n; i++) for (let q = starts[i]!; q < starts[i + 1]!; q++) degree[i]! += weight[q]!;
  const total = Float64Array.from(degree);
  const all = degree.reduce((sum, d) => sum + d, 0);
  const order = shuffledUpTo(n, random);
  const waits = new Uint8Array(n).fill(1);
  const into = new Float64Array(n);
  for (let round = 0, still = false; !still && round < 20; round++) {
    still = true;
    for (const i of order) {
      if (waits[i] === 0) continue;
      waits[i] = 0;
      const from = community[i]!;
      for (let q = starts[i]!; q < starts[i + 1]!; q++) into[community[to[q]!]!]! += weight[q]!;
      total[from]! -= degree[i]!;
      let best = from;
      let most = into[from]! - (degree[i]! * total[from]!) / all;
      for (let q = starts[i]!; q < starts[i + 1]!; q++) {
        const c = community[to[q]!]!;
        const gain = into[c]! - (degree[i]! * total[c]!) / all;
        if (gain > most + 1e-12) [best, most] = [c, gain];
      }
      for (let q = starts[i]!; q < starts[i + 1]!; q++) into[community[to[q]!]!] = 0;
      total[best]! += degree[i]!;
      if (best === from) continue;
      community[i] = best;
      still = false;
      for (let q = starts[i]!; q < starts[i + 1]!; q++) if (community[to[q]!] !== best) waits[to[q]!] = 1;
    }
  }
  const names = new Int32Array(n).fill(-1);
  let count = 0;
  for (const c of community) if (names[c]! < 0) names[c] = count++;
  return { community: community.map((c) => names[c]!), count };
}

function joined({ starts, to, weight, own }: Graph, community: Int32Array, count: number): Graph {
  const inside = new Float64Array(count);
  const links = new Map<number, number>();
  for (let i = 0; i < own.length; i++) {
    const a = community[i]!;
    inside[a]! += own[i]!;
    for (let q = starts[i]!; q < starts[i + 1]!; q++) {
      const b = community[to[q]!]!;
      if (a === b) inside[a]! += weight[q]! / 2;
      else if (a < b) links.set(a * count + b, (links.get(a * count + b) ?? 0) + weight[q]!);
    }
  }
  const keys = [...links.keys()];
  return bothWays(
    count,
    Int32Array.from(keys, (key) => Math.floor(key / count)),
    Int32Array.from(keys, (key) => key % count),
    Float64Array.from(links.values()),
    inside,
  );
}
