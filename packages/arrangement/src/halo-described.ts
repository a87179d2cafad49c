import { type Box, boundsOf } from './boxes.ts';
import type { HaloCandidate, HaloMeasures, HaloName, HaloReason, HaloTask } from './halo-task.ts';
import { balanceOf, facingGaps, largestVoidMm, spreadOf } from './measures.ts';

/** Gaps wider than so many least ones are no longer between neighbours. */
export const NEIGHBOURS = 6;

/** What the places come to: figures, a name, and reasons. Reads the pieces' sizes from the task. */
export function described(task: HaloTask, places: HaloCandidate['places'], stopped = false): HaloCandidate {
  const boxes = places.flatMap((place, i): Box[] => (place === null ? [] : [{ ...place, ...task.pieces[i]! }]));
  const all = [...boxes, task.focal];
  const gaps = facingGaps(all, NEIGHBOURS * task.gapMm, boxes.length).sort((a, b) => a - b);
  const { meanMm, cv } = spreadOf(gaps);
  const bounds = boundsOf(all)!;
  const balance = balanceOf(boxes, task.focal);
  const tops = boxes.map((box) => box.yMm + box.heightMm / 2);
  const measures: HaloMeasures = {
    facingGapCv: cv,
    meanGapMm: meanMm,
    largestVoidMm: largestVoidMm(all, task.keepClear),
    balanceX: balance.x,
    balanceY: balance.y,
    outline: { widthMm: bounds.widthMm, heightMm: bounds.heightMm },
    highestTopMm: tops.length === 0 ? null : Math.max(...tops),
  };
  const unplaced = places.flatMap((place, i) => (place === null ? [i] : []));
  const reasons: HaloReason[] = [];
  const { reachMm } = task;
  if (stopped) reasons.push({ kind: 'stopped' });
  if (gaps.length > 0) {
    const [leastMm, mostMm] = [gaps[Math.floor(gaps.length * 0.05)]!, gaps[Math.floor(gaps.length * 0.95)]!];
    reasons.push({ kind: 'gaps', leastMm, mostMm });
    reasons.push({ kind: 'outline', ...measures.outline }, { kind: 'largest void', mm: measures.largestVoidMm });
    if (Math.abs(balance.x) > 0.15) reasons.push({ kind: 'leans', to: balance.x < 0 ? 'left' : 'right' });
  }
  const above = reachMm === undefined ? 0 : tops.filter((top) => top > reachMm).length;
  if (reachMm !== undefined && above > 0) reasons.push({ kind: 'above reach', count: above, reachMm });
  if (unplaced.length > 0 && !stopped) reasons.push({ kind: 'no room', count: unplaced.length });
  return { places, unplaced, looseness: task.looseness, measures, name: nameOf(task), reasons };
}

function nameOf(task: HaloTask): HaloName {
  if (task.leanDegrees !== undefined) return 'leaning halo';
  if (task.across !== undefined && task.across >= 1.6) return 'wide halo';
  if (task.across !== undefined && task.across <= 0.8) return 'tall halo';
  return task.looseness < 0.4 ? 'even halo' : 'loose halo';
}
