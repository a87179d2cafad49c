import { type Xyz, xyzFromLab } from './cielab.ts';
import type { LabD65 } from './lab.ts';
import { lightOf } from './lights.ts';
import { OBSERVERS } from './observers.ts';
import { GRID } from './spectrum.ts';
import { whiteOf } from './tristimulus.ts';

// 380, 390 … 780 nm: fine enough for a curve without detail.
const BANDS = 41;
const STEPS = 30;
// The right side, the last band and the three constraints.
const SIDES = 5;
const LEAST_PIVOT = 1e-13;
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

/**
 * One step of Newton's method on the slopes and the three constraints; the largest residual before it, null if singular.
 * Each band meets its neighbours alone, so all bands but the last are taken out by one pass along them, and what is left
 * is four equations: the last band and the constraints.
 */
function newtonStep(z: Float64Array, lambda: Float64Array, target: Xyz): number | null {
  const inner = BANDS - 1;
  let largest = 0;
  // Of each inner band, once those before it are out: its own weight, then its right side and its share of the four.
  const weights = new Float64Array(inner);
  const sides = new Float64Array(inner * SIDES);
  const rows = Array.from({ length: 4 }, () => new Float64Array(5));
  const lastRow = rows[0]!;
  for (let i = 0; i < BANDS; i++) {
    const tanh = Math.tanh(z[i]!);
    const slope = (1 - tanh * tanh) / 2;
    const share = (tanh + 1) / 2;
    let pull = 0;
    for (let k = 0; k < 3; k++) pull += lambda[k]! * WEIGHTS[k]![i]!;
    const neighbours = (i > 0 ? 1 : 0) + (i < BANDS - 1 ? 1 : 0);
    const gradient = 2 * neighbours * z[i]! + slope * pull - 2 * (z[i - 1] ?? 0) - 2 * (z[i + 1] ?? 0);
    largest = Math.max(largest, Math.abs(gradient));
    const own = 2 * neighbours - 2 * slope * tanh * pull;
    for (let k = 0; k < 3; k++) rows[k + 1]![4]! -= WEIGHTS[k]![i]! * share;
    if (i === inner) {
      lastRow[0] = own;
      lastRow[4] = -gradient;
      for (let k = 0; k < 3; k++) {
        lastRow[k + 1] = slope * WEIGHTS[k]![i]!;
        rows[k + 1]![0] = slope * WEIGHTS[k]![i]!;
      }
      continue;
    }
    const at = i * SIDES;
    weights[i] = own;
    sides[at] = -gradient;
    sides[at + 1] = i === inner - 1 ? -2 : 0;
    for (let k = 0; k < 3; k++) sides[at + 2 + k] = slope * WEIGHTS[k]![i]!;
    if (i === 0) continue;
    const before = weights[i - 1]!;
    if (!(Math.abs(before) > LEAST_PIVOT)) return null;
    const factor = -2 / before;
    weights[i]! -= factor * -2;
    for (let side = 0; side < SIDES; side++) sides[at + side]! -= factor * sides[at - SIDES + side]!;
  }
  for (let k = 0; k < 3; k++) {
    rows[k + 1]![4]! += target[k as 0 | 1 | 2];
    largest = Math.max(largest, Math.abs(rows[k + 1]![4]!));
  }
  if (!(Math.abs(weights[inner - 1]!) > LEAST_PIVOT)) return null;
  // Back along the bands: each side becomes what a band takes of it.
  for (let i = inner - 1; i >= 0; i--) {
    for (let side = 0; side < SIDES; side++) {
      const next = i === inner - 1 ? 0 : sides[(i + 1) * SIDES + side]!;
      sides[i * SIDES + side] = (sides[i * SIDES + side]! + 2 * next) / weights[i]!;
    }
  }
  // The four equations, less what the inner bands answer for.
  const takeOut = (row: Float64Array, weight: number, i: number): void => {
    row[4]! -= weight * sides[i * SIDES]!;
    for (let j = 0; j < 4; j++) row[j]! -= weight * sides[i * SIDES + 1 + j]!;
  };
  takeOut(lastRow, -2, inner - 1);
  for (let i = 0; i < inner; i++) {
    const tanh = Math.tanh(z[i]!);
    for (let k = 0; k < 3; k++) takeOut(rows[k + 1]!, ((1 - tanh * tanh) / 2) * WEIGHTS[k]![i]!, i);
  }
  const four = solved(rows);
  if (!four) return null;
  for (let i = 0; i < inner; i++) {
    let change = sides[i * SIDES]!;
    for (let j = 0; j < 4; j++) change -= sides[i * SIDES + 1 + j]! * four[j]!;
    z[i]! += change;
  }
  z[inner]! += four[0]!;
  for (let k = 0; k < 3; k++) lambda[k]! += four[k + 1]!;
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
