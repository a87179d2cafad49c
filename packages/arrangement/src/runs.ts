import type { Box, Extent } from './boxes.ts';

/** A stretch of wall (mm along it). */
export interface Run {
  readonly fromMm: number;
  readonly toMm: number;
}

/** What is left of a wall, left to right, where nothing to be kept clear comes within a gap of a band of heights (mm). */
export function runsOf(
  surface: Extent,
  band: { readonly bottomMm: number; readonly topMm: number },
  keepClear: readonly Box[],
  gapMm: number,
): Run[] {
  const shut = keepClear
    .filter(
      (box) =>
        box.yMm - box.heightMm / 2 - gapMm < band.topMm - 1e-6 &&
        box.yMm + box.heightMm / 2 + gapMm > band.bottomMm + 1e-6,
    )
    .map((box) => ({ fromMm: box.xMm - box.widthMm / 2 - gapMm, toMm: box.xMm + box.widthMm / 2 + gapMm }))
    .sort((a, b) => a.fromMm - b.fromMm);
  const runs: Run[] = [];
  let fromMm = surface.leftMm;
  for (const stretch of shut) {
    if (stretch.fromMm > fromMm) runs.push({ fromMm, toMm: Math.min(stretch.fromMm, surface.rightMm) });
    fromMm = Math.max(fromMm, stretch.toMm);
  }
  if (fromMm < surface.rightMm) runs.push({ fromMm, toMm: surface.rightMm });
  return runs;
}

/**
 * Things of given widths (mm), in order, shared out among runs: each run takes what its length is of the whole, as
 * far as it holds that with a gap between (mm). By run, indices; what fits nowhere is left out.
 */
export function sharedAmong(runs: readonly Run[], widthsMm: readonly number[], gapMm: number): number[][] {
  const length = ({ fromMm, toMm }: Run) => toMm - fromMm;
  const total = runs.reduce((sum, run) => sum + length(run), 0);
  const widths = widthsMm.reduce((sum, width) => sum + width + gapMm, 0);
  const shared: number[][] = runs.map(() => []);
  const used = runs.map(() => 0);
  let at = 0;
  let due = 0;
  runs.forEach((run, r) => {
    due += (widths * length(run)) / total;
    for (; at < widthsMm.length; at++) {
      const width = widthsMm[at]!;
      const before = widthsMm.slice(0, at).reduce((sum, one) => sum + one + gapMm, 0);
      if (used[r]! + width > length(run)) break;
      if (before + width / 2 > due && r < runs.length - 1) break;
      shared[r]!.push(at);
      used[r]! += width + gapMm;
    }
  });
  // What the last run could not hold goes where there is room left, widest first.
  for (const i of widthsMm
    .map((_, j) => j)
    .slice(at)
    .sort((a, b) => widthsMm[b]! - widthsMm[a]!)) {
    const r = runs.findIndex((run, k) => used[k]! + widthsMm[i]! <= length(run));
    if (r < 0) continue;
    shared[r]!.push(i);
    used[r]! += widthsMm[i]! + gapMm;
  }
  return shared;
}

/** Centres (mm, not rounded) of things put along a run in order: with one gap about its middle, or filling it evenly. */
export function alongRun(run: Run, widthsMm: readonly number[], gap: number | 'fill'): number[] {
  const sum = widthsMm.reduce((total, width) => total + width, 0);
  const length = run.toMm - run.fromMm;
  const gapMm = gap === 'fill' ? (length - sum) / (widthsMm.length + 1) : gap;
  let at = run.fromMm + (length - sum - gapMm * (widthsMm.length - 1)) / 2;
  return widthsMm.map((width) => {
    const centre = at + width / 2;
    at += width + gapMm;
    return centre;
  });
}

/** The largest in the middle, falling off to both sides: indices in order, by size. */
export function arched(sizes: readonly number[]): number[] {
  const bySize = sizes.map((_, i) => i).sort((a, b) => sizes[b]! - sizes[a]! || a - b);
  const order: number[] = [];
  bySize.forEach((i, turn) => {
    if (turn % 2 === 0) order.push(i);
    else order.unshift(i);
  });
  return order;
}
