import { hangGroundOf } from './hang-ground.ts';
import { freeOf, type Places } from './hang-line.ts';
import { type Column, clearRuns } from './hang-rows.ts';
import type { HangTask } from './hang-task.ts';
import { alongRun, arched, sharedAmong } from './runs.ts';

/** What a column leaves empty, about. */
const FILL = 0.8;

/**
 * Columns of pieces of like width, one gap between all, every column's middle on one height: a clear rectangle. A
 * column goes only where the wall is clear for its whole height; small pieces stand two in a row within one.
 */
export function salonInColumns(task: HangTask): Places {
  const { pieces, surface, gapMm } = task;
  const free = freeOf(task);
  const ground = hangGroundOf(task);
  const tallest = Math.max(0, ...free.map((i) => pieces[i]!.heightMm));
  const room = surface.topMm - surface.bottomMm;
  const area = free.reduce((sum, i) => sum + (pieces[i]!.widthMm + gapMm) * (pieces[i]!.heightMm + gapMm), 0) / FILL;
  let best: { columns: Column[]; held: number[][]; runs: ReturnType<typeof clearRuns>; missing: number } | undefined;
  for (let height = Math.max(tallest, 1200); best === undefined || height <= room; height += 150) {
    const high = Math.min(height, room);
    const middle = Math.min(surface.topMm - high / 2, Math.max(surface.bottomMm + high / 2, task.centreLineMm));
    const runs = clearRuns(task, middle - high / 2, middle + high / 2);
    const length = runs.reduce((sum, run) => sum + run.toMm - run.fromMm, 0);
    if (best !== undefined && length * high < area * 0.8) continue;
    const columns = columnsOf(task, free, high, middle);
    const held = sharedAmong(
      runs,
      columns.map(({ widthMm }) => widthMm),
      gapMm,
    );
    const placed = held.flat().reduce((sum, k) => sum + columns[k]!.pieces.length, 0);
    const missing = free.length - placed;
    if (best === undefined || missing < best.missing) best = { columns, held, runs, missing };
    if (missing === 0) break;
  }
  best!.held.forEach((share, r) => {
    const xs = alongRun(
      best!.runs[r]!,
      share.map((k) => best!.columns[k]!.widthMm),
      gapMm,
    );
    share.forEach((k, turn) => {
      for (const { index, yMm, offMm } of best!.columns[k]!.pieces)
        ground.put(index, xs[turn]! + (offMm ?? 0), yMm, 2 * gapMm + 20);
    });
  });
  // What no column holds goes as near as it can to the middle: over a door, beside a switch.
  const middle = (surface.leftMm + surface.rightMm) / 2;
  for (const i of free) if (ground.places[i] === null) ground.put(i, middle, task.centreLineMm);
  return ground.places;
}

function columnsOf(task: HangTask, free: readonly number[], highMm: number, middleMm: number): Column[] {
  const { pieces, gapMm } = task;
  const left = [...free].sort((a, b) => pieces[b]!.widthMm - pieces[a]!.widthMm || a - b);
  const columns: Column[] = [];
  while (left.length > 0) {
    const widthMm = pieces[left[0]!]!.widthMm;
    const rows: number[][] = [];
    let used = -gapMm;
    for (let k = 0; k < left.length; ) {
      const piece = pieces[left[k]!]!;
      if (used + gapMm + piece.heightMm > highMm) {
        k++;
        continue;
      }
      const row = [left[k]!];
      left.splice(k, 1);
      const beside = left.findIndex((i) => {
        const other = pieces[i]!;
        const alike = other.heightMm <= piece.heightMm && other.heightMm > 0.6 * piece.heightMm;
        return alike && piece.widthMm + gapMm + other.widthMm <= widthMm;
      });
      if (beside >= 0) row.push(...left.splice(beside, 1));
      rows.push(row);
      used += gapMm + piece.heightMm;
      if (beside >= 0 && beside < k) k--;
    }
    columns.push(stacked(task, rows, widthMm, used, middleMm));
  }
  return arched(columns.map(({ widthMm, pieces: held }) => widthMm * held.length)).map((k) => columns[k]!);
}

/** Rows over each other about a height, the largest lowest but one, so that the eye meets it. */
function stacked(task: HangTask, rows: readonly number[][], widthMm: number, usedMm: number, middleMm: number): Column {
  const { pieces, gapMm } = task;
  const order = arched(rows.map(([first]) => pieces[first!]!.heightMm * pieces[first!]!.widthMm)).map((k) => rows[k]!);
  let y = middleMm - usedMm / 2;
  const held: { index: number; yMm: number; offMm: number }[] = [];
  for (const row of order) {
    const height = Math.max(...row.map((i) => pieces[i]!.heightMm));
    const wide = row.reduce((sum, i) => sum + pieces[i]!.widthMm, 0) + gapMm * (row.length - 1);
    let x = -wide / 2;
    for (const index of row) {
      held.push({ index, yMm: y + height / 2, offMm: x + pieces[index]!.widthMm / 2 });
      x += pieces[index]!.widthMm + gapMm;
    }
    y += height + gapMm;
  }
  return { widthMm, pieces: held };
}
