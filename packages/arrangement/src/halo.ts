import { mirrored } from './boxes.ts';
import { described } from './halo-described.ts';
import { madeHalo } from './halo-made.ts';
import type { HaloCandidate, HaloTask } from './halo-task.ts';
import { facesLeft, mirroredExtent, mirroredSpots } from './mirror.ts';

/**
 * Pieces hung round a focal work: whole-mm centres by piece, null where one found no room, never a rule broken (inside
 * the surface, least gaps kept, clear of what is to be kept clear). The same task and seed have the same answer; a
 * mirrored wall has the mirrored answer. Stopped by `progress`, it places nothing and says so.
 * RangeError for sizes that are not above 0, a negative gap, a looseness outside 0 … 1, a roominess below 1.
 */
export function halo(task: HaloTask): HaloCandidate {
  check(task);
  if (!facesLeft(task.surface, [task.focal, ...task.keepClear])) {
    const { places, stopped } = madeHalo(task);
    return described(task, places, stopped);
  }
  const turned = madeHalo({
    ...task,
    surface: mirroredExtent(task.surface),
    focal: mirrored(task.focal),
    keepClear: task.keepClear.map(mirrored),
    ...(task.leanDegrees === undefined ? {} : { leanDegrees: 180 - task.leanDegrees }),
  });
  return described(task, mirroredSpots(turned.places), turned.stopped);
}

function check(task: HaloTask): void {
  const above0 = (value: number, what: string) => {
    if (!(value > 0 && value < Infinity)) throw new RangeError(`${what} is ${value}; it must be above 0`);
  };
  task.pieces.forEach((piece, i) => {
    above0(piece.widthMm, `pieces[${i}].widthMm`);
    above0(piece.heightMm, `pieces[${i}].heightMm`);
  });
  if (!(task.gapMm >= 0)) throw new RangeError(`gapMm is ${task.gapMm}; it must be 0 or more`);
  if (!((task.focalGapMm ?? 0) >= 0)) throw new RangeError(`focalGapMm is ${task.focalGapMm}; it must be 0 or more`);
  if (!(task.looseness >= 0 && task.looseness <= 1))
    throw new RangeError(`looseness is ${task.looseness}; it must be 0 … 1`);
  if (!((task.roominess ?? 1) >= 1)) throw new RangeError(`roominess is ${task.roominess}; it must be 1 or more`);
  if (!((task.across ?? 1) > 0)) throw new RangeError(`across is ${task.across}; it must be above 0`);
}
