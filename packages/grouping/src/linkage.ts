import type { Distance } from './mixed-distance.ts';

export type Linkage = 'single' | 'complete' | 'average' | 'ward';

/** n − 1 joinings, lowest first: rows under n are things, n + s is what step s made. */
export interface Joining {
  readonly one: number;
  readonly other: number;
  readonly height: number;
}

/** What G. N. Lance and W. T. Williams (1967) make of two distances to a joined pair; ward is Ward.D2 (Murtagh, Legendre 2014). */
const joined: Record<Linkage, (a: number, b: number, ab: number, na: number, nb: number, nc: number) => number> = {
  single: (a, b) => Math.min(a, b),
  complete: (a, b) => Math.max(a, b),
  average: (a, b, _ab, na, nb) => (na * a + nb * b) / (na + nb),
  ward: (a, b, ab, na, nb, nc) => Math.sqrt(((na + nc) * a * a + (nb + nc) * b * b - nc * ab * ab) / (na + nb + nc)),
};

/** The joinings of n things by a linkage, for small pools: n² distances held at once, nearest-neighbour chain (Murtagh 1983). */
export function joiningsOf(n: number, distance: Distance, linkage: Linkage): Joining[] {
  const apart = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) apart[i * n + j] = apart[j * n + i] = distance(i, j);
  const size = new Int32Array(n).fill(1);
  const found: Joining[] = [];
  const chain: number[] = [];
  const nearestTo = (a: number): number => {
    const before = chain.at(-2) ?? -1;
    let best = before;
    for (let c = 0; c < n; c++)
      if (c !== a && size[c]! > 0 && (best < 0 || apart[a * n + c]! < apart[a * n + best]!)) best = c;
    return best;
  };
  while (found.length < n - 1) {
    if (chain.length === 0) chain.push(size.findIndex((s) => s > 0));
    const a = chain.at(-1)!;
    const b = nearestTo(a);
    if (b !== chain.at(-2)) {
      chain.push(b);
      continue;
    }
    chain.length -= 2;
    const ab = apart[a * n + b]!;
    found.push({ one: a, other: b, height: ab });
    for (let c = 0; c < n; c++)
      if (c !== a && c !== b && size[c]! > 0)
        apart[b * n + c] = apart[c * n + b] = joined[linkage](
          apart[a * n + c]!,
          apart[b * n + c]!,
          ab,
          size[a]!,
          size[b]!,
          size[c]!,
        );
    size[b]! += size[a]!;
    size[a] = 0;
  }
  return named(found, n);
}

/** The chain finds joinings out of order and by a thing of each side; here they rise, and name what they join. */
function named(found: Joining[], n: number): Joining[] {
  const at = Int32Array.from({ length: n }, (_, i) => i);
  const parent = Int32Array.from({ length: n }, (_, i) => i);
  const top = (i: number): number => (parent[i] === i ? i : top(parent[i]!));
  return found
    .sort((x, y) => x.height - y.height)
    .map(({ one, other, height }, step) => {
      const [a, b] = [top(one), top(other)];
      const joining = { one: at[a]!, other: at[b]!, height };
      parent[a] = b;
      at[b] = n + step;
      return joining;
    });
}

/** The part, 0 to parts − 1, each of n things is in when all joinings but the last parts − 1 are made. */
export function cutInto(joinings: readonly Joining[], parts: number): Int32Array {
  const n = joinings.length + 1;
  if (!(parts >= 1 && parts <= n)) throw new RangeError(`cutInto: ${parts} parts of ${n} things`);
  const label = new Int32Array(2 * n - 1).fill(-1);
  let next = 0;
  for (let step = n - 2; step >= n - parts; step--) label[n + step] = -2;
  for (let step = n - 2; step >= 0; step--) {
    const { one, other } = joinings[step]!;
    const own = label[n + step]!;
    const passed = own === -1 ? next++ : own;
    for (const side of [one, other]) if (label[side] !== -2) label[side] = passed === -2 ? -1 : passed;
  }
  return label.slice(0, n).map((l) => (l < 0 ? next++ : l));
}
