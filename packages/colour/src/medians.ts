// One start from the farthest colours, which finds the small bright field, and three drawn by weight (k-means++,
// Arthur & Vassilvitskii 2007), which find the large ones. Eight more starts gained under 1 % on ten pictures.
const STARTS = 4;
// Starts are tried on the points gathered into cubes of this side, a fifth of them or fewer: they tell which start is
// best, and lead near its end; a few rounds over all the points then end it.
const CUBE = 6;
const TRIAL_ROUNDS = 8;
const LED_ROUNDS = 12;
const ROUNDS = 5;

interface Weighted {
  readonly points: Float64Array;
  readonly counts: Float64Array;
}

/**
 * At most k centres, as triples, of weighted points in space, such that the weighted distance of all points to their
 * nearest centre is small; the best of four starts, alike for the same seed. Points are distinct triples.
 */
export function mediansOf(points: Float64Array, counts: Float64Array, k: number, seed: number): Float64Array {
  const random = randomFrom(seed);
  const all = { points, counts };
  const gathered = gatheredOf(all);
  // Few points are as quickly told apart as they are; and no centre may be lost to the gathering.
  const some = gathered.counts.length < 4 * k ? all : gathered;
  let best: Settled = { centres: new Float64Array(0), error: Number.POSITIVE_INFINITY };
  for (let start = 0; start < STARTS; start++) {
    const found = settled(startOf(some, k, start === 0 ? null : random), some, TRIAL_ROUNDS);
    if (found.error < best.error) best = found;
  }
  return settled(settled(best.centres, some, LED_ROUNDS).centres, all, ROUNDS).centres;
}

/** The points gathered into cubes: of each cube that holds any, their weighted mean and their count. */
function gatheredOf({ points, counts }: Weighted): Weighted {
  const low = [0, 1, 2].map((axis) => {
    let least = Number.POSITIVE_INFINITY;
    for (let at = axis; at < points.length; at += 3) least = Math.min(least, points[at]!);
    return least;
  });
  const cubes = new Map<number, number>();
  const sums: number[] = [];
  for (let i = 0, at = 0; i < counts.length; i++, at += 3) {
    const [x, y, z] = [points[at]!, points[at + 1]!, points[at + 2]!];
    // 10 bits an axis hold far more than any colour space is wide.
    const key =
      (Math.floor((x - low[0]!) / CUBE) << 20) |
      (Math.floor((y - low[1]!) / CUBE) << 10) |
      Math.floor((z - low[2]!) / CUBE);
    let into = cubes.get(key);
    if (into === undefined) {
      into = sums.length;
      cubes.set(key, into);
      sums.push(0, 0, 0, 0);
    }
    const n = counts[i]!;
    sums[into]! += n;
    sums[into + 1]! += n * x;
    sums[into + 2]! += n * y;
    sums[into + 3]! += n * z;
  }
  const gathered = { points: new Float64Array((sums.length / 4) * 3), counts: new Float64Array(sums.length / 4) };
  for (let c = 0; c < gathered.counts.length; c++) {
    const n = sums[c * 4]!;
    gathered.counts[c] = n;
    for (let axis = 0; axis < 3; axis++) gathered.points[c * 3 + axis] = sums[c * 4 + 1 + axis]! / n;
  }
  return gathered;
}

function squareBetween(p: Float64Array, i: number, q: Float64Array, j: number): number {
  const x = p[i]! - q[j]!;
  const y = p[i + 1]! - q[j + 1]!;
  const z = p[i + 2]! - q[j + 2]!;
  return x * x + y * y + z * z;
}

/** k starting centres: the commonest cell and then the farthest, or drawn with `random`, farther the likelier. */
function startOf({ points, counts }: Weighted, k: number, random: (() => number) | null): Float64Array {
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
function settled(start: Float64Array, { points, counts }: Weighted, rounds: number): Settled {
  const centres = start.slice();
  const sums = new Float64Array((centres.length / 3) * 4);
  let error = 0;
  for (let round = 0; round < rounds; round++) {
    sums.fill(0);
    error = 0;
    for (let i = 0, at = 0; i < counts.length; i++, at += 3) {
      const x = points[at]!;
      const y = points[at + 1]!;
      const z = points[at + 2]!;
      let nearest = 0;
      let least = Number.POSITIVE_INFINITY;
      for (let c = 0; c < centres.length; c += 3) {
        const dx = x - centres[c]!;
        const dy = y - centres[c + 1]!;
        const dz = z - centres[c + 2]!;
        const square = dx * dx + dy * dy + dz * dz;
        if (square < least) {
          least = square;
          nearest = c;
        }
      }
      const distance = Math.sqrt(least);
      const n = counts[i]!;
      error += n * distance;
      const weight = distance > 1 ? n / distance : n;
      const into = (nearest / 3) * 4;
      sums[into]! += weight;
      sums[into + 1]! += weight * x;
      sums[into + 2]! += weight * y;
      sums[into + 3]! += weight * z;
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
