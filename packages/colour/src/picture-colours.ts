import { assertPixels, type Mask, OPAQUE_FROM_ALPHA, type Pixels } from './histogram.ts';
import { paletteOf, type Swatch } from './palette.ts';

/** Stored beside derived colours; raised whenever the same pixels would give others, so that they are made again. */
export const ENGINE_VERSION = 'picture-colours/2';

/** A rim of 6 % of the shape's smaller side: about the moulding of a frame, or the margin of a print. */
export const RIM_SHARE = 0.06;

/** The colours of one picture: inside, along its outline, and how much of the picture is opaque, 0..1. */
export interface PictureColours {
  readonly body: Swatch[];
  readonly edge: Swatch[];
  readonly opaqueShare: number;
  readonly engine: string;
}

export interface PictureColoursOptions {
  /** Swatches of the body at most, 3 to 12; 6 unless given. The edge takes up to 6 of them. */
  readonly k?: number;
  readonly seed?: number;
}

// Left with less body than this, a thing is all rim (wicker, a wire, a key): its body is then the whole shape.
const LEAST_BODY_SHARE = 0.1;

/**
 * Palettes of the body and of the rim of a picture's opaque shape, CIELAB D65, largest share first.
 * The rim follows the outline: opaque pixels within 6 % of the shape's smaller side, and at least 1 px, of a
 * transparent pixel or of the picture's border. Both are empty when nothing is opaque.
 * RangeError when k is outside 3..12 or the bytes do not fit the size.
 */
export function pictureColoursOf(pixels: Pixels, options: PictureColoursOptions = {}): PictureColours {
  const { k = 6, seed = 1 } = options;
  assertPixels(pixels);
  const area = pixels.width * pixels.height;
  const rim = rimOf(pixels);
  const body = new Uint8Array(area);
  let opaque = 0;
  let inside = 0;
  for (let i = 0; i < area; i++) {
    if (pixels.data[i * 4 + 3]! < OPAQUE_FROM_ALPHA) continue;
    opaque++;
    if (rim[i] !== 0) continue;
    body[i] = 1;
    inside++;
  }
  const whole = inside < LEAST_BODY_SHARE * opaque;
  return {
    body: paletteOf(pixels, whole ? { k, seed } : { k, seed, part: body }),
    edge: paletteOf(pixels, { k: Math.min(k, 6), seed, part: rim }),
    opaqueShare: area === 0 ? 0 : opaque / area,
    engine: ENGINE_VERSION,
  };
}

/**
 * The pixels with everything outside a mask made clear, for `pictureColoursOf` and the stage: what was opaque and is in
 * the mask stays as it is. RangeError when bytes or mask do not fit the size.
 */
export function cutOutPixelsOf(pixels: Pixels, mask: Mask): Pixels {
  assertPixels(pixels, mask);
  const data = Uint8ClampedArray.from(pixels.data);
  for (let i = 0; i < mask.length; i++) if (mask[i] === 0) data[i * 4 + 3] = 0;
  return { data, width: pixels.width, height: pixels.height };
}

/** 1 for each opaque pixel of the rim, else 0, row by row. */
export function rimOf(pixels: Pixels): Uint8Array {
  assertPixels(pixels);
  const { data, width, height } = pixels;
  let [left, right, top, bottom] = [width, -1, height, -1];
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (data[i * 4 + 3]! < OPAQUE_FROM_ALPHA) continue;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  const rim = new Uint8Array(width * height);
  if (right < 0) return rim;
  const band = Math.max(1, Math.round(RIM_SHARE * Math.min(right - left + 1, bottom - top + 1)));
  const distances = outlineDistancesOf(pixels);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const distance = distances[(y + 1) * (width + 2) + x + 1]!;
      if (distance > 0 && distance <= 3 * band) rim[i] = 1;
    }
  }
  return rim;
}

/**
 * Distance of every pixel to the nearest transparent one, in thirds of a pixel, in a grid one pixel wider all round,
 * that margin counting as transparent. Two passes of the 3-4 chamfer mask (Borgefors, "Distance transformations in
 * digital images", 1986): within 8 % of the straight distance.
 */
function outlineDistancesOf({ data, width, height }: Pixels): Int32Array {
  const row = width + 2;
  const distances = new Int32Array(row * (height + 2));
  for (let y = 1, pixel = 0; y <= height; y++) {
    for (let x = 1; x <= width; x++, pixel++) {
      if (data[pixel * 4 + 3]! < OPAQUE_FROM_ALPHA) continue;
      const i = y * row + x;
      const above = Math.min(distances[i - row - 1]! + 4, distances[i - row]! + 3, distances[i - row + 1]! + 4);
      distances[i] = Math.min(above, distances[i - 1]! + 3);
    }
  }
  for (let y = height; y >= 1; y--) {
    for (let x = width; x >= 1; x--) {
      const i = y * row + x;
      if (distances[i] === 0) continue;
      const below = Math.min(distances[i + row - 1]! + 4, distances[i + row]! + 3, distances[i + row + 1]! + 4);
      distances[i] = Math.min(distances[i]!, below, distances[i + 1]! + 3);
    }
  }
  return distances;
}
