import { groundAt, groundThrough, type SmoothGround } from './cut-out-backdrop.ts';
import { judgedOf } from './cut-out-confidence.ts';
import { groundOf } from './cut-out-ground.ts';
import { openHoles } from './cut-out-holes.ts';
import { finerMask } from './cut-out-outline.ts';
import { trimmed, withoutSpecks } from './cut-out-rim.ts';
import { fewerPixelsOf, fewerSizeOf } from './fewer-pixels.ts';
import { assertPixels, OPAQUE_FROM_ALPHA, type Pixels } from './histogram.ts';
import type { LabD65 } from './lab.ts';
import { labPlanesOf, lengthOf, softenedOf } from './lab-planes.ts';

/** What a person may say when the cut-out is wrong: leave the ground out after all, keep it, or take everything there is. */
export type CutOutChoice = 'leave out' | 'keep' | 'whole picture';

/** What of a picture is the thing: a mask of 255 and 0 a pixel, and how sure that is, 0..1, with what speaks against it. */
export interface CutOut {
  readonly mask: Uint8Array;
  readonly confidence: number;
  /** Whether a ground was left out, the picture came cut out, or all of it was kept. */
  readonly made: 'left out' | 'came cut out' | 'kept';
  /** The colour of the ground in the middle of the picture, where one was found. */
  readonly backdrop: LabD65 | null;
  /** Sentences. */
  readonly doubts: readonly string[];
}

// A studio ground is paper, cloth or a wall: grey or nearly, and not dark.
const GROUND_CHROMA = 14;
const GROUND_LIGHTNESS = 45;
// A thing may touch the border, but most of the border is ground.
const LEAST_BORDER = 0.7;
/** Pixels. */
const LEAST_SIDE = 16;

/**
 * The thing in a picture (sRGB with alpha), its studio ground left out: what joins the border and is the border's
 * smooth ground, light or shaded, and what shows of that ground through the thing. A picture that came with clear
 * pixels keeps its own shape. `choice` is a person's word against the machine's. `fine`: the mask has one pixel for so many
 * of the picture's a side; `times`: the thing is found in a picture as many times smaller than the mask, which is quicker
 * and as sure, and only its outline drawn at the mask's size.
 * RangeError when the bytes do not fit the size.
 */
export function cutOutOf(pixels: Pixels, choice?: CutOutChoice, times = 1, fine = 1): CutOut {
  assertPixels(pixels);
  const as = (mask: Uint8Array, made: CutOut['made'], confidence: number, doubts: string[] = []): CutOut => {
    return { mask, made, confidence, backdrop: null, doubts };
  };
  const opaque = (): Uint8Array => opaqueIn(fewerPixelsOf(pixels, fine));
  if (choice === 'whole picture') {
    const size = fewerSizeOf(pixels, fine);
    return as(new Uint8Array(size.width * size.height).fill(255), 'kept', 1);
  }
  if (choice === 'keep') return as(opaque(), 'kept', 1);
  const looked = fewerPixelsOf(pixels, fine * times);
  if (choice !== 'leave out' && clearShareOf(looked) > 0.005) return as(opaque(), 'came cut out', 1);
  const { width, height } = looked;
  if (Math.min(width, height) < LEAST_SIDE)
    return as(opaque(), 'kept', 0.2, ['It is too small to tell a thing from its ground.']);
  const sharp = labPlanesOf(looked);
  const planes = softenedOf(sharp);
  const first = groundThrough(planes, borderOf(width, height));
  const studio = isStudio(first);
  if (choice !== 'leave out' && (first.borderShare < LEAST_BORDER || !studio)) {
    // A border that plainly is no ground leaves little doubt that the picture is all there is.
    const doubt = studio ? first.borderShare : Math.min(first.borderShare, 0.4);
    return as(opaque(), 'kept', 1 - doubt * 0.6);
  }
  const { ground, smooth, backdrop } = groundOf(planes, first);
  openHoles(ground, planes, backdrop);
  const mask = opaqueIn(looked);
  for (let i = 0; i < mask.length; i++) if (ground[i] !== 0) mask[i] = 0;
  withoutSpecks(mask, width);
  trimmed(mask, sharp);
  const judged = judgedOf(mask, ground, planes, backdrop);
  const drawn = times === 1 ? mask : finerMask({ mask, ground, smooth, width, height }, times, pixels, fine);
  return { mask: drawn, made: 'left out', backdrop: groundAt(smooth, 0, 0), ...judged };
}

/** 255 where a picture is opaque, else 0. */
function opaqueIn({ data, width, height }: Pixels): Uint8Array {
  const opaque = new Uint8Array(width * height);
  for (let i = 0; i < opaque.length; i++) if (data[i * 4 + 3]! >= OPAQUE_FROM_ALPHA) opaque[i] = 255;
  return opaque;
}

function clearShareOf({ data, width, height }: Pixels): number {
  let clear = 0;
  for (let at = 3; at < data.length; at += 4) if (data[at]! < OPAQUE_FROM_ALPHA) clear++;
  return clear / Math.max(1, width * height);
}

/** Whether a ground is grey or nearly, and not dark, at its corners, along its sides and in its middle. */
function isStudio(ground: SmoothGround): boolean {
  return [-1, 0, 1].every((v) =>
    [-1, 0, 1].every((u) => {
      const { L, a, b } = groundAt(ground, u, v);
      return L >= GROUND_LIGHTNESS && lengthOf(a, b) <= GROUND_CHROMA;
    }),
  );
}

/** Indices of a band of 2 %, at least 2 px, along the border. */
function borderOf(width: number, height: number): number[] {
  const band = Math.max(2, Math.round(0.02 * Math.min(width, height)));
  const places: number[] = [];
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (Math.min(x, y, width - 1 - x, height - 1 - y) < band) places.push(i);
    }
  }
  const step = Math.floor(places.length / 1000) + 1;
  return places.filter((_, n) => n % step === 0);
}
