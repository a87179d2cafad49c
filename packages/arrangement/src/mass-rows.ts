import type { MassName, MassPlace, MassTask } from './mass-task.ts';
import { alongRun, arched } from './runs.ts';
import { type Silhouette, seenShares } from './seen-from-front.ts';

const SEEN = 1 / 3;
/** What stands apart is one of these shares of the level away from the rest. */
const APART = [0.18, 0.1, 0.04];

/**
 * Lays things in rows from the back, the tallest first, then takes away what hides another or is hidden. One set apart
 * takes as much room as leaves the most of the others standing.
 */
export function massedRows(task: MassTask, name: MassName): (MassPlace | null)[] {
  const tries = (name === 'slope with one apart' ? APART : [0]).map((share) => laid(task, name, share));
  const missing = tries.map((places) => places.filter((at) => at === null).length);
  return tries[missing.indexOf(Math.min(...missing))]!;
}

function laid(task: MassTask, name: MassName, apartShare: number): (MassPlace | null)[] {
  const { things, gapMm, edgeMm } = task;
  const places: (MassPlace | null)[] = things.map(() => null);
  const clear = task.clearHeightMm ?? Infinity;
  const tallFirst = things
    .map((_, i) => i)
    .filter((i) => things[i]!.heightMm <= clear)
    .sort((a, b) => things[b]!.heightMm - things[a]!.heightMm || things[b]!.widthMm - things[a]!.widthMm || a - b);
  const apart = name === 'slope with one apart' && tallFirst.length > 4 ? tallFirst[tallFirst.length - 1] : undefined;
  const shelf = { fromMm: edgeMm, toMm: task.widthMm - edgeMm };
  const run =
    apart === undefined ? shelf : { ...shelf, toMm: shelf.toMm - things[apart]!.widthMm - apartShare * task.widthMm };
  const rows = rowsOf(
    task,
    tallFirst.filter((i) => i !== apart),
    run.toMm - run.fromMm,
  );
  let back = task.depthMm - edgeMm;
  for (const [turn, row] of rows.entries()) {
    const depth = Math.max(...row.map((i) => things[i]!.depthMm));
    if (Math.floor(back - depth / 2) - depth / 2 < edgeMm) break;
    const order = orderOf(task, row, name);
    const widths = order.map((i) => things[i]!.widthMm);
    const spare = run.toMm - run.fromMm - widths.reduce((sum, width) => sum + width + gapMm, -gapMm);
    // Every other row is drawn in, or shifted, by half a thing, so that those behind look through.
    const step = Math.min(spare, widths[0]! + gapMm) / 2;
    const tight = name === 'peak';
    const inset = turn % 2 === 1 && !tight ? step : 0;
    const shift = tight ? Math.min(step / 2, spare / 2) * (turn % 2 === 0 ? 1 : -1) : 0;
    const within = { fromMm: run.fromMm + inset + shift, toMm: run.toMm - inset + shift };
    const full = spare - 2 * inset < 2.5 * gapMm * order.length;
    const loose = full ? 'fill' : gapMm + Math.min(2 * gapMm, (spare - 2 * inset) / (order.length + 1));
    const xs = alongRun(within, widths, tight ? gapMm + 1 : loose);
    // Whole mm towards the front: half a millimetre over the edge behind would be over the edge.
    const yMm = Math.floor(back - depth / 2);
    order.forEach((i, k) => {
      places[i] = { xMm: Math.round(xs[k]!), yMm, liftMm: 0 };
    });
    back = yMm - depth / 2 - gapMm;
  }
  if (apart !== undefined) {
    const thing = things[apart]!;
    const xMm = Math.floor(shelf.toMm - thing.widthMm / 2);
    places[apart] = { xMm, yMm: Math.round(task.depthMm / 2), liftMm: 0 };
  }
  raise(task, rows, places);
  cleared(task, places);
  return places;
}

function rowsOf(task: MassTask, order: readonly number[], widthMm: number): number[][] {
  // As even as they come: no row of one behind a full row.
  const sum = order.reduce((total, i) => total + task.things[i]!.widthMm + task.gapMm, 0);
  const most = sum / Math.max(1, Math.ceil(sum / (widthMm + task.gapMm)));
  const rows: number[][] = [];
  let used = Infinity;
  for (const i of order) {
    const width = task.things[i]!.widthMm + task.gapMm;
    if (width - task.gapMm > widthMm) continue;
    if (used + width - task.gapMm > widthMm || used + width / 2 > most) {
      rows.push([]);
      used = 0;
    }
    rows[rows.length - 1]!.push(i);
    used += width;
  }
  return rows;
}

function orderOf({ things }: MassTask, row: readonly number[], name: MassName): number[] {
  if (name === 'slope with one apart') return [...row];
  if (name === 'peak') return arched(row.map((i) => things[i]!.heightMm)).map((k) => row[k]!);
  // High and low by turns, so that the line of tops is alive.
  return row.map((_, k) => (k % 2 === 0 ? row[k >> 1]! : row[row.length - 1 - (k >> 1)]!));
}

/** Lifts the rows behind, each as one, until all in it are seen or the risers end. */
function raise(task: MassTask, rows: readonly number[][], places: (MassPlace | null)[]): void {
  const most = task.riserMm ?? 0;
  if (most <= 0) return;
  const share = task.seenShare ?? SEEN;
  for (const row of [...rows].reverse()) {
    const held = row.filter((i) => places[i] !== null);
    const room = Math.min(most, ...held.map((i) => (task.clearHeightMm ?? Infinity) - task.things[i]!.heightMm));
    for (let liftMm = 0; liftMm <= room; liftMm += 10) {
      for (const i of held) places[i] = { ...places[i]!, liftMm };
      const seen = seenOf(task, places);
      if (held.every((i) => seen.get(i)! >= share)) break;
    }
  }
}

/** Takes away, one after the other, what breaks a rule: too near, over the edge, hidden. */
function cleared(task: MassTask, places: (MassPlace | null)[]): void {
  const { things, gapMm, edgeMm } = task;
  things.forEach((thing, i) => {
    const at = places[i];
    if (!at) return;
    const out =
      at.xMm - thing.widthMm / 2 < edgeMm - 1e-6 ||
      at.xMm + thing.widthMm / 2 > task.widthMm - edgeMm + 1e-6 ||
      at.yMm - thing.depthMm / 2 < edgeMm - 1e-6 ||
      at.yMm + thing.depthMm / 2 > task.depthMm - edgeMm + 1e-6;
    const near = things.some((other, j) => {
      const by = j < i ? places[j] : null;
      if (!by) return false;
      const across = Math.abs(at.xMm - by.xMm) - (thing.widthMm + other.widthMm) / 2;
      return across < gapMm - 1e-6 && Math.abs(at.yMm - by.yMm) - (thing.depthMm + other.depthMm) / 2 < gapMm - 1e-6;
    });
    if (out || near) places[i] = null;
  });
  for (;;) {
    const seen = [...seenOf(task, places)].sort((a, b) => a[1] - b[1])[0];
    if (seen === undefined || seen[1] >= (task.seenShare ?? SEEN)) return;
    places[seen[0]] = null;
  }
}

/** How much of each that has a place is seen, by index. */
export function seenOf(task: MassTask, places: readonly (MassPlace | null)[]): Map<number, number> {
  const standing = places.flatMap((at, i) => (at === null ? [] : [{ i, silhouette: silhouetteOf(task, i, at) }]));
  const shares = seenShares(standing.map(({ silhouette }) => silhouette));
  return new Map(standing.map(({ i }, k) => [i, shares[k]!]));
}

export function silhouetteOf(task: MassTask, i: number, at: MassPlace): Silhouette {
  const { widthMm, depthMm, heightMm } = task.things[i]!;
  return {
    leftMm: at.xMm - widthMm / 2,
    rightMm: at.xMm + widthMm / 2,
    frontMm: at.yMm - depthMm / 2,
    bottomMm: at.liftMm,
    topMm: at.liftMm + heightMm,
  };
}
