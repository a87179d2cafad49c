import type { Box } from './boxes.ts';
import { hangGroundOf } from './hang-ground.ts';
import { freeOf, type Places } from './hang-line.ts';
import { clearRuns } from './hang-rows.ts';
import type { HangTask } from './hang-task.ts';
import { alongRun, arched, type Run, sharedAmong } from './runs.ts';

/** More rows than this, above and below together, would be out of sight. */
const MOST_ROWS = 7;
/** A salon is massed: no longer, over its height, than this where the wall lets it (own rule). */
const LONG = 3;

/**
 * A straight gap runs along the wall at the centre line: the larger pieces stand on it and hang from it, the largest in
 * the middle, and the smaller ones stand in rows of the same length over and under these, one gap away.
 */
export function salonOnAxis(task: HangTask): Places {
  const { pieces, gapMm, centreLineMm: axis } = task;
  const ground = hangGroundOf(task);
  const area = (i: number) => pieces[i]!.widthMm * pieces[i]!.heightMm;
  const bySize = [...freeOf(task)].sort((a, b) => area(b) - area(a) || a - b);
  const { above, below, runs } = rowsAbout(task, bySize);
  const tallest = (row: readonly number[] = []) => Math.max(0, ...row.map((i) => pieces[i]!.heightMm));
  for (const [side, rows] of [
    [1, above],
    [-1, below],
  ] as const)
    for (const row of rows) {
      const order = arched(row.map(area)).map((j) => row[j]!);
      const widths = order.map((i) => pieces[i]!.widthMm);
      const stood: Box[] = pieces.flatMap((piece, i) => {
        const at = ground.places[i];
        return at && !piece.pinnedAt && side * (at.yMm - axis) > 0 ? [{ ...piece, ...at }] : [];
      });
      sharedAmong(runs, widths, gapMm).forEach((share, r) => {
        const xs = alongRun(
          runs[r]!,
          share.map((j) => widths[j]!),
          gapMm,
        );
        share.forEach((j, turn) => {
          const { widthMm, heightMm } = pieces[order[j]!]!;
          const off = reached(stood, xs[turn]!, widthMm + 2 * gapMm, axis, side);
          const foot = off === 0 ? gapMm / 2 : off + gapMm;
          ground.put(order[j]!, xs[turn]!, axis + side * (foot + heightMm / 2), 2 * gapMm);
        });
      });
    }
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
      axis + side * (tallest(side > 0 ? above[0] : below[0]) + pieces[i]!.heightMm / 2),
    );
  }
  return ground.places;
}

/** How far from the axis, on one side, things reach that would be over or under a piece of this width. */
function reached(stood: readonly Box[], xMm: number, widthMm: number, axisMm: number, side: 1 | -1): number {
  return stood
    .filter((box) => Math.abs(box.xMm - xMm) < (box.widthMm + widthMm) / 2)
    .reduce((most, box) => Math.max(most, side * (box.yMm - axisMm) + box.heightMm / 2), 0);
}

interface Rows {
  readonly above: readonly (readonly number[])[];
  readonly below: readonly (readonly number[])[];
  readonly runs: readonly Run[];
}

/** As few rows as mass all within the runs at the axis, all about equally long, the larger pieces nearest to it. */
function rowsAbout(task: HangTask, bySize: readonly number[]): Rows {
  let [best, least] = [undefined as Rows | undefined, Number.POSITIVE_INFINITY];
  for (let count = 2; count <= MOST_ROWS; count++) {
    const { rows, missing, long } = rowsOfLength(task, bySize, count);
    // One too many is worse than too long a salon, and one row more is better than either.
    const cost = 10 * missing + Math.max(0, long - LONG) + 0.1 * count;
    if (cost < least) [best, least] = [rows, cost];
  }
  return best!;
}

/** Rows as long as so many would be, and how well they do: how many find no room, how long all is over its height. */
function rowsOfLength(task: HangTask, bySize: readonly number[], count: number) {
  const { pieces, gapMm, surface, centreLineMm: axis } = task;
  const whole = bySize.reduce((sum, i) => sum + pieces[i]!.widthMm + gapMm, 0);
  const length = Math.max(whole / count, ...bySize.map((i) => pieces[i]!.widthMm));
  const sides = { above: [] as number[][], below: [] as number[][] };
  const used = { above: gapMm / 2, below: gapMm / 2 };
  const room = { above: surface.topMm - axis, below: axis - surface.bottomMm };
  const left = [...bySize];
  for (let turn = 0; turn < MOST_ROWS && left.length > 0; turn++) {
    // The heavier row hangs below.
    const side = turn % 2 === 0 ? 'below' : 'above';
    const row = rowOf(task, left, length, room[side] - used[side]);
    if (row.length === 0) continue;
    sides[side].push(row);
    used[side] += gapMm + Math.max(...row.map((i) => pieces[i]!.heightMm));
  }
  const tall = (row: readonly number[] = []) => Math.max(0, ...row.map((i) => pieces[i]!.heightMm));
  const clear = clearRuns(task, axis - tall(sides.below[0]) - gapMm, axis + tall(sides.above[0]) + gapMm);
  const runs = drawnIn(clear, dominantOn(task), 1.1 * length);
  const held = [...sides.above, ...sides.below].map((row) => {
    const widths = row.map((i) => pieces[i]!.widthMm);
    return sharedAmong(runs, widths, gapMm).flat().length;
  });
  const missing = bySize.length - held.reduce((sum, one) => sum + one, 0);
  return { rows: { ...sides, runs }, missing, long: length / (used.above + used.below) };
}

/** Beside what dominates the wall, only as much of the runs as is needed, half on either side of it. */
function drawnIn(runs: readonly Run[], over: Run | undefined, lengthMm: number): readonly Run[] {
  if (over === undefined) return runs;
  const middle = (over.fromMm + over.toMm) / 2;
  const beside = [...runs].sort((a, b) => distanceMm(a, middle) - distanceMm(b, middle)).slice(0, 2);
  return runs
    .filter((run) => beside.includes(run))
    .map(({ fromMm, toMm }) =>
      toMm <= middle
        ? { fromMm: Math.max(fromMm, toMm - lengthMm / 2), toMm }
        : { fromMm, toMm: Math.min(toMm, fromMm + lengthMm / 2) },
    );
}

function distanceMm({ fromMm, toMm }: Run, xMm: number): number {
  return Math.max(0, fromMm - xMm, xMm - toMm);
}

/** The next pieces for a row of this length and height, taken from those left. */
function rowOf({ pieces, gapMm }: HangTask, left: number[], lengthMm: number, highMm: number): number[] {
  const row: number[] = [];
  let used = -gapMm;
  for (let k = 0; k < left.length; ) {
    const { widthMm, heightMm } = pieces[left[k]!]!;
    if (heightMm > highMm || used + gapMm + widthMm / 2 > lengthMm) k++;
    else {
      used += gapMm + widthMm;
      row.push(...left.splice(k, 1));
    }
  }
  return row;
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
