import { hangGroundOf } from './hang-ground.ts';
import { archedThatFit, type Column, clearRuns, columnsAlong, gapFor } from './hang-rows.ts';
import type { HangTask } from './hang-task.ts';
import type { Spot } from './nearest-free.ts';

/** Between the two of a pair, 4 to 8 in; common practice, no source. */
const PAIR_MM = 150;

export type Places = readonly (Spot | null)[];

/** Every centre on the centre line, one ordinary gap, in the order given, about the middle of each clear run. */
export function lineOneGap(task: HangTask): Places {
  const { runs, columns } = singles(task, freeOf(task));
  return columnsAlong(
    task,
    runs,
    columns,
    gapFor(
      task,
      runs,
      columns.map(({ widthMm }) => widthMm),
    ),
  );
}

/** Every centre on the centre line, each run filled evenly, the largest in the middle. */
export function lineFilling(task: HangTask): Places {
  const free = freeOf(task);
  const { runs, columns } = singles(task, free);
  const order = archedThatFit(
    task,
    runs,
    free.map((i) => task.pieces[i]!.widthMm * task.pieces[i]!.heightMm),
    columns.map(({ widthMm }) => widthMm),
  );
  return columnsAlong(
    task,
    runs,
    order.map((k) => columns[k]!),
    'fill',
  );
}

/** Every centre on the centre line, those nearest in size side by side in pairs, wide gaps between the pairs. */
export function lineInPairs(task: HangTask): Places {
  // Closer pairs where not all find room at the usual gap.
  const tries = [PAIR_MM, 100, 0].map((gap) => inPairs(task, Math.max(task.gapMm, gap)));
  const missing = tries.map((places) => places.filter((at) => at === null).length);
  return tries[missing.indexOf(Math.min(...missing))]!;
}

function inPairs(task: HangTask, gap: number): Places {
  const sizeOf = (i: number) => task.pieces[i]!.widthMm * task.pieces[i]!.heightMm;
  const bySize = [...freeOf(task)].sort((a, b) => sizeOf(b) - sizeOf(a) || a - b);
  const pairs = Array.from({ length: Math.ceil(bySize.length / 2) }, (_, k) => bySize.slice(2 * k, 2 * k + 2));
  const columns = pairs.map((pair): Column => {
    const widths = pair.map((i) => task.pieces[i]!.widthMm);
    const widthMm = widths.reduce((sum, width) => sum + width, 0) + gap * (pair.length - 1);
    const pieces = pair.map((index, k) => {
      const offMm = (k === 0 ? -1 : 1) * ((widthMm - widths[k]!) / 2);
      return { index, yMm: task.centreLineMm, offMm: pair.length === 1 ? 0 : offMm };
    });
    return { widthMm, pieces };
  });
  const { runs } = singles(task, bySize);
  const widths = columns.map(({ widthMm }) => widthMm);
  const ordered = archedThatFit(task, runs, widths, widths).map((k) => columns[k]!);
  return columnsAlong(task, runs, ordered, 'fill');
}

/** The pieces not pinned, in the order given. */
export function freeOf(task: HangTask): readonly number[] {
  return hangGroundOf(task).free;
}

function singles(task: HangTask, order: readonly number[]) {
  const tallest = Math.max(0, ...order.map((i) => task.pieces[i]!.heightMm));
  const runs = clearRuns(task, task.centreLineMm - tallest / 2, task.centreLineMm + tallest / 2);
  const columns = order.map((index): Column => {
    return { widthMm: task.pieces[index]!.widthMm, pieces: [{ index, yMm: task.centreLineMm }] };
  });
  return { runs, columns };
}
