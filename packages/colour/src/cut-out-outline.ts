/** A cut-out drawn larger than it was found: what lies along its outline is told anew, all else is as it was. */
import { groundInto, nearOf, type SmoothGround, spreadOf } from './cut-out-backdrop.ts';
import { isComingOn, kindAt, PLAIN } from './cut-out-ground.ts';
import { trimmed, withoutLooseBits } from './cut-out-rim.ts';
import { fewerPixelInto, fewerSizeOf } from './fewer-pixels.ts';
import { OPAQUE_FROM_ALPHA, type Pixels } from './histogram.ts';
import { emptyPlanes, type LabPlanes, labInto, lengthOf, softInto } from './lab-planes.ts';

/** What was found at the small size: the mask, where the ground is and how (0 for the thing), and how it runs. */
interface Found {
  readonly mask: Uint8Array;
  readonly ground: Uint8Array;
  readonly smooth: SmoothGround;
  readonly width: number;
  readonly height: number;
}

/** Pixels of the small size on either side of an outline that are told anew, and that are looked at for it. */
const BAND = 2;
const LOOK = 4;
/** Pixels of the small size that tell how the ground strays at the large one. */
const SAMPLES = 200;

// What a pixel of the small size is wanted for.
const TOLD = 1;
const SAMPLE = 2;
const SHARP = 4;

/** The mask, 255 and 0, `times` as large a side as `found`: a pixel of it is `step` × `step` of the picture's. */
export function finerMask(found: Found, times: number, pixels: Pixels, step: number): Uint8Array {
  const { width, height } = fewerSizeOf(pixels, step);
  const wanted = wantedOf(found);
  const placesOf = (what: number): Int32Array => placesIn(wanted, what, found.width, times, width, height);
  const sharp = emptyPlanes(width, height);
  const clear = new Uint8Array(width * height);
  const pixel = new Uint8Array(4);
  for (const i of placesOf(SHARP)) {
    const x = i % width;
    fewerPixelInto(pixel, 0, pixels, step, x, (i - x) / width);
    labInto(sharp, i, pixel, 0);
    if (pixel[3]! < OPAQUE_FROM_ALPHA) clear[i] = 1;
  }
  const spread = Math.max(found.smooth.spread, spreadOf(missesOf(groundLookAt(placesOf(SAMPLE), sharp, found.smooth))));
  const told = placesOf(TOLD);
  const { soft, under } = groundLookAt(told, sharp, found.smooth);
  const mask = enlarged(found.mask, found.width, times, width, height);
  // Of what is told anew: 1, and 1 more than the kind of ground it may be.
  const kinds = new Uint8Array(mask.length);
  const near = nearOf({ spread });
  for (let n = 0; n < told.length; n++) {
    mask[told[n]!] = 255;
    kinds[told[n]!] = 1 + kindAt(n, soft, under, near);
  }
  const stack = new Int32Array(told.length);
  let top = 0;
  const take = (i: number): void => {
    kinds[i] = 1;
    mask[i] = 0;
    stack[top++] = i;
  };
  // What was ground stays it where it still looks like it, and spreads from there into the thing's rim.
  for (const i of told) if (kinds[i]! > 1 && found.ground[smallOf(i, width, found.width, times)] !== 0) take(i);
  const pair = emptyPlanes(2, 1);
  const comesOn = (i: number, from: number): boolean => {
    softInto(pair, 0, sharp, i);
    softInto(pair, 1, sharp, from);
    return isComingOn(0, 1, pair, spread);
  };
  const visit = (i: number, from: number): void => {
    if (kinds[i]! > 1 && (kinds[i] === 1 + PLAIN || comesOn(i, from))) take(i);
  };
  while (top > 0) {
    const i = stack[--top]!;
    const x = i % width;
    if (x > 0) visit(i - 1, i);
    if (x < width - 1) visit(i + 1, i);
    if (i >= width) visit(i - width, i);
    if (i < mask.length - width) visit(i + width, i);
  }
  for (const i of told) if (clear[i] !== 0) mask[i] = 0;
  withoutLooseBits(mask, width, told);
  trimmed(mask, sharp, told);
  return mask;
}

interface GroundLook {
  readonly soft: LabPlanes;
  readonly under: LabPlanes;
}

/** Of each of some pixels (indices) the softened colour, and the ground's there. */
function groundLookAt(places: Int32Array, sharp: LabPlanes, smooth: SmoothGround): GroundLook {
  const [soft, under] = [emptyPlanes(places.length, 1), emptyPlanes(places.length, 1)];
  for (let n = 0; n < places.length; n++) {
    softInto(soft, n, sharp, places[n]!);
    groundInto(under, n, smooth, places[n]!, sharp);
  }
  return { soft, under };
}

function missesOf({ soft, under }: GroundLook): Float64Array {
  return Float64Array.from(soft.L, (L, n) =>
    lengthOf(L - under.L[n]!, soft.a[n]! - under.a[n]!, soft.b[n]! - under.b[n]!),
  );
}

/** The pixel of the small size in which one of the large size is. */
function smallOf(i: number, width: number, smallWidth: number, times: number): number {
  const x = i % width;
  return Math.floor((i - x) / width / times) * smallWidth + Math.floor(x / times);
}

/** What each pixel of the small size is wanted for. */
function wantedOf({ mask, ground, width, height }: Found): Uint8Array {
  const wanted = new Uint8Array(mask.length);
  const mark = (x: number, y: number, reach: number, what: number): void => {
    for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
      for (let u = Math.max(0, x - reach); u <= Math.min(width - 1, x + reach); u++) wanted[v * width + u]! |= what;
    }
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const here = mask[i]!;
      if ((x === width - 1 || mask[i + 1] === here) && (y === height - 1 || mask[i + width] === here)) continue;
      mark(x, y, BAND, TOLD);
      mark(x, y, LOOK, SHARP);
    }
  }
  const stride = Math.floor(mask.length / (2 * SAMPLES)) * 2 + 1;
  for (let i = 0; i < mask.length; i += stride) {
    if (ground[i] !== PLAIN || (wanted[i]! & TOLD) !== 0) continue;
    mark(i % width, Math.floor(i / width), 0, SAMPLE);
    mark(i % width, Math.floor(i / width), 1, SHARP);
  }
  return wanted;
}

/** Indices, at the large size, of what is wanted for `what` at the small one. */
function placesIn(
  wanted: Uint8Array,
  what: number,
  smallWidth: number,
  times: number,
  width: number,
  height: number,
): Int32Array {
  let count = 0;
  for (let i = 0; i < wanted.length; i++) if ((wanted[i]! & what) !== 0) count++;
  const places = new Int32Array(count * times * times);
  let size = 0;
  for (let i = 0; i < wanted.length; i++) {
    if ((wanted[i]! & what) === 0) continue;
    const left = (i % smallWidth) * times;
    const top = Math.floor(i / smallWidth) * times;
    const [right, bottom] = [Math.min(width, left + times), Math.min(height, top + times)];
    for (let y = top; y < bottom; y++) for (let x = left; x < right; x++) places[size++] = y * width + x;
  }
  return places.subarray(0, size);
}

function enlarged(plane: Uint8Array, smallWidth: number, times: number, width: number, height: number): Uint8Array {
  const large = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    if (y % times > 0) {
      large.copyWithin(row, row - width, row);
      continue;
    }
    let at = (y / times) * smallWidth;
    for (let x = 0; x < width; at++) {
      const value = plane[at]!;
      for (const end = Math.min(width, x + times); x < end; x++) large[row + x] = value;
    }
  }
  return large;
}
