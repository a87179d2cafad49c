/** Tristimulus values with Y of the perfect diffuser = 100 under the light they are seen in. */
export type Xyz = readonly [x: number, y: number, z: number];

/** L*, a*, b* without a white point of its own: only for use beside the white it was made with. */
export type LabTriple = readonly [L: number, a: number, b: number];

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

function rootOf(t: number): number {
  return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
}

function cubeOf(root: number): number {
  const cube = root ** 3;
  return cube > EPSILON ? cube : (116 * root - 16) / KAPPA;
}

/** L*, a*, b* of tristimulus values seen beside `white` (CIE 15:2018, ISO/CIE 11664-4). */
export function labFromXyz(xyz: Xyz, white: Xyz): LabTriple {
  const x = rootOf(xyz[0] / white[0]);
  const y = rootOf(xyz[1] / white[1]);
  const z = rootOf(xyz[2] / white[2]);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Tristimulus values of L*, a*, b* beside `white`, the inverse of `labFromXyz`. */
export function xyzFromLab([L, a, b]: LabTriple, white: Xyz): Xyz {
  const root = (L + 16) / 116;
  return [cubeOf(root + a / 500) * white[0], cubeOf(root) * white[1], cubeOf(root - b / 200) * white[2]];
}
