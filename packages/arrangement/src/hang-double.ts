import { hangGroundOf } from './hang-ground.ts';
import { freeOf, type Places } from './hang-line.ts';
import { archedThatFit, type Column, clearRuns, columnsAlong, evenlyShared, gapFor } from './hang-rows.ts';
import type { HangTask } from './hang-task.ts';
import { alongRun, arched } from './runs.ts';

interface Rows {
  /** Below and above. */
  readonly held: readonly [readonly number[], readonly number[]];
  /** The height the two rows meet at, half a gap from each. */
  readonly axisMm: number;
  readonly lowerMm: number;
  readonly upperMm: number;
}

/** Two of like width over each other, the larger below; upper feet and lower tops meet the axis. */
export function doubleOnAxis(task: HangTask): Places {
  const rows = pairedRowsOf(task);
  const columns = rows.pairs.map((pair) =>
    columnOf(task, pair, (height, lower) => rows.axisMm + ((lower ? -1 : 1) * (task.gapMm + height)) / 2),
  );
  const widths = columns.map(({ widthMm }) => widthMm);
  return hungColumns(
    task,
    rows,
    archedThatFit(task, runsFor(task, rows), widths, widths).map((k) => columns[k]!),
  );
}

/** Two of like width over each other; upper tops and lower feet make the two edges of a rectangle. */
export function doubleInRectangle(task: HangTask): Places {
  const rows = pairedRowsOf(task);
  const columns = rows.pairs.map((pair) =>
    columnOf(task, pair, (height, lower) =>
      lower
        ? rows.axisMm - task.gapMm / 2 - rows.lowerMm + height / 2
        : rows.axisMm + task.gapMm / 2 + rows.upperMm - height / 2,
    ),
  );
  // The widest pairs make the ends; one alone makes the middle.
  const alone = rows.pairs[0]?.length === 1 ? 1 : 0;
  const order = arched(columns.slice(alone).map(({ widthMm }) => -widthMm)).map((k) => columns[k + alone]!);
  if (alone === 1) order.splice(order.length >> 1, 0, columns[0]!);
  return hungColumns(task, rows, order, 'fill');
}

/** Two rows, each on a centre line of its own and spread by itself, so that nothing stands over anything but by chance. */
export function doubleOnTwoLines(task: HangTask): Places {
  const { pieces } = task;
  const byWidth = [...freeOf(task)].sort((a, b) => pieces[b]!.widthMm - pieces[a]!.widthMm || a - b);
  const rows = rowsFrom(task, [byWidth.filter((_, k) => k % 2 === 0), byWidth.filter((_, k) => k % 2 === 1)]);
  const ground = hangGroundOf(task);
  const runs = runsFor(task, rows);
  const lines = [rows.axisMm - (task.gapMm + rows.lowerMm) / 2, rows.axisMm + (task.gapMm + rows.upperMm) / 2];
  rows.held.forEach((row, k) => {
    const all = row.map((i) => pieces[i]!.widthMm);
    const order = archedThatFit(task, runs, all, all).map((j) => row[j]!);
    const widths = order.map((i) => pieces[i]!.widthMm);
    evenlyShared(task, runs, widths).forEach((share, r) => {
      const xs = alongRun(
        runs[r]!,
        share.map((j) => widths[j]!),
        'fill',
      );
      for (const [turn, j] of share.entries()) ground.put(order[j]!, xs[turn]!, lines[k]!, 400);
    });
  });
  return ground.places;
}

interface PairedRows extends Rows {
  /** Lower and upper of each pair; an odd one, the largest, stands alone. */
  readonly pairs: readonly (readonly number[])[];
}

function pairedRowsOf(task: HangTask): PairedRows {
  const { pieces } = task;
  const size = (i: number) => pieces[i]!.widthMm * pieces[i]!.heightMm;
  const free = freeOf(task);
  const alone = free.length % 2 === 1 ? [...free].sort((a, b) => size(b) - size(a))[0] : undefined;
  const byWidth = free.filter((i) => i !== alone).sort((a, b) => pieces[b]!.widthMm - pieces[a]!.widthMm || a - b);
  const load = (i: number) => size(i) + 1e6 * (pieces[i]!.weightKg ?? 0);
  const pairs = Array.from({ length: byWidth.length / 2 }, (_, k) =>
    byWidth.slice(2 * k, 2 * k + 2).sort((a, b) => load(b) - load(a)),
  );
  const rows = rowsFrom(task, [pairs.map(([lower]) => lower!), pairs.map(([, upper]) => upper!)]);
  return { ...rows, pairs: alone === undefined ? pairs : [[alone], ...pairs] };
}

function rowsFrom(task: HangTask, held: Rows['held']): Rows {
  const { pieces, surface, gapMm } = task;
  const [lowerMm, upperMm] = held.map((row) => Math.max(0, ...row.map((i) => pieces[i]!.heightMm))) as [number, number];
  const lowest = surface.bottomMm + lowerMm + gapMm / 2;
  const highest = surface.topMm - upperMm - gapMm / 2;
  // The pair of rows is one object to the eye: its middle goes on the centre line.
  const axisMm = Math.min(highest, Math.max(lowest, task.centreLineMm + (lowerMm - upperMm) / 2));
  return { held, axisMm, lowerMm, upperMm };
}

function columnOf(task: HangTask, pair: readonly number[], at: (heightMm: number, lower: boolean) => number): Column {
  const widthMm = Math.max(...pair.map((i) => task.pieces[i]!.widthMm));
  return {
    widthMm,
    pieces: pair.map((index, k) => {
      const { heightMm } = task.pieces[index]!;
      return { index, yMm: pair.length === 1 ? task.centreLineMm : at(heightMm, k === 0) };
    }),
  };
}

function runsFor(task: HangTask, { axisMm, lowerMm, upperMm }: Rows) {
  return clearRuns(task, axisMm - lowerMm - task.gapMm / 2, axisMm + upperMm + task.gapMm / 2);
}

function hungColumns(task: HangTask, rows: Rows, columns: readonly Column[], gap?: 'fill'): Places {
  const runs = runsFor(task, rows);
  const widths = columns.map(({ widthMm }) => widthMm);
  // Closer than a single line, so that two rows read as one group.
  return columnsAlong(task, runs, columns, gap ?? Math.min(gapFor(task, runs, widths), Math.max(task.gapMm, 200)));
}
