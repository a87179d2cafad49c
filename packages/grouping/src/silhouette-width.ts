import type { Distance } from './mixed-distance.ts';

/**
 * How well n things lie in their parts, −1 to 1, the mean of every thing's (b − a)/max(a, b): a its mean distance to its own
 * part, b to the nearest other; 0 for one alone. P. J. Rousseeuw, "Silhouettes", J. Comput. Appl. Math. 20, 1987.
 */
export function silhouetteWidth(parts: Int32Array, distance: Distance): number {
  const n = parts.length;
  const count = new Int32Array(Math.max(...parts) + 1);
  for (const part of parts) count[part]!++;
  let total = 0;
  for (let i = 0; i < n; i++) {
    const sum = new Float64Array(count.length);
    for (let j = 0; j < n; j++) if (j !== i) sum[parts[j]!]! += distance(i, j);
    const own = parts[i]!;
    if (count[own]! < 2) continue;
    const a = sum[own]! / (count[own]! - 1);
    let b = Number.POSITIVE_INFINITY;
    for (let part = 0; part < count.length; part++)
      if (part !== own && count[part]! > 0) b = Math.min(b, sum[part]! / count[part]!);
    if (b < Number.POSITIVE_INFINITY) total += (b - a) / Math.max(a, b);
  }
  return total / n;
}
