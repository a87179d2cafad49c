// One start from the farthest colours, which finds the small bright field, and three drawn by weight (k-means++,
// Arthur & Vassilvitskii 2007), which find the large ones. Eight more starts gained under 1 % on ten pictures.
const STARTS = 4;
// A few rounds tell which start is best; that one alone is taken to rest.
const TRIAL_ROUNDS = 8;
const ROUNDS = 40;

/**
 * At most k centres, as triples, of weighted points in space, such that the weighted distance of all points to their
 * nearest centre is small; the best of four starts, alike for the same seed. Points are distinct triples.
 */
export function mediansOf(points: Float64Array, counts: Float64Array, k: number, seed: number): Float64Array {
  const random = randomFrom(seed);
  let best: Settled = { centres: new Float64Array(0), error: Number.POSITIVE_INFINITY };
  for (let start = 0; start < STARTS; start++) {
    const found = settled(startOf(points, counts, k, start === 0 ? null : random), points, counts, TRIAL_ROUNDS);
    if (found.error < best.error) best = found;
  }
  return settled(best.centres, points, counts, ROUNDS).centres;
}

function squareBetween(p: Float64Array, i: number, q: Float64Array, j: number): number {
  const x = p[i]! - q[j]!;
  const y = p[i + 1]! - q[j + 1]!;
  const z = p[i + 2]! - q[j + 2]!;
  return x * x + y * y + z * z;
}

/** k starting centres: the commonest cell and then the farthest, or drawn with `random`, farther the likelier. */
function startOf(points: Float64Array, counts: Float64Array, k: number, random: (() => number) | null): Float64Array {
  const n = counts.length;
  const size = Math.min(k, n);
  const centres = new Float64Array(size * 3);
  const nearest = new Float64Array(n).fill(1);
  const drawnOf = (sample: number): number => {
    let rest = sample * nearest.reduce((sum, square, i) => sum + square * counts[i]!, 0);
    for (let i = 0; i < n; i++) {
      rest -= nearest[i]! * counts[i]!;
      if (rest < 0) return i;
    }
    return n - 1;
  };
  const farthestOf = (): number => {
    let at = 0;
    for (let i = 1; i < n; i++) {
      if (nearest[i]! * Math.sqrt(counts[i]!) > nearest[at]! * Math.sqrt(counts[at]!)) at = i;
    }
    return at;
  };
  for (let c = 0; c < size; c++) {
    const chosen = random ? drawnOf(random()) : farthestOf();
    centres.set(points.subarray(chosen * 3, chosen * 3 + 3), c * 3);
    for (let i = 0; i < n; i++) {
      const square = squareBetween(points, i * 3, centres, c * 3);
      nearest[i] = c === 0 ? square : Math.min(nearest[i]!, square);
    }
  }
  return centres;
}

/** Index of the first value of the centre nearest to the point at index `at`. */
export function nearestCentreOf(points: Float64Array, at: number, centres: Float64Array): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let c = 0; c < centres.length; c += 3) {
    const square = squareBetween(points, at, centres, c);
    if (square < least) {
      least = square;
      best = c;
    }
  }
  return best;
}

interface Settled {
  readonly centres: Float64Array;
  readonly error: number;
}

/** Lloyd's rounds, at most so many, until the centres rest: each goes to its cells' median in space (Weiszfeld), so outliers pull little. */
function settled(start: Float64Array, points: Float64Array, counts: Float64Array, rounds: number): Settled {
  const centres = start.slice();
  let error = 0;
  for (let round = 0; round < rounds; round++) {
    const sums = new Float64Array((centres.length / 3) * 4);
    error = 0;
    for (let i = 0; i < counts.length; i++) {
      const at = i * 3;
      const c = nearestCentreOf(points, at, centres);
      const distance = Math.sqrt(squareBetween(points, at, centres, c));
      error += counts[i]! * distance;
      const weight = counts[i]! / Math.max(distance, 1);
      const into = (c / 3) * 4;
      sums[into]! += weight;
      sums[into + 1]! += weight * points[at]!;
      sums[into + 2]! += weight * points[at + 1]!;
      sums[into + 3]! += weight * points[at + 2]!;
    }
    let moved = 0;
    for (let c = 0; c < centres.length; c += 3) {
      const weight = sums[(c / 3) * 4]!;
      if (weight === 0) continue;
      for (let axis = 0; axis < 3; axis++) {
        const to = sums[(c / 3) * 4 + 1 + axis]! / weight;
        moved += (to - centres[c + axis]!) ** 2;
        centres[c + axis] = to;
      }
    }
    if (moved < 1e-3) break;
  }
  return { centres, error };
}

/** Seeded uniform numbers in [0, 1): mulberry32, public domain. */
function randomFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
