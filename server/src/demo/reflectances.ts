/**
 * Invented reflectances for paints of the demo: pigments in a white ground as a reader would find them, fitted so that
 * their colour under D65/2° is the one the deck states. Deterministic; nothing measured is in them.
 */
import { labFromXyz, xyzFromLab } from '@enfilade/colour/cielab';
import type { LabD65 } from '@enfilade/colour/lab';
import { lightOf } from '@enfilade/colour/lights';
import { reflectanceOnGrid, type Spectrum } from '@enfilade/colour/spectrum';
import { whiteOf, xyzOf } from '@enfilade/colour/tristimulus';

/** What a pigment does to the curve, in the logarithm of returned over taken light: [at nm, width nm, how much]. */
type Band = readonly [atNm: number, widthNm: number, rise: number];

const PIGMENTS = {
  /** A titanium white takes the violet. */
  white: [[370, 22, -2.2]],
  earth: [
    [370, 22, -1.6],
    [480, 60, -0.5],
    [650, 70, -0.25],
  ],
  yellow: [
    [370, 22, -1.4],
    [455, 40, -1.2],
    [690, 80, 0.3],
  ],
  red: [
    [370, 22, -1.4],
    [540, 34, -0.9],
    [455, 30, 0.25],
    [720, 50, 0.6],
  ],
  blue: [
    [370, 22, -1.8],
    [600, 45, -0.7],
    [650, 22, -0.35],
    [725, 35, 1.1],
  ],
  green: [
    [370, 22, -1.5],
    [430, 30, -0.4],
    [640, 45, -0.5],
    [730, 40, 0.5],
  ],
  black: [[370, 40, -0.4]],
  /** A grey mixed of colours, against one of black and white. */
  mixed: [
    [370, 22, -1.8],
    [480, 24, -0.55],
    [575, 22, 0.5],
    [640, 26, -0.45],
    [715, 35, 1.4],
  ],
} as const satisfies Readonly<Record<string, readonly Band[]>>;

export type Pigment = keyof typeof PIGMENTS;

const D65 = lightOf('D65');
const WHITE = whiteOf(D65, '2°');
const START_NM = 380;
const STEP_NM = 10;
const COUNT = 36;
// A matt film throws back about this much at its face, whatever is in it, and no white more than that.
const FLOOR = 0.012;
const CEILING = 0.94;

/**
 * Reflectance 380–730 nm by 10, four decimals, of a paint of this pigment and this colour under D65/2°.
 * @throws RangeError where no such curve comes within ΔE*ab 0.05 of it.
 */
export function inventedReflectance(lab: LabD65, pigment: Pigment): Spectrum {
  const wanted = xyzFromLab([lab.L, lab.a, lab.b], WHITE);
  // Fitted in XYZ by Newton's method on a level, a tilt and a bend laid over the pigment's own bands.
  let tune: [number, number, number] = [Math.log(wanted[1] / (100 - wanted[1])), 0, 0];
  for (let step = 0; step < 60; step++) {
    const found = xyzOf(reflectanceOnGrid(curveOf(tune, pigment)), D65, '2°');
    const miss = wanted.map((value, i) => value - found[i]!) as [number, number, number];
    if (Math.hypot(...miss) < 1e-6) break;
    const columns = tune.map((_, k) => {
      const nudged = tune.map((value, i) => (i === k ? value + 1e-4 : value)) as [number, number, number];
      return xyzOf(reflectanceOnGrid(curveOf(nudged, pigment)), D65, '2°').map(
        (value, i) => (value - found[i]!) / 1e-4,
      );
    });
    const change = solved(columns, miss);
    const stride = Math.min(1, 0.8 / Math.max(...change.map(Math.abs)));
    tune = tune.map((value, i) => value + stride * change[i]!) as [number, number, number];
  }
  const spectrum = curveOf(tune, pigment);
  const rounded = { ...spectrum, values: spectrum.values.map((value) => Math.round(value * 1e4) / 1e4) };
  const [L, a, b] = labFromXyz(xyzOf(reflectanceOnGrid(rounded), D65, '2°'), WHITE);
  const miss = Math.hypot(L - lab.L, a - lab.a, b - lab.b);
  if (!(miss < 0.05)) throw new RangeError(`no ${pigment} comes nearer than ${miss} to ${lab.L} ${lab.a} ${lab.b}`);
  return rounded;
}

function curveOf([level, tilt, bend]: readonly [number, number, number], pigment: Pigment): Spectrum {
  const values = Array.from({ length: COUNT }, (_, i) => {
    const nm = START_NM + i * STEP_NM;
    const t = (nm - 555) / 175;
    const own = PIGMENTS[pigment].reduce(
      (sum, [at, width, rise]) => sum + rise * Math.exp(-(((nm - at) / width) ** 2) / 2),
      0,
    );
    return FLOOR + (CEILING - FLOOR) / (1 + Math.exp(-(level + tilt * t + bend * t * t + own)));
  });
  return { startNm: START_NM, stepNm: STEP_NM, values };
}

/** Three unknowns of three equations by Cramer's rule, the matrix by its columns. */
function solved(columns: readonly (readonly number[])[], right: readonly number[]): number[] {
  const det = (p: readonly number[], q: readonly number[], r: readonly number[]): number =>
    p[0]! * (q[1]! * r[2]! - q[2]! * r[1]!) -
    q[0]! * (p[1]! * r[2]! - p[2]! * r[1]!) +
    r[0]! * (p[1]! * q[2]! - p[2]! * q[1]!);
  const [x, y, z] = columns as [number[], number[], number[]];
  const whole = det(x, y, z);
  return [det(right, y, z) / whole, det(x, right, z) / whole, det(x, y, right) / whole];
}
