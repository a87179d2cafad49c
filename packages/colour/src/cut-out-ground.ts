import { type Backdrop, backdropInto, groundThrough, nearOf, type SmoothGround } from './cut-out-backdrop.ts';
import { emptyPlanes, type LabPlanes, lengthOf } from './lab-planes.ts';

/** How dark a shadow may be, of its ground's L*, and how fast it may come on, in L* from one pixel to the next. */
const SHADOW_LEAST = 0.6;
const SHADOW_STEP = 1.3;

/** What a pixel of the ground is: in shadow, or as lit as the ground is. A pixel of the thing is 0. */
export const SHADED = 1;
export const PLAIN = 2;

interface GroundFound {
  /** 0 where the thing is, else how the ground is there. */
  readonly ground: Uint8Array;
  readonly smooth: SmoothGround;
  readonly backdrop: Backdrop;
}

/** How often the ground is fitted anew. */
const FITS = 2;

/** Where the ground is, fitted anew to all that was first taken for it. */
export function groundOf(planes: LabPlanes, first: SmoothGround): GroundFound {
  const under = emptyPlanes(planes.width, planes.height);
  let smooth = first;
  let backdrop = backdropInto(under, smooth);
  let ground = flooded(planes, backdrop);
  // A step that is odd, for no column to be favoured; a thousand places speak well enough for the whole ground.
  const stride = Math.floor(ground.length / 2000) * 2 + 1;
  for (let round = 0; round < FITS; round++) {
    const places: number[] = [];
    for (let i = 0; i < ground.length; i += stride) if (ground[i] === PLAIN) places.push(i);
    if (places.length < 64) break;
    smooth = { ...groundThrough(planes, places, smooth), borderShare: first.borderShare };
    backdrop = backdropInto(under, smooth);
    ground = flooded(planes, backdrop);
  }
  return { ground, smooth, backdrop };
}

/** What kind of ground pixel `i` may be by its colour, `near` to the ground `under` it; 0 for none. */
export function kindAt(i: number, { L, a, b }: LabPlanes, under: LabPlanes, near: number): number {
  const dL = L[i]! - under.L[i]!;
  if (lengthOf(dL, a[i]! - under.a[i]!, b[i]! - under.b[i]!) < near) return PLAIN;
  // A shadow is the ground darker, its little colour with it.
  const depth = L[i]! / Math.max(under.L[i]!, 1);
  if (dL > near || depth < SHADOW_LEAST) return 0;
  return lengthOf(a[i]! - under.a[i]! * depth, b[i]! - under.b[i]! * depth) > near ? 0 : SHADED;
}

/** Whether what may be shadow comes on softly, from one pixel to the next. */
export function isComingOn(one: number, next: number, { L, a, b }: LabPlanes, spread: number): boolean {
  return lengthOf(L[one]! - L[next]!, a[one]! - a[next]!, b[one]! - b[next]!) < SHADOW_STEP + Math.min(spread, 2);
}

/** The ground that joins the border. */
function flooded(planes: LabPlanes, backdrop: Backdrop): Uint8Array {
  const { width, height } = planes;
  const near = nearOf(backdrop);
  const ground = new Uint8Array(width * height);
  // Each pixel goes in once at most.
  const stack = new Int32Array(width * height);
  let top = 0;
  const visit = (i: number, from: number): void => {
    if (ground[i] !== 0) return;
    const kind = kindAt(i, planes, backdrop.planes, near);
    if (kind === 0) return;
    if (kind === SHADED && (from < 0 || !isComingOn(i, from, planes, backdrop.spread))) return;
    ground[i] = kind;
    stack[top++] = i;
  };
  for (let x = 0; x < width; x++) {
    visit(x, -1);
    visit((height - 1) * width + x, -1);
  }
  for (let y = 0; y < height; y++) {
    visit(y * width, -1);
    visit(y * width + width - 1, -1);
  }
  while (top > 0) {
    const i = stack[--top]!;
    const x = i % width;
    if (x > 0) visit(i - 1, i);
    if (x < width - 1) visit(i + 1, i);
    if (i >= width) visit(i - width, i);
    if (i < (height - 1) * width) visit(i + width, i);
  }
  return ground;
}
