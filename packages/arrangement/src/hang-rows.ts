import type { Box } from './boxes.ts';
import { hangGroundOf } from './hang-ground.ts';
import type { HangTask } from './hang-task.ts';
import { alongRun, arched, type Run, runsOf, sharedAmong } from './runs.ts';

/** Between works hung singly, 12 to 24 in; common practice, no source. */
const LINE_MM = { most: 450, least: 150 };
/** A stretch this short beside the longest is left empty: a lone piece in it would look lost. */
const SLIVER = 0.15;
/** How far a piece may be moved off its row before it is rather left out (a heavy one coming down under reach). */
const OFF_ROW_MM = 400;

/** What stands on a wall already. */
export function standingOn(task: HangTask): Box[] {
  const pinned = task.pieces.flatMap((piece) => (piece.pinnedAt ? [{ ...piece, ...piece.pinnedAt }] : []));
  return [...task.keepClear, ...pinned];
}

/** The stretches of wall clear at the heights of a band. */
export function clearRuns(task: HangTask, bottomMm: number, topMm: number): Run[] {
  const runs = runsOf(task.surface, { bottomMm, topMm }, standingOn(task), task.gapMm);
  const longest = Math.max(0, ...runs.map((run) => run.toMm - run.fromMm));
  return runs.filter((run) => run.toMm - run.fromMm >= SLIVER * longest);
}

/** The widest ordinary gap at which things of these widths find room in the runs; the least gap where none does. */
export function gapFor(task: HangTask, runs: readonly Run[], widthsMm: readonly number[]): number {
  for (let gap = LINE_MM.most; gap >= Math.max(LINE_MM.least, task.gapMm); gap -= 50)
    if (sharedAmong(runs, widthsMm, gap).flat().length === widthsMm.length) return gap;
  return task.gapMm;
}

/** One upright stack of pieces, from the bottom: each with its height on the wall. */
export interface Column {
  readonly widthMm: number;
  readonly pieces: readonly { readonly index: number; readonly yMm: number; readonly offMm?: number }[];
}

/**
 * Columns hung along the clear runs, in order: with one gap about the middle of each run, or filling it. Places by
 * piece; null for what found no room within a hand of where it should be.
 */
export function columnsAlong(task: HangTask, runs: readonly Run[], columns: readonly Column[], gap: number | 'fill') {
  const ground = hangGroundOf(task);
  const widths = columns.map(({ widthMm }) => widthMm);
  const shared = gap === 'fill' ? evenlyShared(task, runs, widths) : sharedAmong(runs, widths, gap);
  shared.forEach((held, r) => {
    const xs = alongRun(
      runs[r]!,
      held.map((i) => widths[i]!),
      gap,
    );
    held.forEach((i, k) => {
      for (const { index, yMm, offMm } of columns[i]!.pieces) ground.put(index, xs[k]! + (offMm ?? 0), yMm, OFF_ROW_MM);
    });
  });
  return ground.places;
}

/** Shared out so that the gaps come out as alike as they may from run to run. */
export function evenlyShared(task: HangTask, runs: readonly Run[], widthsMm: readonly number[]): number[][] {
  const length = runs.reduce((sum, run) => sum + run.toMm - run.fromMm, 0);
  const sum = widthsMm.reduce((total, width) => total + width, 0);
  let gap = (length - sum) / (widthsMm.length + runs.length);
  for (; gap > task.gapMm; gap *= 0.8) {
    const shared = sharedAmong(runs, widthsMm, gap);
    if (shared.flat().length === widthsMm.length) return shared;
  }
  return sharedAmong(runs, widthsMm, task.gapMm);
}

/** In an arch, the largest in the middle, of those that find room: indices. Cut short, an arch would be half of one. */
export function archedThatFit(
  task: HangTask,
  runs: readonly Run[],
  sizes: readonly number[],
  widthsMm: readonly number[],
): number[] {
  const all = arched(sizes);
  const held = evenlyShared(
    task,
    runs,
    all.map((k) => widthsMm[k]!),
  ).flat();
  if (held.length === all.length) return all;
  const kept = held.map((k) => all[k]!).sort((a, b) => a - b);
  return arched(kept.map((k) => sizes[k]!)).map((k) => kept[k]!);
}
