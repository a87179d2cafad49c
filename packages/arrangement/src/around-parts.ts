import { type AroundName, type AroundTask, sizeOf } from './around-task.ts';
import { type Box, extentOf, inside, overlaps } from './boxes.ts';
import { hangGroundOf } from './hang-ground.ts';
import type { HangTask } from './hang-task.ts';
import type { Spot } from './nearest-free.ts';
import { alongRun, arched } from './runs.ts';

/** On the floor from the carrier outward, the largest nearest: left and right by turns, or all on the right. */
export function besides(task: AroundTask, name: AroundName, body: Box): (Spot | null)[] {
  const { around, gapMm, floorMm, surface } = task;
  const places: (Spot | null)[] = around.map(() => null);
  const order = around.map((_, i) => i).sort((a, b) => around[b]!.heightMm - around[a]!.heightMm || a - b);
  const standing: Box[] = [body];
  order.forEach((i, turn) => {
    const size = sizeOf(around[i]!);
    const first = name === 'to one side' || turn % 2 === 1 ? 1 : -1;
    for (const side of [first, -first]) {
      const edge = standing.reduce((far, box) => {
        const { leftMm, rightMm } = extentOf(box);
        return side > 0 ? Math.max(far, rightMm) : Math.min(far, leftMm);
      }, body.xMm);
      const beside = edge + side * (gapMm + size.widthMm / 2);
      const xMm = side > 0 ? Math.ceil(beside) : Math.floor(beside);
      const box = { ...size, xMm, yMm: floorMm + size.heightMm / 2 };
      const free =
        inside(box, { ...surface, bottomMm: -Infinity }) &&
        task.keepClear.every((other) => !overlaps(box, other, gapMm));
      if (!free) continue;
      places[i] = { xMm, yMm: box.yMm };
      standing.push(box);
      return;
    }
  });
  return places;
}

/** Over the carrier and its load, the largest first and lowest. */
export function hungOver(task: AroundTask, name: AroundName, carrier: readonly Box[], beside: readonly Box[]) {
  const { above, gapMm, surface } = task;
  const overMm = Math.max(gapMm, task.overMm ?? 100);
  const [body] = carrier;
  const more = 2 * (overMm - gapMm);
  const grown = [...carrier, ...beside].map((box) => {
    return { ...box, widthMm: box.widthMm + more, heightMm: box.heightMm + more };
  });
  const bottomMm = Math.min(surface.topMm, Math.max(surface.bottomMm, extentOf(body!).topMm + overMm));
  const hang: HangTask = {
    surface: { ...surface, bottomMm },
    pieces: above,
    keepClear: [...task.keepClear, ...grown],
    gapMm,
    centreLineMm: task.centreLineMm,
    seed: 1,
  };
  const ground = hangGroundOf(hang);
  const area = (i: number) => above[i]!.widthMm * above[i]!.heightMm;
  const bySize = [...ground.free].sort((a, b) => area(b) - area(a) || a - b);
  // The low side of the load is on the right: there the wall may answer.
  const xMm = body!.xMm + (name === 'to one side' ? 0.3 * body!.widthMm : 0);
  const tops = carrier
    .filter((box) => Math.abs(box.xMm - xMm) < box.widthMm / 2 + (above[bySize[0] ?? 0]?.widthMm ?? 0) / 2)
    .map((box) => extentOf(box).topMm);
  const foot = Math.max(bottomMm, ...tops.map((top) => top + overMm));
  const first = bySize[0] === undefined ? 0 : foot + above[bySize[0]]!.heightMm / 2;
  if (name === 'in a line') {
    const order = arched(bySize.map(area)).map((k) => bySize[k]!);
    const widths = order.map((i) => above[i]!.widthMm);
    // One line at one height, clear of all that stands under any of it.
    const length = widths.reduce((sum, width) => sum + width + gapMm, -gapMm);
    const under = carrier.filter((box) => Math.abs(box.xMm - xMm) < (box.widthMm + length) / 2 + overMm);
    const clear = Math.max(bottomMm, ...under.map((box) => extentOf(box).topMm + overMm));
    const yMm = Math.ceil(clear + Math.max(0, ...order.map((i) => above[i]!.heightMm)) / 2);
    const xs = alongRun({ fromMm: xMm - length / 2, toMm: xMm + length / 2 }, widths, gapMm + 1);
    for (const [turn, i] of order.entries()) ground.put(i, xs[turn]!, yMm);
    return ground.places;
  }
  const pair = name === 'symmetrical' && bySize.length % 2 === 0;
  for (const [turn, i] of bySize.entries()) {
    const aside = pair && turn < 2 ? (turn * 2 - 1) * Math.ceil((above[i]!.widthMm + gapMm) / 2) : 0;
    ground.put(i, xMm + aside, first);
  }
  return ground.places;
}
