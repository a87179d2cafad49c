import { DATA_FROM, kernelOf, reserve } from './kernel.ts';
import type { LabD65 } from './lab.ts';

// CIEDE2000 with kL = kC = kH = 1 (ISO/CIE 11664-6), equation numbers of Sharma, Wu, Dalal, "The CIEDE2000
// Color-Difference Formula: Implementation Notes, Supplementary Test Data, and Mathematical Observations", Color
// Research & Application 30(1), 2005. No angle is taken: a hue stays a unit vector, so that cosines of sums become
// products. kernel/ciede2000.ts is the same, several pairs at once; both give the formula's figure to 1e-7 and better.

const CHROMA_25_TO_7TH = 6103515625;
const RADIANS = Math.PI / 180;
// (15) with its cosines of h − 30°, 3h + 6° and 4h − 63° opened into those of h, 3h and 4h.
const T_COS = 0.17 * Math.cos(30 * RADIANS);
const T_SIN = 0.17 * Math.sin(30 * RADIANS);
const T_COS3 = 0.32 * Math.cos(6 * RADIANS);
const T_SIN3 = 0.32 * Math.sin(6 * RADIANS);
const T_COS4 = 0.2 * Math.cos(63 * RADIANS);
const T_SIN4 = 0.2 * Math.sin(63 * RADIANS);
const COS_275 = Math.cos(275 * RADIANS);
const SIN_275 = Math.sin(275 * RADIANS);

/** −sin(2Δθ) of (16) and (21) for the unit vector (c, s) of the mean hue. */
function turnOf(c: number, s: number): number {
  // sin²((h̄' − 275°)/2). The formula as published does not wrap that difference: from 0° to 90° it is over 180°.
  const u = 0.5 - 0.5 * (c * COS_275 + s * SIN_275);
  if (u >= 0.75 || (c > 0 && s >= 0)) return 0;
  // exp(−((h̄' − 275°)/25°)²) is the 16th power of this, least squares over u to 0.75, past which it is under 1e-10.
  let q = -0.003078832126983143 * u - 0.0017056873000261628;
  q = q * u - 0.0011951065232488432;
  q = q * u - 0.03605430277925134;
  q = q * u + 0.42443824254578416;
  q = q * u - 1.3131225455062268;
  q = q * u + 1.0000000000113465;
  q *= q;
  q *= q;
  q *= q;
  q *= q;
  // sin(60° · q), odd, least squares over 0..1.
  const z = q * q;
  let sine = 0.000004060246577968802 * z - 0.0002738991585692666;
  sine = sine * z + 0.010494452760124201;
  sine = sine * z - 0.1913967607766422;
  return -q * (sine * z + 1.0471975507518705);
}

/** ΔE00 of two colours; C1 and C2 are their C*ab, which a caller with many pairs makes once a colour. */
export function differenceBetween(
  L1: number,
  a1: number,
  b1: number,
  C1: number,
  L2: number,
  a2: number,
  b2: number,
  C2: number,
): number {
  // (2)–(6) C'i
  const meanC = (C1 + C2) * 0.5;
  const meanC2 = meanC * meanC;
  const meanC7 = meanC2 * meanC2 * meanC2 * meanC;
  const stretch = 1.5 - 0.5 * Math.sqrt(meanC7 / (meanC7 + CHROMA_25_TO_7TH));
  const A1 = a1 * stretch;
  const A2 = a2 * stretch;
  const c1 = Math.sqrt(A1 * A1 + b1 * b1);
  const c2 = Math.sqrt(A2 * A2 + b2 * b2);
  // (10), (11), (14): ΔH'² = 2 (C'1 C'2 − dot), and the mean hue as the bisector, both free of cancellation
  const dot = A1 * A2 + b1 * b2;
  const cross = stretch * (a1 * b2 - a2 * b1);
  const x1 = A1 * c2;
  const x2 = A2 * c1;
  const y1 = b1 * c2;
  const y2 = b2 * c1;
  let x = x1 + x2;
  let y = y1 + y2;
  let deltaH = 0;
  if (dot >= 0) {
    const sum = c1 * c2 + dot;
    // Under this there is no chroma to speak of, and 2 over it is beyond a number.
    if (sum > 1e-200) deltaH = cross * Math.sqrt(2 / sum);
  } else {
    // Exactly opposite hues have no side of their own: the rule over [0°, 360°) takes h1 + 90° from h1 under 180°.
    const ahead = cross > 0 || (cross === 0 && (b1 > 0 || (b1 === 0 && a1 > 0)));
    deltaH = Math.sqrt(2 * (c1 * c2 - dot));
    if (!ahead) deltaH = -deltaH;
    x = ahead ? y2 - y1 : y1 - y2;
    y = ahead ? x1 - x2 : x2 - x1;
  }
  const length = Math.sqrt(x * x + y * y);
  const c = length > 0 ? x / length : 1;
  const s = length > 0 ? y / length : 0;
  // (15) by the multiple-angle formulas
  const cc = c * c;
  const cos2 = 2 * cc - 1;
  const sin2 = 2 * s * c;
  const T =
    1 -
    T_COS * c -
    T_SIN * s +
    0.24 * cos2 +
    T_COS3 * c * (4 * cc - 3) -
    T_SIN3 * s * (4 * cc - 1) -
    T_COS4 * (2 * cos2 * cos2 - 1) -
    T_SIN4 * 2 * sin2 * cos2;
  // (12), (13), (16)–(22)
  const mc = (c1 + c2) * 0.5;
  const turn = turnOf(c, s);
  let RT = 0;
  if (turn !== 0) {
    const mc2 = mc * mc;
    const mc7 = mc2 * mc2 * mc2 * mc;
    RT = 2 * Math.sqrt(mc7 / (mc7 + CHROMA_25_TO_7TH)) * turn;
  }
  const fromMid = (L1 + L2) * 0.5 - 50;
  const square = fromMid * fromMid;
  const root = Math.sqrt(20 + square);
  const X = ((L2 - L1) * root) / (root + 0.015 * square);
  const SC = 1 + 0.045 * mc;
  const SH = 1 + 0.015 * mc * T;
  const both = 1 / (SC * SH);
  const Y = (c2 - c1) * SH * both;
  const Z = deltaH * SC * both;
  // R_T's term can take a hair more than is there.
  return Math.sqrt(Math.max(0, X * X + Y * Y + Z * (Z + RT * Y)));
}

/** ΔE00 of two CIELAB D65 colours, the same either way round, 0 for a colour with itself (ISO/CIE 11664-6; Sharma 2005). */
export function deltaE2000(a: LabD65, b: LabD65): number {
  return differenceBetween(
    a.L,
    a.a,
    a.b,
    Math.sqrt(a.a * a.a + a.b * a.b),
    b.L,
    b.a,
    b.b,
    Math.sqrt(b.a * b.a + b.b * b.b),
  );
}

// Below this many, copying in and out costs more than two lanes gain.
const FEW = 64;

/**
 * ΔE00 of n CIELAB D65 colours, laid as L, a, b triples, to one reference: n figures in f64, in `out` when it is given.
 * RangeError when the triples are not whole or `out` is shorter than n.
 */
export function differences(
  labs: Float32Array | Float64Array,
  reference: LabD65,
  out: Float64Array = new Float64Array(Math.floor(labs.length / 3)),
): Float64Array {
  const n = labs.length / 3;
  if (!Number.isInteger(n)) throw new RangeError(`differences: ${labs.length} values are not triples of L, a, b`);
  if (out.length < n) throw new RangeError(`differences: out holds ${out.length}, needs ${n}`);
  if (n < FEW || !inVectors(labs, reference, n, out)) inOneLane(labs, reference, n, out);
  return out;
}

function inOneLane(labs: Float32Array | Float64Array, { L, a, b }: LabD65, n: number, out: Float64Array): void {
  const C = Math.sqrt(a * a + b * b);
  for (let i = 0, at = 0; i < n; i++, at += 3) {
    const a1 = labs[at + 1]!;
    const b1 = labs[at + 2]!;
    out[i] = differenceBetween(labs[at]!, a1, b1, Math.sqrt(a1 * a1 + b1 * b1), L, a, b, C);
  }
}

function inVectors(labs: Float32Array | Float64Array, { L, a, b }: LabD65, n: number, out: Float64Array): boolean {
  const kernel = kernelOf();
  if (!kernel) return false;
  // Each colour is a work of one swatch that is all of it, so that its mean is the difference.
  const even = n + (n & 1);
  const size = 4 + 8 * even;
  reserve(kernel, 8 * size);
  const heap = new Float64Array(kernel.memory.buffer, DATA_FROM, size);
  heap.set([L, a, b, Math.sqrt(a * a + b * b)]);
  for (let i = 0, at = 0; i < n; i++, at += 3) {
    const a1 = labs[at + 1]!;
    const b1 = labs[at + 2]!;
    heap[4 + i] = labs[at]!;
    heap[4 + even + i] = a1;
    heap[4 + 2 * even + i] = b1;
    heap[4 + 3 * even + i] = Math.sqrt(a1 * a1 + b1 * b1);
    heap[4 + 4 * even + i] = 1;
  }
  const plane = (index: number): number => DATA_FROM + 8 * (4 + index * even);
  kernel.rowsF64(DATA_FROM, 1, plane(0), 1, even, 0, plane(5), plane(6), plane(7));
  out.set(heap.subarray(4 + 5 * even, 4 + 5 * even + n));
  return true;
}
