import { assertPixels, type Pixels } from './histogram.ts';

/** How many pixels in a row become one, for the longer side to be near `px`. */
export function stepTowards(longest: number, px: number): number {
  return Math.max(1, Math.round(longest / px));
}

/**
 * A picture with one pixel for each square of `step` × `step`: the mean of four that stand evenly in it, what is clear
 * having no say in the colour. For engines that look at a picture; many times quicker than to scale it finely.
 * RangeError when the bytes do not fit the size.
 */
export function fewerPixelsOf(pixels: Pixels, step: number): Pixels {
  assertPixels(pixels);
  if (step === 1) return pixels;
  const { width, height } = fewerSizeOf(pixels, step);
  const data = new Uint8Array(width * height * 4);
  for (let y = 0, into = 0; y < height; y++) {
    for (let x = 0; x < width; x++, into += 4) fewerPixelInto(data, into, pixels, step, x, y);
  }
  return { data, width, height };
}

/** The size `fewerPixelsOf` gives. */
export function fewerSizeOf({ width, height }: Pixels, step: number): { width: number; height: number } {
  return { width: Math.ceil(width / step), height: Math.ceil(height / step) };
}

/** Writes from `at` on the one pixel that `fewerPixelsOf` has at x, y. */
export function fewerPixelInto(
  into: Uint8Array,
  at: number,
  { data: of, width, height }: Pixels,
  step: number,
  x: number,
  y: number,
): void {
  const near = (step - 1) >> 2;
  const far = step - 1 - near;
  const left = 4 * Math.min(width - 1, x * step + near);
  const right = 4 * Math.min(width - 1, x * step + far);
  const upper = 4 * width * Math.min(height - 1, y * step + near);
  const lower = 4 * width * Math.min(height - 1, y * step + far);
  const [p, q, r, s] = [upper + left, upper + right, lower + left, lower + right];
  const [ofP, ofQ, ofR, ofS] = [of[p + 3]!, of[q + 3]!, of[r + 3]!, of[s + 3]!];
  const all = ofP + ofQ + ofR + ofS;
  into[at + 3] = (all + 2) >> 2;
  if (all === 4 * 255) {
    into[at] = (of[p]! + of[q]! + of[r]! + of[s]! + 2) >> 2;
    into[at + 1] = (of[p + 1]! + of[q + 1]! + of[r + 1]! + of[s + 1]! + 2) >> 2;
    into[at + 2] = (of[p + 2]! + of[q + 2]! + of[r + 2]! + of[s + 2]! + 2) >> 2;
  } else {
    for (let c = 0; c < 3; c++) {
      const sum = ofP * of[p + c]! + ofQ * of[q + c]! + ofR * of[r + c]! + ofS * of[s + c]!;
      into[at + c] = all === 0 ? 0 : Math.round(sum / all);
    }
  }
}
