/** The members of each label that is not −1, in order. */
export function membersOf(labels: Int32Array): Int32Array[] {
  const lists = new Map<number, number[]>();
  for (const [i, label] of labels.entries()) {
    if (label < 0) continue;
    const list = lists.get(label);
    if (list) list.push(i);
    else lists.set(label, [i]);
  }
  return [...lists].sort(([a], [b]) => a - b).map(([, list]) => Int32Array.from(list));
}

/**
 * The best Jaccard each group reaches with any group found among some of the things (`rows`): shared over either, counted
 * among those things (C. Hennig, "Cluster-wise assessment of cluster stability", Comput. Stat. Data Anal. 52, 2007).
 */
export function bestOverlap(groups: readonly Int32Array[], rows: Int32Array, found: readonly Int32Array[], n: number) {
  const at = new Int32Array(n).fill(-1);
  for (const [i, row] of rows.entries()) at[row] = i;
  const sizes = found.map((labels) => {
    const size = new Map<number, number>();
    for (const label of labels) size.set(label, (size.get(label) ?? 0) + 1);
    return size;
  });
  return groups.map((members) => {
    const here = [...members].map((row) => at[row]!).filter((i) => i >= 0);
    let best = 0;
    for (const [f, labels] of found.entries()) {
      const shared = new Map<number, number>();
      for (const i of here) if (labels[i]! >= 0) shared.set(labels[i]!, (shared.get(labels[i]!) ?? 0) + 1);
      for (const [label, both] of shared) best = Math.max(best, both / (here.length + sizes[f]!.get(label)! - both));
    }
    return best;
  });
}
