import { labD65FromLinear, linearFromSrgb } from './spaces.ts';

/** A picture's colours in three planes, CIELAB D65, row by row. */
export interface LabPlanes {
  readonly width: number;
  readonly height: number;
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** A smooth ground that fills the picture behind a thing, and how far its own pixels stray from it (ΔE*ab). */
export interface Backdrop {
  readonly planes: LabPlanes;
  readonly spread: number;
  /** Share, 0..1, of the picture's border that is this ground. */
  readonly borderShare: number;
}

/** Length of a step in a plane or in space; Math.hypot is several times slower, and nothing here can overflow. */
export function lengthOf(x: number, y: number, z = 0): number {
  return Math.sqrt(x * x + y * y + z * z);
}

const LIGHT = Float64Array.from({ length: 256 }, (_, channel) => linearFromSrgb(channel));

/** sRGB bytes with alpha as CIELAB planes; alpha is not heeded. */
export function labPlanesOf(data: ArrayLike<number>, width: number, height: number): LabPlanes {
  const area = width * height;
  const planes = { width, height, L: new Float32Array(area), a: new Float32Array(area), b: new Float32Array(area) };
  for (let i = 0, at = 0; i < area; i++, at += 4) {
    const lab = labD65FromLinear(LIGHT[data[at]!]!, LIGHT[data[at + 1]!]!, LIGHT[data[at + 2]!]!);
    planes.L[i] = lab.L;
    planes.a[i] = lab.a;
    planes.b[i] = lab.b;
  }
  return planes;
}

/** Mean of each 3 × 3 neighbourhood, smaller at the border: the grain goes, an edge stays an edge. */
export function softenedOf({ width, height, L, a, b }: LabPlanes): LabPlanes {
  const soft = (plane: Float32Array): Float32Array => {
    const rows = new Float32Array(plane.length);
    const out = new Float32Array(plane.length);
    for (let y = 0, i = 0; y < height; y++) {
      for (let x = 0; x < width; x++, i++) {
        const left = plane[x > 0 ? i - 1 : i]!;
        const right = plane[x < width - 1 ? i + 1 : i]!;
        rows[i] = (left + plane[i]! + right) / 3;
      }
    }
    for (let y = 0, i = 0; y < height; y++) {
      const up = y > 0 ? width : 0;
      const down = y < height - 1 ? width : 0;
      for (let x = 0; x < width; x++, i++) out[i] = (rows[i - up]! + rows[i]! + rows[i + down]!) / 3;
    }
    return out;
  };
  return { width, height, L: soft(L), a: soft(a), b: soft(b) };
}

/** Terms of the ground at a place, x and y over −1..1: a plane of light with a bend to it, as from one lamp. */
const TERMS = 6;

function termsAt(x: number, y: number, width: number, height: number, into: Float64Array): void {
  const u = (2 * x) / Math.max(1, width - 1) - 1;
  const v = (2 * y) / Math.max(1, height - 1) - 1;
  into[0] = 1;
  into[1] = u;
  into[2] = v;
  into[3] = u * u;
  into[4] = u * v;
  into[5] = v * v;
}

/** The ground of one plane at every pixel, row by row. */
function fill(
  plane: Float32Array,
  [c0 = 0, cu = 0, cv = 0, cuu = 0, cuv = 0, cvv = 0]: Float64Array,
  width: number,
  height: number,
): void {
  for (let y = 0, i = 0; y < height; y++) {
    const v = (2 * y) / Math.max(1, height - 1) - 1;
    const base = c0 + cv * v + cvv * v * v;
    const slope = cu + cuv * v;
    for (let x = 0; x < width; x++, i++) {
      const u = (2 * x) / Math.max(1, width - 1) - 1;
      plane[i] = base + (slope + cuu * u) * u;
    }
  }
}

/** Solves the symmetric system of the sums by elimination; three right-hand sides. */
function solved(sums: Float64Array[]): Float64Array[] {
  for (let i = 0; i < TERMS; i++) {
    // A trace on the diagonal keeps a term that the pixels do not speak of at nothing.
    sums[i]![i]! += 1e-6;
    for (let r = i + 1; r < TERMS; r++) {
      const factor = sums[r]![i]! / sums[i]![i]!;
      for (let c = i; c < TERMS + 3; c++) sums[r]![c]! -= factor * sums[i]![c]!;
    }
  }
  const found = [0, 1, 2].map(() => new Float64Array(TERMS));
  for (let i = TERMS - 1; i >= 0; i--) {
    found.forEach((side, s) => {
      let value = sums[i]![TERMS + s]!;
      for (let c = i + 1; c < TERMS; c++) value -= sums[i]![c]! * side[c]!;
      side[i] = value / sums[i]![i]!;
    });
  }
  return found;
}

const ROUNDS = 5;
// ΔE*ab past which a pixel has half a say in what the ground is: more than grain, less than a thing.
const HALF_SAY = 4;
const GROUND_WITHIN = 1.6;

/** ΔE*ab within which a pixel is this ground; a ground that varies has more room, up to a point. */
export function nearOf({ spread }: { readonly spread: number }): number {
  return GROUND_WITHIN + 3 * Math.min(spread, 2);
}

/**
 * The smooth ground through the pixels at `places` (indices), strays having little say: from their median by weighted
 * least squares, again and again. `borderShare` is the share of those places that lie on it.
 */
export function backdropThrough(planes: LabPlanes, places: readonly number[]): Backdrop {
  const { width, height } = planes;
  const sides = [planes.L, planes.a, planes.b];
  const medianOf = (side: Float32Array): number =>
    places.map((i) => side[i]!).sort((p, q) => p - q)[places.length >> 1] ?? 0;
  let found: Float64Array[] = sides.map((side) => Float64Array.of(medianOf(side), 0, 0, 0, 0, 0));
  const terms = new Float64Array(TERMS);
  const valueAt = (side: Float64Array): number => {
    let value = 0;
    for (let t = 0; t < TERMS; t++) value += side[t]! * terms[t]!;
    return value;
  };
  const missAt = (i: number): number => {
    termsAt(i % width, Math.floor(i / width), width, height, terms);
    return lengthOf(
      sides[0]![i]! - valueAt(found[0]!),
      sides[1]![i]! - valueAt(found[1]!),
      sides[2]![i]! - valueAt(found[2]!),
    );
  };
  for (let round = 0; round < ROUNDS; round++) {
    const sums = Array.from({ length: TERMS }, () => new Float64Array(TERMS + 3));
    for (const i of places) {
      const miss = missAt(i) / (round === 0 ? 4 * HALF_SAY : HALF_SAY);
      const say = 1 / (1 + miss ** 4);
      for (let r = 0; r < TERMS; r++) {
        const row = sums[r]!;
        const weighted = say * terms[r]!;
        for (let c = 0; c < TERMS; c++) row[c]! += weighted * terms[c]!;
        for (let s = 0; s < 3; s++) row[TERMS + s]! += weighted * sides[s]![i]!;
      }
    }
    found = solved(sums);
  }
  const misses = places.map(missAt).sort((p, q) => p - q);
  const near = misses.filter((miss) => miss < 3 * HALF_SAY);
  const spread = Math.sqrt(near.reduce((sum, miss) => sum + miss * miss, 0) / Math.max(1, near.length));
  const on = misses.filter((miss) => miss < nearOf({ spread })).length;
  const area = width * height;
  const ground = { width, height, L: new Float32Array(area), a: new Float32Array(area), b: new Float32Array(area) };
  fill(ground.L, found[0]!, width, height);
  fill(ground.a, found[1]!, width, height);
  fill(ground.b, found[2]!, width, height);
  return { planes: ground, spread, borderShare: on / Math.max(1, places.length) };
}
