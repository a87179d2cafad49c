import { focalOf, hangGroundOf } from './hang-ground.ts';
import { freeOf, type Places } from './hang-line.ts';
import { standingOn } from './hang-rows.ts';
import type { HangTask } from './hang-task.ts';

/** Between the middle and its pendants, 4 to 8 in; common practice, no source. */
const PENDANT_MM = 180;
const OFF_MM = 400;

interface Pendants {
  readonly axisMm: number;
  /** Half the room the middle takes: a work, an opening, or nothing. */
  readonly halfMm: number;
  readonly centre: number | undefined;
  readonly pairs: readonly (readonly [number, number])[];
  /** What is left on the narrower side. */
  readonly roomMm: number;
}

/** Like-sized pieces in pairs to the left and right of the middle, close to it, every centre on the centre line. */
export function pendantsClose(task: HangTask): Places {
  return flanking(task, Math.max(task.gapMm, PENDANT_MM));
}

/** The same, spread evenly over the narrower side. */
export function pendantsWide(task: HangTask): Places {
  const { pairs, roomMm } = pendantsOf(task);
  const widths = pairs.reduce((sum, pair) => sum + wider(task, pair), 0);
  return flanking(task, Math.max(task.gapMm, (roomMm - widths) / (pairs.length + 1)));
}

/** The pairs over each other in one stack on either side, about the centre line; the largest lowest. */
export function pendantsStacked(task: HangTask): Places {
  const { axisMm, halfMm, centre, pairs } = pendantsOf(task);
  const ground = hangGroundOf(task);
  if (centre !== undefined && !task.pieces[centre]!.pinnedAt) ground.put(centre, axisMm, task.centreLineMm, OFF_MM);
  const heights = pairs.map((pair) => Math.max(...pair.map((i) => task.pieces[i]!.heightMm)));
  const gap = Math.max(task.gapMm, 60);
  const stack = heights.reduce((sum, height) => sum + height, 0) + gap * (heights.length - 1);
  const away = halfMm + Math.max(task.gapMm, PENDANT_MM) + Math.max(0, ...pairs.map((pair) => wider(task, pair))) / 2;
  let y = Math.max(task.surface.bottomMm, Math.min(task.centreLineMm - stack / 2, task.surface.topMm - stack));
  pairs.forEach(([left, right], k) => {
    ground.put(left, axisMm - away, y + heights[k]! / 2, OFF_MM);
    ground.put(right, axisMm + away, y + heights[k]! / 2, OFF_MM);
    y += heights[k]! + gap;
  });
  return ground.places;
}

function flanking(task: HangTask, gapMm: number): Places {
  const { axisMm, halfMm, centre, pairs } = pendantsOf(task);
  const ground = hangGroundOf(task);
  if (centre !== undefined && !task.pieces[centre]!.pinnedAt) ground.put(centre, axisMm, task.centreLineMm, OFF_MM);
  let away = halfMm;
  pairs.forEach((pair, k) => {
    const width = wider(task, pair);
    // With nothing in the middle the innermost two are one gap apart, not two.
    away += k === 0 && halfMm === 0 ? gapMm / 2 : gapMm;
    ground.put(pair[0], axisMm - away - width / 2, task.centreLineMm, OFF_MM);
    ground.put(pair[1], axisMm + away + width / 2, task.centreLineMm, OFF_MM);
    away += width;
  });
  return ground.places;
}

/** The middle is the focal work where one is named or the number is odd, else an opening about the middle, else the wall's. */
function pendantsOf(task: HangTask): Pendants {
  const { pieces, surface } = task;
  const free = freeOf(task);
  const named = task.focal !== undefined || free.length % 2 === 1;
  const centre = named ? focalOf(task) : undefined;
  const rest = free.filter((i) => i !== centre);
  const area = (i: number) => pieces[i]!.widthMm * pieces[i]!.heightMm;
  const bySize = [...rest].sort((a, b) => area(b) - area(a) || a - b);
  const pairs = Array.from({ length: bySize.length >> 1 }, (_, k) => [bySize[2 * k]!, bySize[2 * k + 1]!] as const);
  const middle = (surface.leftMm + surface.rightMm) / 2;
  const third = (surface.rightMm - surface.leftMm) / 6;
  const opening =
    centre === undefined
      ? standingOn(task).find(
          (box) => Math.abs(box.xMm - middle) < third && Math.abs(box.yMm - task.centreLineMm) < box.heightMm / 2 + 100,
        )
      : undefined;
  const pinned = centre === undefined ? undefined : pieces[centre]!.pinnedAt;
  const axisMm = pinned?.xMm ?? opening?.xMm ?? middle;
  const halfMm = (centre === undefined ? (opening?.widthMm ?? 0) : pieces[centre]!.widthMm) / 2;
  const roomMm = Math.min(axisMm - surface.leftMm, surface.rightMm - axisMm) - halfMm;
  return { axisMm, halfMm, centre, pairs, roomMm };
}

function wider(task: HangTask, pair: readonly [number, number]): number {
  return Math.max(...pair.map((i) => task.pieces[i]!.widthMm));
}
