import { hangGroundOf } from './hang-ground.ts';
import { freeOf, type Places } from './hang-line.ts';
import { clearRuns } from './hang-rows.ts';
import type { HangTask } from './hang-task.ts';
import { alongRun, arched, type Run, sharedAmong } from './runs.ts';

/**
 * A straight gap runs along the wall at the centre line: the larger pieces stand on it and hang from it, the largest
 * in the middle, and the smaller ones go where there is room above and below, nearest to the middle.
 */
export function salonOnAxis(task: HangTask): Places {
  const { pieces, gapMm, centreLineMm: axis } = task;
  const ground = hangGroundOf(task);
  const area = (i: number) => pieces[i]!.widthMm * pieces[i]!.heightMm;
  const bySize = [...freeOf(task)].sort((a, b) => area(b) - area(a) || a - b);
  const up = bySize.filter((i) => pieces[i]!.heightMm + gapMm / 2 + axis <= task.surface.topMm);
  const onAxis = up.slice(0, Math.max(2, Math.ceil(bySize.length * shareOnAxis(task, bySize))));
  // The heavier half hangs below.
  const rows = [onAxis.filter((_, k) => k % 2 === 1), onAxis.filter((_, k) => k % 2 === 0)] as const;
  const tallest = (row: readonly number[]) => Math.max(0, ...row.map((i) => pieces[i]!.heightMm));
  const runs = clearRuns(task, axis - tallest(rows[1]) - gapMm, axis + tallest(rows[0]) + gapMm);
  rows.forEach((row, k) => {
    const side = k === 0 ? 1 : -1;
    const order = arched(row.map(area)).map((j) => row[j]!);
    const widths = order.map((i) => pieces[i]!.widthMm);
    sharedAmong(runs, widths, gapMm).forEach((share, r) => {
      const xs = alongRun(
        runs[r]!,
        share.map((j) => widths[j]!),
        gapMm,
      );
      share.forEach((j, turn) => {
        const i = order[j]!;
        ground.put(i, xs[turn]!, axis + (side * (gapMm + pieces[i]!.heightMm)) / 2, 2 * gapMm);
      });
    });
  });
  const over = dominantOn(task);
  const homes = runs.length > 0 ? runs : [{ fromMm: task.surface.leftMm, toMm: task.surface.rightMm }];
  for (const [turn, i] of bySize.filter((one) => ground.places[one] === null).entries()) {
    const home = homeOf(homes, turn);
    const side = turn % 2 === 0 ? 1 : -1;
    // The axis itself stays free: what comes later is wanted well off it.
    ground.put(
      i,
      over === undefined
        ? (home.fromMm + home.toMm) / 2
        : over.fromMm + ((turn * 0.618034) % 1) * (over.toMm - over.fromMm),
      axis + side * (tallest(rows[side > 0 ? 0 : 1]) + pieces[i]!.heightMm / 2),
    );
  }
  return ground.places;
}

/** What stands across the axis already, far wider than what is to be hung: the rest goes over and under all of it. */
function dominantOn({ pieces, centreLineMm }: HangTask): Run | undefined {
  const widest = Math.max(0, ...pieces.map((piece) => (piece.pinnedAt ? 0 : piece.widthMm)));
  const across = pieces.flatMap(({ pinnedAt: at, widthMm, heightMm }) =>
    at && widthMm > 3 * widest && Math.abs(at.yMm - centreLineMm) < heightMm / 2
      ? [{ fromMm: at.xMm - widthMm / 2, toMm: at.xMm + widthMm / 2 }]
      : [],
  );
  return across.length === 1 ? across[0] : undefined;
}

/** How many stand at the axis: fewer where there is room for further rows above and below them. */
function shareOnAxis({ pieces, gapMm, surface, centreLineMm }: HangTask, bySize: readonly number[]): number {
  const tall = Math.max(0, ...bySize.map((i) => pieces[i]!.heightMm));
  const low = Math.min(...bySize.map((i) => pieces[i]!.heightMm));
  const room = [surface.topMm - centreLineMm, centreLineMm - surface.bottomMm];
  const further = room.filter((mm) => mm - 1.5 * gapMm - tall >= low).length;
  return further === 2 ? 0.45 : further === 1 ? 0.7 : 1;
}

/** Runs in turn, the longer ones more often. */
function homeOf(runs: readonly Run[], turn: number): Run {
  const total = runs.reduce((sum, run) => sum + run.toMm - run.fromMm, 0);
  // The golden section spreads turns evenly over the whole length, whatever their number.
  let left = ((turn * 0.618034) % 1) * total;
  for (const run of runs) {
    left -= run.toMm - run.fromMm;
    if (left <= 0) return run;
  }
  return runs[runs.length - 1]!;
}
