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
  const width = Math.ceil(pixels.width / step);
  const height = Math.ceil(pixels.height / step);
  const data = new Uint8Array(width * height * 4);
  const near = (step - 1) >> 2;
  const far = step - 1 - near;
  const from = pixels.data;
  for (let y = 0, into = 0; y < height; y++) {
    const upper = 4 * pixels.width * Math.min(pixels.height - 1, y * step + near);
    const lower = 4 * pixels.width * Math.min(pixels.height - 1, y * step + far);
    for (let x = 0; x < width; x++, into += 4) {
      const left = 4 * Math.min(pixels.width - 1, x * step + near);
      const right = 4 * Math.min(pixels.width - 1, x * step + far);
      meanInto(data, into, from, upper + left, upper + right, lower + left, lower + right);
    }
  }
  return { data, width, height };
}

/** Writes the mean of the pixels at p, q, r and s. */
function meanInto(into: Uint8Array, at: number, of: Pixels['data'], p: number, q: number, r: number, s: number): void {
  const [ofP, ofQ, ofR, ofS] = [of[p + 3]!, of[q + 3]!, of[r + 3]!, of[s + 3]!];
  const all = ofP + ofQ + ofR + ofS;
  into[at + 3] = (all + 2) >> 2;
  if (all === 4 * 255) {
    into[at] = (of[p]! + of[q]! + of[r]! + of[s]! + 2) >> 2;
    into[at + 1] = (of[p + 1]! + of[q + 1]! + of[r + 1]! + of[s + 1]! + 2) >> 2;
    into[at + 2] = (of[p + 2]! + of[q + 2]! + of[r + 2]! + of[s + 2]! + 2) >> 2;
  } else if (all > 0) {
    for (let c = 0; c < 3; c++) {
      into[at + c] = Math.round((ofP * of[p + c]! + ofQ * of[q + c]! + ofR * of[r + c]! + ofS * of[s + c]!) / all);
    }
  }
}
