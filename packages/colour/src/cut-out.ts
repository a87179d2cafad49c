import { backdropThrough, type LabPlanes, labPlanesOf, lengthOf, softenedOf } from './cut-out-backdrop.ts';
import { judgedOf } from './cut-out-confidence.ts';
import { groundOf } from './cut-out-ground.ts';
import { openHoles } from './cut-out-holes.ts';
import { trimmed, withoutSpecks } from './cut-out-rim.ts';
import { assertPixels, OPAQUE_FROM_ALPHA, type Pixels } from './histogram.ts';
import type { LabD65 } from './lab.ts';

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
/**
 * The thing in a picture (sRGB with alpha), its studio ground left out: what joins the border and is the border's
 * smooth ground, light or shaded, and what shows of that ground through the thing. A picture that came with clear
 * pixels keeps its own shape. `choice` is a person's word against the machine's.
 * RangeError when the bytes do not fit the size.
 */
export function cutOutOf(pixels: Pixels, choice?: CutOutChoice): CutOut {
  assertPixels(pixels);
  const { data, width, height } = pixels;
  const area = width * height;
  const opaque = new Uint8Array(area);
  let clear = 0;
  for (let i = 0; i < area; i++) {
    if (data[i * 4 + 3]! >= OPAQUE_FROM_ALPHA) opaque[i] = 255;
    else clear++;
  }
  const as = (mask: Uint8Array, made: CutOut['made'], confidence: number, doubts: string[] = []): CutOut => {
    return { mask, made, confidence, backdrop: null, doubts };
  };
  if (choice === 'whole picture') return as(new Uint8Array(area).fill(255), 'kept', 1);
  if (choice === 'keep') return as(opaque, 'kept', 1);
  if (clear > 0.005 * area && choice !== 'leave out') return as(opaque, 'came cut out', 1);
  if (Math.min(width, height) < 16)
    return as(opaque, 'kept', 0.2, ['It is too small to tell a thing from its ground.']);
  const sharp = labPlanesOf(data, width, height);
  const planes = softenedOf(sharp);
  const first = backdropThrough(planes, borderOf(width, height));
  const middle = (height >> 1) * width + (width >> 1);
  const studio = isStudio(first.planes);
  if (choice !== 'leave out' && (first.borderShare < LEAST_BORDER || !studio)) {
    // A border that plainly is no ground leaves little doubt that the picture is all there is.
    const doubt = studio ? first.borderShare : Math.min(first.borderShare, 0.4);
    return as(opaque, 'kept', 1 - doubt * 0.6);
  }
  const { ground, backdrop } = groundOf(planes, first);
  openHoles(ground, planes, backdrop);
  const mask = new Uint8Array(area);
  for (let i = 0; i < area; i++) mask[i] = ground[i] === 0 && opaque[i] !== 0 ? 255 : 0;
  withoutSpecks(mask, width, height);
  trimmed(mask, sharp);
  const judged = judgedOf(mask, ground, planes, backdrop);
  const at = { L: backdrop.planes.L[middle]!, a: backdrop.planes.a[middle]!, b: backdrop.planes.b[middle]! };
  return { mask, made: 'left out', backdrop: at, ...judged };
}

/** Whether a ground is grey or nearly, and not dark, at its corners, along its sides and in its middle. */
function isStudio({ width, height, L, a, b }: LabPlanes): boolean {
  const along = (length: number): number[] => [0, length >> 1, length - 1];
  return along(height).every((y) =>
    along(width).every((x) => {
      const i = y * width + x;
      return L[i]! >= GROUND_LIGHTNESS && lengthOf(a[i]!, b[i]!) <= GROUND_CHROMA;
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
  const step = Math.floor(places.length / 2000) + 1;
  return places.filter((_, n) => n % step === 0);
}
