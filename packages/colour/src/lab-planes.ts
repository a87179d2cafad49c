import type { Pixels } from './histogram.ts';
import { cubeRootOf, linearFromSrgb, overWhiteFromLinear } from './spaces.ts';

/** A picture's colours in three planes, CIELAB D65, row by row. */
export interface LabPlanes {
  readonly width: number;
  readonly height: number;
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** Length of a step in a plane or in space; Math.hypot is several times slower, and nothing here can overflow. */
export function lengthOf(x: number, y: number, z = 0): number {
  return Math.sqrt(x * x + y * y + z * z);
}

// Read by tables, as there are many pixels: what each byte of a channel adds to X, Y and Z, white having STEPS of each,
// and the cube root of what they come to, straight from step to step. Small enough to stay near the processor.
const STEPS = 2048;
const ROOTS = Float32Array.from({ length: STEPS + 2 }, (_, step) => cubeRootOf(step / STEPS));
const [RED, GREEN, BLUE] = [addedBy(1, 0, 0), addedBy(0, 1, 0), addedBy(0, 0, 1)];

function addedBy(r: number, g: number, b: number): Float32Array {
  const whole = overWhiteFromLinear(r, g, b);
  return Float32Array.from({ length: 3 * 256 }, (_, at) => STEPS * whole[at % 3]! * linearFromSrgb(Math.floor(at / 3)));
}

function rootAt(steps: number): number {
  const step = steps | 0;
  const low = ROOTS[step]!;
  return low + (ROOTS[step + 1]! - low) * (steps - step);
}

/** Planes of that size with no colour in them yet. */
export function emptyPlanes(width: number, height: number): LabPlanes {
  const area = width * height;
  return { width, height, L: new Float32Array(area), a: new Float32Array(area), b: new Float32Array(area) };
}

/** Writes the pixel whose sRGB bytes are in `data` from `at` on, as colour `i`: within 0.02 of `labD65FromSrgb` in each. */
export function labInto({ L, a, b }: LabPlanes, i: number, data: Pixels['data'], at: number): void {
  const red = 3 * data[at]!;
  const green = 3 * data[at + 1]!;
  const blue = 3 * data[at + 2]!;
  const x = rootAt(RED[red]! + GREEN[green]! + BLUE[blue]!);
  const y = rootAt(RED[red + 1]! + GREEN[green + 1]! + BLUE[blue + 1]!);
  const z = rootAt(RED[red + 2]! + GREEN[green + 2]! + BLUE[blue + 2]!);
  L[i] = 116 * y - 16;
  a[i] = 500 * (x - y);
  b[i] = 200 * (y - z);
}

/** A picture as CIELAB planes; alpha is not heeded. */
export function labPlanesOf({ data, width, height }: Pixels): LabPlanes {
  const planes = emptyPlanes(width, height);
  for (let i = 0; i < width * height; i++) labInto(planes, i, data, 4 * i);
  return planes;
}

/** Mean of each 3 × 3 neighbourhood, smaller at the border: the grain goes, an edge stays an edge. */
export function softenedOf({ width, height, L, a, b }: LabPlanes): LabPlanes {
  const rows = new Float32Array(L.length);
  return {
    width,
    height,
    L: softened(L, rows, width, height),
    a: softened(a, rows, width, height),
    b: softened(b, rows, width, height),
  };
}

/** `rows` is room for the means along each row. */
function softened(plane: Float32Array, rows: Float32Array, width: number, height: number): Float32Array {
  const out = new Float32Array(plane.length);
  for (let y = 0, i = 0; y < height; y++) {
    const last = i + width - 1;
    let left = plane[i]!;
    let here = left;
    for (; i < last; i++) {
      const right = plane[i + 1]!;
      rows[i] = (left + here + right) / 3;
      left = here;
      here = right;
    }
    rows[i++] = (left + here + here) / 3;
  }
  for (let y = 0, i = 0; y < height; y++) {
    const up = y > 0 ? width : 0;
    const down = y < height - 1 ? width : 0;
    for (const end = i + width; i < end; i++) out[i] = (rows[i - up]! + rows[i]! + rows[i + down]!) / 3;
  }
  return out;
}

/** Writes, as colour `at`, the mean of the 3 × 3 neighbourhood of pixel `i` of `planes`, smaller at the border. */
export function softInto(into: LabPlanes, at: number, { width, height, L, a, b }: LabPlanes, i: number): void {
  const x = i % width;
  const left = x > 0 ? 1 : 0;
  const right = x < width - 1 ? 1 : 0;
  const first = i >= width ? i - width : i;
  const last = i < width * (height - 1) ? i + width : i;
  let n = 0;
  let sumL = 0;
  let sumA = 0;
  let sumB = 0;
  for (let row = first; row <= last; row += width) {
    for (let p = row - left; p <= row + right; p++) {
      n++;
      sumL += L[p]!;
      sumA += a[p]!;
      sumB += b[p]!;
    }
  }
  into.L[at] = sumL / n;
  into.a[at] = sumA / n;
  into.b[at] = sumB / n;
}
