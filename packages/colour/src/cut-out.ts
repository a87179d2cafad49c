import {
  type Backdrop,
  backdropThrough,
  GROUND_WITHIN,
  type LabPlanes,
  labPlanesOf,
  lengthOf,
  softenedOf,
} from './cut-out-backdrop.ts';
import { openHoles } from './cut-out-holes.ts';
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
/** How dark a shadow may be, of its ground's L*, and how fast it may come on, in L* from one pixel to the next. */
const SHADOW_LEAST = 0.6;
const SHADOW_STEP = 1.3;

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

const SHADED = 1;
const PLAIN = 2;

/** 0 where the thing is, else how the ground is there; the ground is fitted anew to all that was first taken for it. */
function groundOf(planes: LabPlanes, first: Backdrop): { ground: Uint8Array; backdrop: Backdrop } {
  let backdrop = first;
  let ground = flooded(planes, backdrop);
  // An odd step of some hundreds: no column is favoured, and two thousand places speak for the ground well enough.
  const stride = Math.floor(ground.length / 4000) * 2 + 1;
  for (let round = 0; round < 2; round++) {
    const places: number[] = [];
    for (let i = 0; i < ground.length; i += stride) if (ground[i] === PLAIN) places.push(i);
    if (places.length < 64) break;
    const { planes: fitted, spread } = backdropThrough(planes, places);
    backdrop = { planes: fitted, spread, borderShare: first.borderShare };
    ground = flooded(planes, backdrop);
  }
  return { ground, backdrop };
}

function flooded(planes: LabPlanes, backdrop: Backdrop): Uint8Array {
  const { width, height, L, a, b } = planes;
  const { L: gL, a: ga, b: gb } = backdrop.planes;
  const spread = Math.min(backdrop.spread, 2);
  const near = GROUND_WITHIN + 3 * spread;
  const step = SHADOW_STEP + spread;
  const ground = new Uint8Array(width * height);
  const kindOf = (i: number, from: number): number => {
    const dL = L[i]! - gL[i]!;
    if (lengthOf(dL, a[i]! - ga[i]!, b[i]! - gb[i]!) < near) return PLAIN;
    // A shadow is the ground darker, its little colour with it, and it comes on softly.
    const depth = L[i]! / Math.max(gL[i]!, 1);
    if (dL > near || depth < SHADOW_LEAST) return 0;
    if (lengthOf(a[i]! - ga[i]! * depth, b[i]! - gb[i]! * depth) > near) return 0;
    return from >= 0 && lengthOf(L[i]! - L[from]!, a[i]! - a[from]!, b[i]! - b[from]!) < step ? SHADED : 0;
  };
  const stack: number[] = [];
  const visit = (i: number, from: number): void => {
    if (ground[i] !== 0) return;
    const kind = kindOf(i, from);
    if (kind === 0) return;
    ground[i] = kind;
    stack.push(i);
  };
  for (let x = 0; x < width; x++) {
    visit(x, -1);
    visit((height - 1) * width + x, -1);
  }
  for (let y = 0; y < height; y++) {
    visit(y * width, -1);
    visit(y * width + width - 1, -1);
  }
  while (stack.length > 0) {
    const i = stack.pop()!;
    const x = i % width;
    if (x > 0) visit(i - 1, i);
    if (x < width - 1) visit(i + 1, i);
    if (i >= width) visit(i - width, i);
    if (i < (height - 1) * width) visit(i + width, i);
  }
  return ground;
}

/** Takes away islands of the mask under a fiftieth of the largest: dust, a scale's tick, a shadow's dark core. */
function withoutSpecks(mask: Uint8Array, width: number, height: number): void {
  const label = new Int32Array(mask.length);
  const sizes: number[] = [0];
  const stack: number[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] === 0 || label[start] !== 0) continue;
    const mine = sizes.length;
    let size = 0;
    label[start] = mine;
    stack.push(start);
    while (stack.length > 0) {
      const i = stack.pop()!;
      size++;
      const x = i % width;
      for (const next of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width]) {
        if (next < 0 || next >= width * height || mask[next] === 0 || label[next] !== 0) continue;
        label[next] = mine;
        stack.push(next);
      }
    }
    sizes.push(size);
  }
  const largest = Math.max(...sizes);
  for (let i = 0; i < mask.length; i++) if (mask[i] !== 0 && sizes[label[i]!]! < largest / 50) mask[i] = 0;
}

const RIM_PASSES = 2;
const OUTWARD = 3;
const INWARD = 2;

/**
 * Takes rim pixels that are more ground than thing out of the mask: those nearer to the ground about them, as it is
 * there in light or shadow, than half the way to what of the thing stands off most close by.
 */
function trimmed(mask: Uint8Array, { width, height, L, a, b }: LabPlanes): void {
  const offOf = (i: number, ground: Float64Array): number =>
    lengthOf(L[i]! - ground[0]!, a[i]! - ground[1]!, b[i]! - ground[2]!);
  const about = (i: number, reach: number, wanted: (at: number) => boolean, visit: (at: number) => void): void => {
    const x = i % width;
    const y = (i - x) / width;
    for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
      for (let u = Math.max(0, x - reach); u <= Math.min(width - 1, x + reach); u++) {
        if (wanted(v * width + u)) visit(v * width + u);
      }
    }
  };
  const ground = new Float64Array(3);
  for (let pass = 0; pass < RIM_PASSES; pass++) {
    const before = mask.slice();
    for (let i = width + 1; i < mask.length - width - 1; i++) {
      if (before[i] === 0) continue;
      if (before[i - 1] !== 0 && before[i + 1] !== 0 && before[i - width] !== 0 && before[i + width] !== 0) continue;
      let n = 0;
      ground.fill(0);
      about(
        i,
        OUTWARD,
        (at) => before[at] === 0,
        (at) => {
          n++;
          ground[0]! += L[at]!;
          ground[1]! += a[at]!;
          ground[2]! += b[at]!;
        },
      );
      for (let side = 0; side < 3; side++) ground[side]! /= n;
      let most = 0;
      about(
        i,
        INWARD,
        (at) => before[at] !== 0,
        (at) => {
          most = Math.max(most, offOf(at, ground));
        },
      );
      if (offOf(i, ground) < most / 2) mask[i] = 0;
    }
  }
}

/** How sure a mask is: by the border, by the contrast along its outline, and by what is odd about its shape. */
function judgedOf(
  mask: Uint8Array,
  ground: Uint8Array,
  planes: LabPlanes,
  backdrop: Backdrop,
): { confidence: number; doubts: string[] } {
  const { width, height } = planes;
  const doubts: string[] = [];
  let area = 0;
  let outline = 0;
  let faint = 0;
  let atBorder = 0;
  let odd = 0;
  const near = GROUND_WITHIN + 3 * Math.min(backdrop.spread, 2);
  const offAt = (i: number): number =>
    lengthOf(
      planes.L[i]! - backdrop.planes.L[i]!,
      planes.a[i]! - backdrop.planes.a[i]!,
      planes.b[i]! - backdrop.planes.b[i]!,
    );
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (mask[i] === 0) {
        if (ground[i] === SHADED || (ground[i] === PLAIN && offAt(i) > near / 2)) odd++;
        continue;
      }
      area++;
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) {
        atBorder++;
        continue;
      }
      if (mask[i - 1] !== 0 && mask[i + 1] !== 0 && mask[i - width] !== 0 && mask[i + width] !== 0) continue;
      outline++;
      if (offAt(i) < 3 * near) faint++;
    }
  }
  const share = area / mask.length;
  if (area === 0) return { confidence: 0, doubts: ['Nothing stands out from the ground.'] };
  const clear = 1 - faint / Math.max(1, outline);
  let confidence = Math.min(1, backdrop.borderShare + 0.05) * (0.4 + 0.6 * clear);
  if (clear < 0.8) doubts.push('Along part of its outline the thing is nearly the colour of the ground.');
  if (atBorder > 0.02 * 2 * (width + height)) {
    confidence *= 0.8;
    doubts.push('The thing runs out of the picture.');
  }
  if (odd > area) {
    confidence *= area / odd;
    doubts.push('More was taken for shadow than is left of the thing: it may be the colour of its ground.');
  }
  if (share < 0.02) {
    confidence *= 0.6;
    doubts.push('What is left is very small.');
  }
  return { confidence, doubts };
}
