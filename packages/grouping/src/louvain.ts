import type { Neighbours } from './neighbours.ts';
import { seeded, shuffledUpTo } from './seeded.ts';

interface Graph {
  readonly links: ReadonlyMap<number, number>[];
  readonly own: Float64Array;
}

/**
 * The communities of things by the neighbours they share: links weighted by the part of their neighbours two have in common,
 * then moved to the best community until nothing gains, joined, and again (V. Blondel, J.-L. Guillaume, R. Lambiotte,
 * E. Lefebvre, "Fast unfolding of communities in large networks", J. Stat. Mech. 2008). One label a thing.
 */
export function louvain(neighbours: Neighbours, seed = 1): Int32Array {
  const random = seeded(seed);
  let graph = sharedNeighbours(neighbours);
  let label = Int32Array.from({ length: neighbours.n }, (_, i) => i);
  for (let level = 0; level < 10; level++) {
    const community = moved(graph, random);
    const names = new Map<number, number>();
    for (const c of community) if (!names.has(c)) names.set(c, names.size);
    label = label.map((i) => names.get(community[i]!)!);
    if (names.size === graph.links.length) break;
    graph = joined(graph, community, names);
  }
  return label;
}

function sharedNeighbours({ n, k, near }: Neighbours): Graph {
  const links = Array.from({ length: n }, () => new Map<number, number>());
  const mark = new Int32Array(n).fill(-1);
  for (let i = 0; i < n; i++) {
    for (let q = i * k; q < (i + 1) * k; q++) if (near[q]! >= 0) mark[near[q]!] = i;
    for (let q = i * k; q < (i + 1) * k; q++) {
      const j = near[q]!;
      if (j < 0) continue;
      let shared = 0;
      for (let p = j * k; p < (j + 1) * k; p++) if (near[p]! >= 0 && mark[near[p]!] === i) shared++;
      const weight = (shared + 1) / (2 * k - shared);
      links[i]!.set(j, weight);
      links[j]!.set(i, weight);
    }
  }
  return { links, own: new Float64Array(n) };
}

function moved({ links, own }: Graph, random: () => number): Int32Array {
  const n = links.length;
  const community = Int32Array.from({ length: n }, (_, i) => i);
  const degree = Float64Array.from(links, (row, i) => 2 * own[i]! + [...row.values()].reduce((sum, w) => sum + w, 0));
  const total = Float64Array.from(degree);
  const all = degree.reduce((sum, d) => sum + d, 0);
  const order = shuffledUpTo(n, random);
  for (let round = 0, still = false; !still && round < 20; round++) {
    still = true;
    for (const i of order) {
      const from = community[i]!;
      const to = new Map([[from, 0]]);
      for (const [j, w] of links[i]!) to.set(community[j]!, (to.get(community[j]!) ?? 0) + w);
      total[from]! -= degree[i]!;
      let best = from;
      let most = to.get(from)! - (degree[i]! * total[from]!) / all;
      for (const [c, w] of to) {
        const gain = w - (degree[i]! * total[c]!) / all;
        if (gain > most + 1e-12) [best, most] = [c, gain];
      }
      total[best]! += degree[i]!;
      community[i] = best;
      if (best !== from) still = false;
    }
  }
  return community;
}

function joined({ links, own }: Graph, community: Int32Array, names: ReadonlyMap<number, number>): Graph {
  const next = {
    links: Array.from({ length: names.size }, () => new Map<number, number>()),
    own: new Float64Array(names.size),
  };
  for (const [i, row] of links.entries()) {
    const a = names.get(community[i]!)!;
    next.own[a]! += own[i]!;
    for (const [j, w] of row) {
      const b = names.get(community[j]!)!;
      if (a === b) next.own[a]! += w / 2;
      else next.links[a]!.set(b, (next.links[a]!.get(b) ?? 0) + w);
    }
  }
  return next;
}
