/** What moves from swatch `from` to swatch `to`, as a share of all that is moved. */
export interface Move {
  readonly from: number;
  readonly to: number;
  readonly share: number;
}

/**
 * The least mean cost of moving one heap's shares onto another's, and what moves where: costs as rows of `to.length`,
 * 0 or more. Where the totals differ the smaller is moved (Y. Rubner, C. Tomasi, L. Guibas, "The earth mover's distance as
 * a metric for image retrieval", IJCV 40, 2000). Exact: shortest paths one after another, with potentials (Edmonds, Karp).
 */
export function moversDistance(
  costs: ArrayLike<number>,
  from: ArrayLike<number>,
  to: ArrayLike<number>,
): { distance: number; moves: Move[] } {
  const [m, n] = [from.length, to.length];
  if (costs.length < m * n) throw new RangeError(`moversDistance: ${costs.length} costs for ${m} by ${n} swatches`);
  const supply = Float64Array.from(from);
  const demand = Float64Array.from(to);
  const total = Math.min(sumOf(supply), sumOf(demand));
  if (!(total > 0)) throw new RangeError('moversDistance: a heap is empty, needs a share over 0');
  const none = 1e-12 * total;
  const flow = new Float64Array(m * n);
  const price = new Float64Array(m + n);
  const far = new Float64Array(m + n);
  const via = new Int32Array(m + n);
  const done = new Uint8Array(m + n);
  for (let left = total; left > none; ) {
    for (let v = 0; v < m + n; v++) {
      far[v] = v < m && supply[v]! > none ? 0 : Number.POSITIVE_INFINITY;
      via[v] = -1;
      done[v] = 0;
    }
    const end = nearestDemand();
    if (end < 0) break;
    for (let v = 0; v < m + n; v++) price[v]! += Math.min(far[v]!, far[end]!);
    let amount = demand[end - m]!;
    for (let v = end; ; v = via[v]!) {
      if (via[v]! < 0) {
        amount = Math.min(amount, supply[v]!);
        break;
      }
      if (v < m) amount = Math.min(amount, flow[v * n + via[v]! - m]!);
    }
    for (let v = end; ; v = via[v]!) {
      const before = via[v]!;
      if (before < 0) {
        supply[v]! -= amount;
        break;
      }
      if (v >= m) flow[before * n + v - m]! += amount;
      else flow[v * n + before - m]! -= amount;
    }
    demand[end - m]! -= amount;
    left -= amount;
  }
  let cost = 0;
  const moves: Move[] = [];
  for (let i = 0; i < m; i++)
    for (let j = 0; j < n; j++) {
      const moved = flow[i * n + j]!;
      if (moved <= none) continue;
      cost += moved * costs[i * n + j]!;
      moves.push({ from: i, to: j, share: moved / total });
    }
  return { distance: cost / total, moves };

  /** Dijkstra over reduced costs to the nearest swatch that still wants something. */
  function nearestDemand(): number {
    for (;;) {
      let v = -1;
      for (let u = 0; u < m + n; u++) if (!done[u] && far[u]! < (v < 0 ? Number.POSITIVE_INFINITY : far[v]!)) v = u;
      if (v < 0 || (v >= m && demand[v - m]! > none)) return v;
      done[v] = 1;
      if (v < m) {
        for (let j = 0; j < n; j++) relax(v, m + j, costs[v * n + j]!);
      } else for (let i = 0; i < m; i++) if (flow[i * n + v - m]! > none) relax(v, i, -costs[i * n + v - m]!);
    }
  }

  function relax(v: number, u: number, cost: number): void {
    const way = far[v]! + Math.max(0, cost + price[v]! - price[u]!);
    if (done[u] || way >= far[u]!) return;
    far[u] = way;
    via[u] = v;
  }
}

function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** A bound the mover's distance of two heaps of one total is never under: each swatch moved to the nearest of the other heap. */
export function leastDistance(costs: ArrayLike<number>, from: ArrayLike<number>, to: ArrayLike<number>): number {
  let there = 0;
  let back = 0;
  for (let i = 0; i < from.length; i++) {
    let least = Number.POSITIVE_INFINITY;
    for (let j = 0; j < to.length; j++) least = Math.min(least, costs[i * to.length + j]!);
    there += from[i]! * least;
  }
  for (let j = 0; j < to.length; j++) {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < from.length; i++) least = Math.min(least, costs[i * to.length + j]!);
    back += to[j]! * least;
  }
  return Math.max(there, back);
}
