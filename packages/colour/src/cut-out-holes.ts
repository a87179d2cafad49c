import { type Backdrop, nearOf } from './cut-out-backdrop.ts';
import { type LabPlanes, lengthOf } from './lab-planes.ts';

// A hole shows the ground, lit or shaded: its very hue and smoothness. A white glaze or a page is hardly ever that near.
const HUE_WITHIN = 0.9;
const LEAST_DEPTH = 0.7;
const MOST_DEPTH = 1.01;
/** Pixels clear of the hole's own rim that are needed to tell, and as many as tell well enough. */
const LEAST_INSIDE = 8;
const ENOUGH_INSIDE = 2000;
const MARK = 3;

/** Marks in `ground` (0 for the thing) what shows of the ground through the thing: through a handle, between legs. */
export function openHoles(ground: Uint8Array, planes: LabPlanes, backdrop: Backdrop): void {
  const { width, height, L, a, b } = planes;
  const { L: gL, a: ga, b: gb } = backdrop.planes;
  const within = nearOf(backdrop);
  const smooth = 1.5 * roughnessOf(ground, planes) + 0.2;
  // 0 not looked at, MARK in the region at hand, 1 done with or out of the question.
  const seen = new Uint8Array(width * height);
  const region = new Int32Array(width * height);
  let size = 0;
  const take = (i: number, from: number): void => {
    if (seen[i] !== 0 || ground[i] !== 0) return;
    const depth = L[i]! / Math.max(gL[i]!, 1);
    if (
      depth < LEAST_DEPTH - 0.06 ||
      depth > MOST_DEPTH + 0.02 ||
      lengthOf(a[i]! - ga[i]! * depth, b[i]! - gb[i]! * depth) >= within
    ) {
      seen[i] = 1;
      return;
    }
    if (Math.abs(L[i]! - L[from]!) > within) return;
    seen[i] = MARK;
    region[size++] = i;
  };
  for (let start = 0; start < seen.length; start++) {
    if (ground[start] !== 0 || seen[start] !== 0) continue;
    size = 0;
    take(start, start);
    for (let at = 0; at < size; at++) {
      const i = region[at]!;
      const x = i % width;
      if (x > 0) take(i - 1, i);
      if (x < width - 1) take(i + 1, i);
      if (i >= width) take(i - width, i);
      if (i < seen.length - width) take(i + width, i);
    }
    // Most are of a few pixels, and none of those can tell.
    if (size > LEAST_INSIDE && isOpen(region.subarray(0, size))) {
      for (let at = 0; at < size; at++) ground[region[at]!] = MARK;
    }
    for (let at = 0; at < size; at++) seen[region[at]!] = 1;
  }

  function isOpen(found: Int32Array): boolean {
    const inside = found.filter(
      (i) => seen[i - 1] === MARK && seen[i + 1] === MARK && seen[i - width] === MARK && seen[i + width] === MARK,
    );
    if (inside.length < LEAST_INSIDE) return false;
    const stride = Math.ceil(inside.length / ENOUGH_INSIDE);
    const some = inside.filter((_, n) => n % stride === 0);
    // Medians: where the hole is narrow, half of what is inside may still hold some of the thing's edge.
    const median = (value: (i: number) => number): number => Float64Array.from(some, value).sort()[some.length >> 1]!;
    const depth = median((i) => L[i]! / Math.max(gL[i]!, 1));
    if (depth <= LEAST_DEPTH || depth >= MOST_DEPTH) return false;
    const off = lengthOf(
      median((i) => a[i]! - ga[i]! * depth),
      median((i) => b[i]! - gb[i]! * depth),
    );
    return off < HUE_WITHIN && median((i) => roughAt(L, i, width)) < smooth;
  }
}

function roughAt(L: Float32Array, i: number, width: number): number {
  return Math.abs(L[i - 1]! + L[i + 1]! - 2 * L[i]!) + Math.abs(L[i - width]! + L[i + width]! - 2 * L[i]!);
}

/** How rough the ground that joins the border is, in the mean; every second pixel of every second row tells. */
function roughnessOf(ground: Uint8Array, { width, height, L }: LabPlanes): number {
  let rough = 0;
  let plain = 0;
  for (let y = 1; y < height - 1; y += 2) {
    for (let x = 1; x < width - 1; x += 2) {
      const i = y * width + x;
      if (ground[i] === 0) continue;
      rough += roughAt(L, i, width);
      plain++;
    }
  }
  return rough / Math.max(1, plain);
}
