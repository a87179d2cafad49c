import type { Xyz } from './cielab.ts';

/** How an eye is reckoned to settle from one white to another. */
export type Adaptation = 'CAT16' | 'Bradford';

type Matrix = readonly [Xyz, Xyz, Xyz];

// CAT16: Li, Li, Wang, Zu, Luo, Cui, Melgosa, Brill, Pointer, "Comprehensive color solutions: CAM16, CAT16, and
// CAM16-UCS", Color Research & Application 42(6), 2017. Bradford: Lam 1985, as ICC.1 uses it (without the blue exponent).
const CONES: Readonly<Record<Adaptation, Matrix>> = {
  CAT16: [
    [0.401288, 0.650173, -0.051461],
    [-0.250268, 1.204414, 0.045854],
    [-0.002079, 0.048952, 0.953127],
  ],
  Bradford: [
    [0.8951, 0.2664, -0.1614],
    [-0.7502, 1.7135, 0.0367],
    [0.0389, -0.0685, 1.0296],
  ],
};
const BACK = { CAT16: inverseOf(CONES.CAT16), Bradford: inverseOf(CONES.Bradford) };

function times(m: Matrix, [x, y, z]: Xyz): Xyz {
  const row = ([a, b, c]: Xyz): number => a * x + b * y + c * z;
  return [row(m[0]), row(m[1]), row(m[2])];
}

function inverseOf([[a, b, c], [d, e, f], [g, h, i]]: Matrix): Matrix {
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    [(e * i - f * h) / det, (c * h - b * i) / det, (b * f - c * e) / det],
    [(f * g - d * i) / det, (a * i - c * g) / det, (c * d - a * f) / det],
    [(d * h - e * g) / det, (b * g - a * h) / det, (a * e - b * d) / det],
  ];
}

/**
 * The colour that looks under the white `to` as `xyz` does under the white `from`; whites with Y = 100.
 * `degree` is how far the eye has settled to `from`, 0 (not at all) to 1 (wholly); RangeError outside.
 */
export function adapted(xyz: Xyz, from: Xyz, to: Xyz, by: Adaptation, degree = 1): Xyz {
  if (!(degree >= 0 && degree <= 1)) throw new RangeError(`adapted: degree ${degree} is not within 0 to 1`);
  const cones = times(CONES[by], xyz);
  const source = times(CONES[by], from);
  const target = times(CONES[by], to);
  const settled = (i: 0 | 1 | 2): number => cones[i] * (degree * (target[i] / source[i]) + 1 - degree);
  return times(BACK[by], [settled(0), settled(1), settled(2)]);
}

/**
 * How far an eye settles to a lamp, 0..1, from the light on a wall in lux, by CIECAM16's formula for average surround
 * (CIE 248:2022), taking a grey of 20 % for what is looked at.
 */
export function degreeOfAdaptation(lux: number): number {
  if (!(lux >= 0)) throw new RangeError(`degreeOfAdaptation: ${lux} lux is under 0`);
  const greyCdM2 = (lux / Math.PI) * 0.2;
  return Math.min(1, Math.max(0, 1 - (1 / 3.6) * Math.exp((-greyCdM2 - 42) / 92)));
}
