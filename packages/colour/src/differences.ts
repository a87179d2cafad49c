import type { LabD65 } from './lab.ts';

// CIEDE2000 with kL = kC = kH = 1, in the order and with the equation numbers of Sharma, Wu, Dalal,
// "The CIEDE2000 Color-Difference Formula: Implementation Notes, Supplementary Test Data, and
// Mathematical Observations", Color Research & Application 30(1), 2005.

const DEGREES = 180 / Math.PI;
const RADIANS = Math.PI / 180;
const CHROMA_25_TO_7TH = 25 ** 7;

function hueOf(aPrime: number, b: number): number {
  if (aPrime === 0 && b === 0) return 0;
  const h = Math.atan2(b, aPrime) * DEGREES;
  return h < 0 ? h + 360 : h;
}

function kernel(L1: number, a1: number, b1: number, L2: number, a2: number, b2: number): number {
  // (2)–(7) C'i, h'i
  const meanC = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
  const meanC7 = meanC ** 7;
  const G = 0.5 * (1 - Math.sqrt(meanC7 / (meanC7 + CHROMA_25_TO_7TH)));
  const aPrime1 = (1 + G) * a1;
  const aPrime2 = (1 + G) * a2;
  const C1 = Math.sqrt(aPrime1 * aPrime1 + b1 * b1);
  const C2 = Math.sqrt(aPrime2 * aPrime2 + b2 * b2);
  const h1 = hueOf(aPrime1, b1);
  const h2 = hueOf(aPrime2, b2);
  // (8)–(11) ΔL', ΔC', Δh', ΔH'
  const product = C1 * C2;
  const apart = h2 - h1;
  // Exactly opposite hues take the |Δh| ≤ 180 branch of (10) and (14); degrees made by atan2 may miss it by a hair.
  const opposite = a1 * b2 === a2 * b1 && a1 * a2 + b1 * b2 < 0;
  const within = opposite || Math.abs(apart) <= 180;
  let deltaHue = 0;
  if (product !== 0) deltaHue = within ? apart : apart > 180 ? apart - 360 : apart + 360;
  const deltaH = 2 * Math.sqrt(product) * Math.sin((deltaHue / 2) * RADIANS);
  // (12)–(14) means; nothing wraps the sum of two hues when one has no chroma
  const meanL = (L1 + L2) / 2;
  const meanCPrime = (C1 + C2) / 2;
  const sum = h1 + h2;
  let meanHue = sum;
  if (product !== 0) meanHue = within ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  // (15)–(21) weights; the formula as published does not wrap (h̄' − 275)
  const T =
    1 -
    0.17 * Math.cos((meanHue - 30) * RADIANS) +
    0.24 * Math.cos(2 * meanHue * RADIANS) +
    0.32 * Math.cos((3 * meanHue + 6) * RADIANS) -
    0.2 * Math.cos((4 * meanHue - 63) * RADIANS);
  const turn = (meanHue - 275) / 25;
  const deltaTheta = 30 * Math.exp(-turn * turn);
  const meanCPrime7 = meanCPrime ** 7;
  const RC = 2 * Math.sqrt(meanCPrime7 / (meanCPrime7 + CHROMA_25_TO_7TH));
  const fromMid = (meanL - 50) * (meanL - 50);
  const SL = 1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid);
  const SC = 1 + 0.045 * meanCPrime;
  const SH = 1 + 0.015 * meanCPrime * T;
  const RT = -Math.sin(2 * deltaTheta * RADIANS) * RC;
  // (22)
  const x = (L2 - L1) / SL;
  const y = (C2 - C1) / SC;
  const z = deltaH / SH;
  return Math.sqrt(x * x + y * y + z * z + RT * y * z);
}

/** ΔE00 of two CIELAB D65 colours, the same either way round, 0 for a colour with itself (ISO/CIE 11664-6; Sharma 2005). */
export function deltaE2000(a: LabD65, b: LabD65): number {
  return kernel(a.L, a.a, a.b, b.L, b.a, b.b);
}

/**
 * ΔE00 of n CIELAB D65 colours, laid as L, a, b triples, to one reference: n figures, in `out` when it is given.
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
  const { L, a, b } = reference;
  for (let i = 0, at = 0; i < n; i++, at += 3) {
    out[i] = kernel(labs[at]!, labs[at + 1]!, labs[at + 2]!, L, a, b);
  }
  return out;
}
