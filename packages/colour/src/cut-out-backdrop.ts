import type { LabD65 } from './lab.ts';
import { type LabPlanes, lengthOf } from './lab-planes.ts';

/** A smooth ground behind a thing, as terms over a picture of any size, and how far its own pixels stray from it (ΔE*ab). */
export interface SmoothGround {
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly spread: number;
  /** Share, 0..1, of the picture's border that is this ground. */
  readonly borderShare: number;
}

/** A smooth ground with its colour at every pixel. */
export interface Backdrop extends Pick<SmoothGround, 'spread' | 'borderShare'> {
  readonly planes: LabPlanes;
}

/** Terms at a place, x and y over −1..1: a plane of light with a bend to it, as from one lamp. */
const TERMS = 6;
/** A row of the sums: the terms, then L*, a* and b*. */
const ROW = TERMS + 3;

/** What x or y of a pixel is multiplied by to reach from −1 to 1. */
function reachOf(length: number): number {
  return 2 / Math.max(1, length - 1);
}

/** A smooth ground with its colour at every pixel, written into `planes`. */
export function backdropInto(planes: LabPlanes, ground: SmoothGround): Backdrop {
  const { width, height } = planes;
  fill(planes.L, ground.L, width, height);
  fill(planes.a, ground.a, width, height);
  fill(planes.b, ground.b, width, height);
  return { planes, spread: ground.spread, borderShare: ground.borderShare };
}

function fill(plane: Float32Array, terms: Float64Array, width: number, height: number): void {
  const [c0 = 0, cu = 0, cv = 0, cuu = 0, cuv = 0, cvv = 0] = terms;
  const [across, down] = [reachOf(width), reachOf(height)];
  for (let y = 0, i = 0; y < height; y++) {
    const v = down * y - 1;
    const base = c0 + cv * v + cvv * v * v;
    const slope = cu + cuv * v;
    for (let x = 0; x < width; x++, i++) {
      const u = across * x - 1;
      plane[i] = base + (slope + cuu * u) * u;
    }
  }
}

/** Solves the symmetric system of the sums, given from their diagonal on, by elimination; three right-hand sides. */
function solved(sums: Float64Array): [Float64Array, Float64Array, Float64Array] {
  for (let r = 1; r < TERMS; r++) for (let c = 0; c < r; c++) sums[r * ROW + c] = sums[c * ROW + r]!;
  for (let i = 0; i < TERMS; i++) {
    // A trace on the diagonal keeps a term that the pixels do not speak of at nothing.
    sums[i * ROW + i]! += 1e-6;
    for (let r = i + 1; r < TERMS; r++) {
      const factor = sums[r * ROW + i]! / sums[i * ROW + i]!;
      for (let c = i; c < ROW; c++) sums[r * ROW + c]! -= factor * sums[i * ROW + c]!;
    }
  }
  const side = (s: number): Float64Array => {
    const found = new Float64Array(TERMS);
    for (let i = TERMS - 1; i >= 0; i--) {
      let value = sums[i * ROW + TERMS + s]!;
      for (let c = i + 1; c < TERMS; c++) value -= sums[i * ROW + c]! * found[c]!;
      found[i] = value / sums[i * ROW + i]!;
    }
    return found;
  };
  return [side(0), side(1), side(2)];
}

const ROUNDS = 5;
/** Rounds from a ground that is nearly this one. */
const ROUNDS_ON = 2;
// ΔE*ab past which a pixel has half a say in what the ground is: more than grain, less than a thing.
const HALF_SAY = 4;
const GROUND_WITHIN = 1.6;

/** ΔE*ab within which a pixel is this ground; a ground that varies has more room, up to a point. */
export function nearOf({ spread }: { readonly spread: number }): number {
  return GROUND_WITHIN + 3 * Math.min(spread, 2);
}

/** Pixels to fit a ground through: where each is over −1..1, and its colour. */
interface Points {
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

function pointsOf({ width, height, L, a, b }: LabPlanes, places: readonly number[]): Points {
  const [across, down] = [reachOf(width), reachOf(height)];
  const n = places.length;
  const points = {
    u: new Float64Array(n),
    v: new Float64Array(n),
    L: new Float32Array(n),
    a: new Float32Array(n),
    b: new Float32Array(n),
  };
  for (let p = 0; p < n; p++) {
    const i = places[p]!;
    const x = i % width;
    points.u[p] = across * x - 1;
    points.v[p] = (down * (i - x)) / width - 1;
    points.L[p] = L[i]!;
    points.a[p] = a[i]!;
    points.b[p] = b[i]!;
  }
  return points;
}

function valueAt(terms: Float64Array, u: number, v: number): number {
  return terms[0]! + terms[1]! * u + terms[2]! * v + terms[3]! * u * u + terms[4]! * u * v + terms[5]! * v * v;
}

/** The ground's colour at a place, u and v over −1..1. */
export function groundAt({ L, a, b }: SmoothGround, u: number, v: number): LabD65 {
  return { L: valueAt(L, u, v), a: valueAt(a, u, v), b: valueAt(b, u, v) };
}

/** Writes, as colour `at`, the ground's colour at pixel `i` of a picture of that size. */
export function groundInto(
  into: LabPlanes,
  at: number,
  { L, a, b }: SmoothGround,
  i: number,
  { width, height }: Pick<LabPlanes, 'width' | 'height'>,
): void {
  const x = i % width;
  const u = reachOf(width) * x - 1;
  const v = (reachOf(height) * (i - x)) / width - 1;
  into.L[at] = valueAt(L, u, v);
  into.a[at] = valueAt(a, u, v);
  into.b[at] = valueAt(b, u, v);
}

/** How far each point is from the ground, ΔE*ab. */
function missesOf({ u, v, L, a, b }: Points, [ofL, ofA, ofB]: readonly Float64Array[]): Float64Array {
  const misses = new Float64Array(u.length);
  for (let p = 0; p < misses.length; p++) {
    const x = u[p]!;
    const y = v[p]!;
    misses[p] = lengthOf(L[p]! - valueAt(ofL!, x, y), a[p]! - valueAt(ofA!, x, y), b[p]! - valueAt(ofB!, x, y));
  }
  return misses;
}

/** The sums of weighted least squares; a point has half a say at a miss of `half`. */
function sumsOf({ u, v, L, a, b }: Points, misses: Float64Array, half: number): Float64Array {
  const sums = new Float64Array(TERMS * ROW);
  const terms = new Float64Array(ROW);
  terms[0] = 1;
  for (let p = 0; p < misses.length; p++) {
    terms[1] = u[p]!;
    terms[2] = v[p]!;
    terms[3] = terms[1]! * terms[1]!;
    terms[4] = terms[1]! * terms[2]!;
    terms[5] = terms[2]! * terms[2]!;
    terms[6] = L[p]!;
    terms[7] = a[p]!;
    terms[8] = b[p]!;
    const miss = (misses[p]! / half) ** 2;
    const say = 1 / (1 + miss * miss);
    for (let r = 0; r < TERMS; r++) {
      const weighted = say * terms[r]!;
      for (let c = r; c < ROW; c++) sums[r * ROW + c]! += weighted * terms[c]!;
    }
  }
  return sums;
}

/**
 * The smooth ground through the pixels at `places` (indices), strays having little say: from their median, or from
 * a ground that is nearly theirs, by weighted least squares, again and again. `borderShare` is the share of those places
 * that lie on it.
 */
export function groundThrough(planes: LabPlanes, places: readonly number[], from?: SmoothGround): SmoothGround {
  const points = pointsOf(planes, places);
  const flatOf = (side: Float32Array): Float64Array => {
    const terms = new Float64Array(TERMS);
    terms[0] = side.slice().sort()[side.length >> 1] ?? 0;
    return terms;
  };
  let found: readonly Float64Array[] =
    from === undefined ? [flatOf(points.L), flatOf(points.a), flatOf(points.b)] : [from.L, from.a, from.b];
  for (let round = from === undefined ? 0 : ROUNDS - ROUNDS_ON; round < ROUNDS; round++) {
    found = solved(sumsOf(points, missesOf(points, found), round === 0 ? 4 * HALF_SAY : HALF_SAY));
  }
  const misses = missesOf(points, found);
  const spread = spreadOf(misses);
  const within = nearOf({ spread });
  const on = misses.filter((miss) => miss < within).length;
  const [L, a, b] = found as readonly [Float64Array, Float64Array, Float64Array];
  return { L, a, b, spread, borderShare: on / Math.max(1, misses.length) };
}

/** How far a ground's own pixels stray, of the misses (ΔE*ab) of pixels that are most of them its own. */
export function spreadOf(misses: Float64Array): number {
  const near = misses.filter((miss) => miss < 3 * HALF_SAY);
  return Math.sqrt(near.reduce((sum, miss) => sum + miss * miss, 0) / Math.max(1, near.length));
}
