import { type Xyz, xyzFromLab } from './cielab.ts';
import type { LabD65 } from './lab.ts';
import { lightOf } from './lights.ts';
import { OBSERVERS } from './observers.ts';
import { GRID } from './spectrum.ts';
import { whiteOf } from './tristimulus.ts';

// 380, 390 … 780 nm: fine enough for a curve without detail.
const BANDS = 41;
const STEPS = 30;
const D65 = lightOf('D65');
const WHITE = whiteOf(D65, '2°');

/** Rows X, Y, Z: what one band of reflectance 1 adds under D65/2°; each 5 nm step is shared between its two bands. */
const WEIGHTS = ((): Float64Array[] => {
  const { x, y, z } = OBSERVERS['2°'];
  const whole = D65.power.reduce((sum, power, i) => sum + power * y[i]!, 0);
  return [x, y, z].map((matching) => {
    const row = new Float64Array(BANDS);
    for (let i = 0; i < GRID.count; i++) {
      const value = (100 * D65.power[i]! * matching[i]!) / whole;
      row[i >> 1]! += i % 2 === 0 ? value : value / 2;
      if (i % 2 === 1) row[(i >> 1) + 1]! += value / 2;
    }
    return row;
  });
})();

/**
 * A reflectance on the grid (81 shares within 0..1) that has this colour under D65/2° and is as smooth as can be: one of
 * many, for paints of which nothing more is known. Burns, "Numerical methods for smoothest reflectance reconstruction",
 * Color Research & Application 45(1), 2020 (least slope of the hyperbolic tangent). Null for what no surface can be.
 */
export function likelyReflectanceOf(lab: LabD65): Float64Array | null {
  const target = xyzFromLab([lab.L, lab.a, lab.b], WHITE);
  // At the very ends the curve would have to be without slope at infinity.
  if (Math.hypot(lab.a, lab.b) < 1 && (lab.L < 0.5 || lab.L > 99.5))
    return new Float64Array(GRID.count).fill(target[1] / 100);
  const z = new Float64Array(BANDS);
  const lambda = new Float64Array(3);
  for (let step = 0; step < STEPS; step++) {
    const residual = newtonStep(z, lambda, target);
    if (residual === null || !Number.isFinite(residual)) return null;
    if (residual < 1e-7) return onGrid(z);
  }
  return null;
}

/** One step of Newton's method on the slopes and the three constraints; the largest residual before it, null if singular. */
function newtonStep(z: Float64Array, lambda: Float64Array, target: Xyz): number | null {
  const n = BANDS + 3;
  const rows = Array.from({ length: n }, () => new Float64Array(n + 1));
  let largest = 0;
  for (let i = 0; i < BANDS; i++) {
    const row = rows[i]!;
    const tanh = Math.tanh(z[i]!);
    const slope = (1 - tanh * tanh) / 2;
    const pull = lambda.reduce((sum, value, k) => sum + value * WEIGHTS[k]![i]!, 0);
    const neighbours = (i > 0 ? 1 : 0) + (i < BANDS - 1 ? 1 : 0);
    let gradient = 2 * neighbours * z[i]! + slope * pull;
    row[i] = 2 * neighbours - 2 * slope * tanh * pull;
    for (const j of [i - 1, i + 1]) {
      if (j < 0 || j >= BANDS) continue;
      row[j] = -2;
      gradient -= 2 * z[j]!;
    }
    for (let k = 0; k < 3; k++) {
      row[BANDS + k] = slope * WEIGHTS[k]![i]!;
      rows[BANDS + k]![i] = slope * WEIGHTS[k]![i]!;
      rows[BANDS + k]![n]! -= (WEIGHTS[k]![i]! * (tanh + 1)) / 2;
    }
    row[n] = -gradient;
    largest = Math.max(largest, Math.abs(gradient));
  }
  for (let k = 0; k < 3; k++) {
    rows[BANDS + k]![n]! += target[k as 0 | 1 | 2];
    largest = Math.max(largest, Math.abs(rows[BANDS + k]![n]!));
  }
  const change = solved(rows);
  if (!change) return null;
  for (let i = 0; i < BANDS; i++) z[i]! += change[i]!;
  for (let k = 0; k < 3; k++) lambda[k]! += change[BANDS + k]!;
  return largest;
}

/** The solution of rows with their right-hand side last, by elimination with row exchange; null when singular. */
function solved(rows: Float64Array[]): Float64Array | null {
  const n = rows.length;
  for (let at = 0; at < n; at++) {
    let pivot = at;
    for (let i = at + 1; i < n; i++) if (Math.abs(rows[i]![at]!) > Math.abs(rows[pivot]![at]!)) pivot = i;
    [rows[at], rows[pivot]] = [rows[pivot]!, rows[at]!];
    const top = rows[at]!;
    if (!(Math.abs(top[at]!) > 1e-14)) return null;
    for (let i = at + 1; i < n; i++) {
      const row = rows[i]!;
      const factor = row[at]! / top[at]!;
      if (factor !== 0) for (let j = at; j <= n; j++) row[j]! -= factor * top[j]!;
    }
  }
  const found = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let rest = rows[i]![n]!;
    for (let j = i + 1; j < n; j++) rest -= rows[i]![j]! * found[j]!;
    found[i] = rest / rows[i]![i]!;
  }
  return found;
}

function onGrid(z: Float64Array): Float64Array {
  const share = (i: number): number => (Math.tanh(z[i]!) + 1) / 2;
  return Float64Array.from({ length: GRID.count }, (_, i) =>
    i % 2 === 0 ? share(i >> 1) : (share(i >> 1) + share((i >> 1) + 1)) / 2,
  );
}
