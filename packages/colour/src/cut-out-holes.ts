import { type Backdrop, type LabPlanes, lengthOf, nearOf } from './cut-out-backdrop.ts';

// A hole shows the ground, lit or shaded: its very hue and smoothness. A white glaze or a page is hardly ever that near.
const HUE_WITHIN = 0.9;
const LEAST_DEPTH = 0.7;
const MOST_DEPTH = 1.01;
/** Pixels clear of the hole's own rim that are needed to tell. */
const LEAST_INSIDE = 8;
const MARK = 3;

/** Marks in `ground` (0 for the thing) what shows of the ground through the thing: through a handle, between legs. */
export function openHoles(ground: Uint8Array, planes: LabPlanes, backdrop: Backdrop): void {
  const { width, height, L, a, b } = planes;
  const { L: gL, a: ga, b: gb } = backdrop.planes;
  const within = nearOf(backdrop);
  const could = (i: number): boolean => {
    const depth = L[i]! / Math.max(gL[i]!, 1);
    if (depth < LEAST_DEPTH - 0.06 || depth > MOST_DEPTH + 0.02) return false;
    return lengthOf(a[i]! - ga[i]! * depth, b[i]! - gb[i]! * depth) < within;
  };
  const roughAt = (i: number): number =>
    Math.abs(L[i - 1]! + L[i + 1]! - 2 * L[i]!) + Math.abs(L[i - width]! + L[i + width]! - 2 * L[i]!);
  let rough = 0;
  let plain = 0;
  for (let y = 1; y < height - 1; y += 2) {
    for (let x = 1; x < width - 1; x += 2) {
      const i = y * width + x;
      if (ground[i] === 0) continue;
      rough += roughAt(i);
      plain++;
    }
  }
  const smooth = (1.5 * rough) / Math.max(1, plain) + 0.2;
  const seen = new Uint8Array(width * height);
  for (let start = 0; start < seen.length; start++) {
    if (ground[start] !== 0 || seen[start] !== 0 || !could(start)) continue;
    const region = [start];
    seen[start] = MARK;
    for (const i of region) {
      const x = i % width;
      for (const next of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width]) {
        if (next < 0 || next >= seen.length || seen[next] !== 0 || ground[next] !== 0 || !could(next)) continue;
        if (Math.abs(L[next]! - L[i]!) > within) continue;
        seen[next] = MARK;
        region.push(next);
      }
    }
    const inside = region.filter((i) => [i - 1, i + 1, i - width, i + width].every((next) => seen[next] === MARK));
    // Medians: where the hole is narrow, half of what is inside may still hold some of the thing's edge.
    const median = (value: (i: number) => number): number =>
      inside.map(value).sort((p, q) => p - q)[inside.length >> 1] ?? 0;
    const depth = median((i) => L[i]! / Math.max(gL[i]!, 1));
    const off = lengthOf(
      median((i) => a[i]! - ga[i]! * depth),
      median((i) => b[i]! - gb[i]! * depth),
    );
    const open =
      inside.length >= LEAST_INSIDE &&
      off < HUE_WITHIN &&
      depth > LEAST_DEPTH &&
      depth < MOST_DEPTH &&
      median(roughAt) < smooth;
    if (open) for (const i of region) ground[i] = MARK;
    for (const i of region) seen[i] = 1;
  }
}
