import { type Backdrop, backdropThrough, type LabPlanes, lengthOf, nearOf } from './cut-out-backdrop.ts';

/** How dark a shadow may be, of its ground's L*, and how fast it may come on, in L* from one pixel to the next. */
const SHADOW_LEAST = 0.6;
const SHADOW_STEP = 1.3;

/** What a pixel of the ground is: in shadow, or as lit as the ground is. A pixel of the thing is 0. */
export const SHADED = 1;
export const PLAIN = 2;

/** 0 where the thing is, else how the ground is there; the ground is fitted anew to all that was first taken for it. */
export function groundOf(planes: LabPlanes, first: Backdrop): { ground: Uint8Array; backdrop: Backdrop } {
  let backdrop = first;
  let ground = flooded(planes, backdrop);
  // A step that is odd, for no column to be favoured; two thousand places speak well enough for the whole ground.
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
  const near = nearOf(backdrop);
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
