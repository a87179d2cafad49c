import { labD65FromLinear, linearFromSrgb } from './spaces.ts';

/** Pixels as they come out of a decoder: sRGB with alpha, four bytes a pixel, row by row. */
export interface Pixels {
  readonly data: Uint8Array | Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/** One byte a pixel, row by row: 0 is out, anything else in. */
export type Mask = Uint8Array | Uint8ClampedArray;

/** The occupied cells of a colour histogram: pixels counted in each, and the mean colour of each as L, a, b triples. */
export interface Histogram {
  readonly counts: Float64Array;
  readonly labs: Float64Array;
  readonly total: number;
}

/** A pixel under this alpha (of 255) is taken for the wall behind it, not for the work. */
export const OPAQUE_FROM_ALPHA = 128;

/** RangeError when the bytes, or the mask, do not cover width × height pixels. */
export function assertPixels(pixels: Pixels, part?: Mask): void {
  const area = pixels.width * pixels.height;
  if (!Number.isInteger(area) || area < 0 || pixels.data.length !== area * 4) {
    throw new RangeError(`pixels: ${pixels.data.length} bytes are not 4 × ${pixels.width} × ${pixels.height}`);
  }
  if (part && part.length !== area) throw new RangeError(`mask: ${part.length} bytes for ${area} pixels`);
}

const BITS = 5;
const SHIFT = 8 - BITS;
const LIGHT = Float64Array.from({ length: 256 }, (_, channel) => linearFromSrgb(channel));

/**
 * Histogram, 32 steps a channel, of the opaque pixels inside `part` (all when left out).
 * A cell's colour is the mean of its pixels in linear light, as the eye mixes them from afar.
 */
export function histogramOf(pixels: Pixels, part?: Mask): Histogram {
  assertPixels(pixels, part);
  const { data } = pixels;
  const cells = 1 << (3 * BITS);
  const count = new Uint32Array(cells);
  const red = new Float64Array(cells);
  const green = new Float64Array(cells);
  const blue = new Float64Array(cells);
  let occupied = 0;
  for (let at = 0, pixel = 0; at < data.length; at += 4, pixel++) {
    if (data[at + 3]! < OPAQUE_FROM_ALPHA || (part && part[pixel] === 0)) continue;
    const r = data[at]!;
    const g = data[at + 1]!;
    const b = data[at + 2]!;
    const cell = ((r >> SHIFT) << (2 * BITS)) | ((g >> SHIFT) << BITS) | (b >> SHIFT);
    if (count[cell] === 0) occupied++;
    count[cell]!++;
    red[cell]! += LIGHT[r]!;
    green[cell]! += LIGHT[g]!;
    blue[cell]! += LIGHT[b]!;
  }
  const counts = new Float64Array(occupied);
  const labs = new Float64Array(occupied * 3);
  let total = 0;
  for (let cell = 0, into = 0; cell < cells; cell++) {
    const n = count[cell]!;
    if (n === 0) continue;
    const { L, a, b } = labD65FromLinear(red[cell]! / n, green[cell]! / n, blue[cell]! / n);
    labs[into * 3] = L;
    labs[into * 3 + 1] = a;
    labs[into * 3 + 2] = b;
    counts[into++] = n;
    total += n;
  }
  return { counts, labs, total };
}
