import { type Histogram, histogramOf, type Mask, type Pixels } from './histogram.ts';
import type { LabD65 } from './lab.ts';
import { mediansOf, nearestCentreOf } from './medians.ts';

/** One colour of a palette and the share, 0..1, of the area it stands for. */
export interface Swatch {
  readonly lab: LabD65;
  readonly share: number;
}

export interface PaletteOptions {
  /** Swatches at most, 3 to 12; 6 unless given: as many fields as a person names in a picture, and cheap to compare. */
  readonly k?: number;
  /** Seed of the restarts; 1 unless given. The same pixels, k and seed give the same palette on every machine. */
  readonly seed?: number;
  /** The part of the picture to look at, one byte a pixel; all of it unless given. */
  readonly part?: Mask;
}

// ΔE2000 weighs chroma by 1 + 0.045 C and lightness by 1 to 1.75; distances below are taken in a Lab bent the same way.
const CHROMA_BEND = 0.045;
const LIGHTNESS_WEIGHT = 0.8;

/**
 * The palette of the opaque pixels of a picture: at most k CIELAB D65 swatches, largest share first, shares adding
 * up to 1; none when nothing is opaque. RangeError when k is outside 3..12 or the bytes do not fit the size.
 */
export function paletteOf(pixels: Pixels, options: PaletteOptions = {}): Swatch[] {
  const { k = 6, seed = 1, part } = options;
  if (!Number.isInteger(k) || k < 3 || k > 12) throw new RangeError(`paletteOf: k ${k} is outside 3..12`);
  const histogram = histogramOf(pixels, part);
  if (histogram.total === 0) return [];
  const points = bentFrom(histogram.labs);
  const centres = mediansOf(points, histogram.counts, k, seed);
  return swatchesOf(centres, points, histogram);
}

function bentFrom(labs: Float64Array): Float64Array {
  const points = new Float64Array(labs.length);
  for (let at = 0; at < labs.length; at += 3) {
    const chroma = Math.hypot(labs[at + 1]!, labs[at + 2]!);
    const scale = chroma > 0 ? Math.log1p(CHROMA_BEND * chroma) / (CHROMA_BEND * chroma) : 1;
    points[at] = labs[at]! * LIGHTNESS_WEIGHT;
    points[at + 1] = labs[at + 1]! * scale;
    points[at + 2] = labs[at + 2]! * scale;
  }
  return points;
}

function labFromBent(points: Float64Array, at: number): LabD65 {
  const a = points[at + 1]!;
  const b = points[at + 2]!;
  const bent = Math.hypot(a, b);
  const scale = bent > 0 ? Math.expm1(CHROMA_BEND * bent) / (CHROMA_BEND * bent) : 1;
  return { L: points[at]! / LIGHTNESS_WEIGHT, a: a * scale, b: b * scale };
}

function swatchesOf(centres: Float64Array, points: Float64Array, histogram: Histogram): Swatch[] {
  const pixels = new Float64Array(centres.length / 3);
  for (let i = 0; i < histogram.counts.length; i++) {
    pixels[nearestCentreOf(points, i * 3, centres) / 3]! += histogram.counts[i]!;
  }
  return Array.from(pixels, (n, c) => ({ lab: labFromBent(centres, c * 3), share: n / histogram.total }))
    .filter((swatch) => swatch.share > 0)
    .sort((one, other) => other.share - one.share || one.lab.L - other.lab.L || one.lab.a - other.lab.a);
}
