import { besides, hungOver } from './around-parts.ts';
import { type AroundCandidate, type AroundName, type AroundTask, boxesOn, sizeOf } from './around-task.ts';
import { acrossGapMm, type Box, boundsOf, upGapMm } from './boxes.ts';
import type { MassName } from './mass-task.ts';
import { massed } from './massed.ts';
import { balanceOf, largestVoidMm } from './measures.ts';

const EDGE_MM = 30;
const LOAD_GAP_MM = 20;
const WAYS: readonly (readonly [AroundName, MassName])[] = [
  ['symmetrical', 'peak'],
  ['to one side', 'slope with one apart'],
  ['in a line', 'rows, tall at the back'],
];

/**
 * Wall, furniture and load as one composition, three ways: symmetrical about the carrier; falling off to one side, with
 * what stands and hangs answering on the low side; one line over the load. Nothing covers anything, what
 * hangs keeps clear of the load, and what finds no room is left out. RangeError for sizes that are not above 0.
 */
export function aroundCarrier(task: AroundTask): readonly AroundCandidate[] {
  const { carrier, floorMm } = task;
  for (const what of ['widthMm', 'depthMm', 'heightMm'] as const)
    if (!(carrier[what] > 0)) throw new RangeError(`carrier.${what} is ${carrier[what]}; it must be above 0`);
  const loads = massed({
    widthMm: carrier.widthMm,
    depthMm: carrier.depthMm,
    things: task.on,
    gapMm: LOAD_GAP_MM,
    edgeMm: EDGE_MM,
    ...(task.riserMm === undefined ? {} : { riserMm: task.riserMm }),
    clearHeightMm: Math.max(1, task.surface.topMm - floorMm - carrier.heightMm),
  });
  const body: Box = {
    xMm: carrier.xMm,
    yMm: floorMm + carrier.heightMm / 2,
    widthMm: carrier.widthMm,
    heightMm: carrier.heightMm,
  };
  return WAYS.map(([name, load]) => {
    const on = (loads.find((one) => one.name === load) ?? loads[0])?.places ?? [];
    const loadBoxes = boxesOn(task, on);
    const around = besides(task, name, body);
    const beside = around.flatMap((at, i) => (at ? [{ ...at, ...sizeOf(task.around[i]!) }] : []));
    const above = hungOver(task, name, [body, ...loadBoxes], beside);
    return described(task, { name, on, around, above }, body, loadBoxes, beside);
  });
}

function described(
  task: AroundTask,
  found: Pick<AroundCandidate, 'name' | 'on' | 'around' | 'above'>,
  body: Box,
  load: readonly Box[],
  beside: readonly Box[],
): AroundCandidate {
  const hung = found.above.flatMap((at, i) => (at ? [{ ...at, ...sizeOf(task.above[i]!) }] : []));
  const all = [body, ...load, ...beside, ...hung];
  const { widthMm, heightMm } = boundsOf(all)!;
  const over = hung.flatMap((box) =>
    [body, ...load].flatMap((below) => (acrossGapMm(box, below) < 0 ? [upGapMm(box, below)] : [])),
  );
  return {
    ...found,
    unplaced: [...found.on, ...found.around, ...found.above].filter((at) => at === null).length,
    measures: {
      balanceX: balanceOf(all, body).x,
      largestVoidMm: largestVoidMm(all, task.keepClear),
      outline: { widthMm, heightMm },
      overLoadMm: over.length === 0 ? null : Math.min(...over),
    },
  };
}
