import { acrossGapMm, type Box, boundsOf, upGapMm } from './boxes.ts';
import type { HangCandidate, HangMeasures, HangName, HangReason, HangTask } from './hang-task.ts';
import { balanceOf, facingGaps, largestVoidMm, spreadOf } from './measures.ts';
import type { Spot } from './nearest-free.ts';

/** 4 in: what a piece on the wall may stand out between 27 and 80 in above the floor (ADA 307.2). */
const PROTRUSION = { mm: 101.6, fromMm: 685.8, toMm: 2032 };
/** Edges this near to each other are taken for one. */
const SAME_MM = 2;

interface Seen extends Box {
  readonly index: number;
}

/** What a hang comes to: its measured terms and its reasons. */
export function describedHang(task: HangTask, name: HangName, places: readonly (Spot | null)[], stopped = false) {
  const seen = places.flatMap((at, index): Seen[] => {
    const piece = task.pieces[index]!;
    return at === null ? [] : [{ ...at, widthMm: piece.widthMm, heightMm: piece.heightMm, index }];
  });
  const pairs = facingPairs(seen, neighboursMm(task, seen));
  const gaps = facingGaps(seen, neighboursMm(task, seen)).sort((a, b) => a - b);
  const { meanMm, cv } = spreadOf(gaps);
  const bounds = boundsOf(seen) ?? { xMm: 0, yMm: 0, widthMm: 0, heightMm: 0 };
  const area = seen.reduce((sum, box) => sum + box.widthMm * box.heightMm, 0);
  const balance = balanceOf(seen, bounds);
  const centre = seen.reduce((sum, box) => sum + box.yMm * box.widthMm * box.heightMm, 0) / (area || 1);
  const colours = pairs.flatMap(([a, b]) => task.difference?.(a.index, b.index) ?? []);
  const rhythm = spreadOf(colours);
  const measures: HangMeasures = {
    balanceX: balance.x,
    balanceY: balance.y,
    facingGapCv: cv,
    meanGapMm: meanMm,
    largestVoidMm: largestVoidMm(seen, task.keepClear),
    alignment: alignmentOf(seen),
    colourRhythm: colours.length === 0 ? null : { mean: rhythm.meanMm, cv: rhythm.cv },
    aboveCentreLineMm: seen.length === 0 ? 0 : centre - task.centreLineMm,
    outline: {
      widthMm: bounds.widthMm,
      heightMm: bounds.heightMm,
      fill: area / (bounds.widthMm * bounds.heightMm || 1),
    },
  };
  const unplaced = places.flatMap((at, i) => (at === null ? [i] : []));
  const candidate: HangCandidate = { name, places, unplaced, measures, reasons: [] };
  return { ...candidate, reasons: reasonsOf(task, candidate, seen, gaps, stopped) } satisfies HangCandidate;
}

function reasonsOf(
  task: HangTask,
  found: HangCandidate,
  seen: readonly Seen[],
  gaps: readonly number[],
  stopped: boolean,
) {
  const { measures } = found;
  const { widthMm, heightMm } = measures.outline;
  const reasons: HangReason[] = [];
  if (stopped) reasons.push({ kind: 'stopped' });
  if (gaps.length > 0) {
    const [leastMm, mostMm] = [gaps[Math.floor(gaps.length * 0.05)]!, gaps[Math.floor(gaps.length * 0.95)]!];
    reasons.push({ kind: 'gaps', leastMm, mostMm });
  }
  if (measures.alignment > 0.5) reasons.push({ kind: 'aligned', share: measures.alignment });
  if (seen.length > 1)
    reasons.push({ kind: 'outline', widthMm, heightMm }, { kind: 'largest void', mm: measures.largestVoidMm });
  if (Math.abs(measures.balanceX) > 0.1) reasons.push({ kind: 'leans', to: measures.balanceX < 0 ? 'left' : 'right' });
  if (Math.abs(measures.aboveCentreLineMm) > 50)
    reasons.push({ kind: 'centre', aboveCentreLineMm: Math.round(measures.aboveCentreLineMm) });
  if (measures.colourRhythm) reasons.push({ kind: 'colours', meanDifference: measures.colourRhythm.mean });
  const { reachMm } = task;
  const above = reachMm === undefined ? 0 : seen.filter((box) => box.yMm + box.heightMm / 2 > reachMm).length;
  if (reachMm !== undefined && above > 0) reasons.push({ kind: 'above reach', count: above, reachMm });
  const out = seen.filter(({ index, yMm, heightMm: high }) => {
    const low = yMm - high / 2;
    return (task.pieces[index]?.depthMm ?? 0) > PROTRUSION.mm && low > PROTRUSION.fromMm && low <= PROTRUSION.toMm;
  });
  if (out.length > 0)
    reasons.push({ kind: 'stands out', pieces: out.map(({ index }) => index), mostMm: PROTRUSION.mm });
  if (found.unplaced.length > 0 && !stopped) reasons.push({ kind: 'no room', count: found.unplaced.length });
  return reasons;
}

/** Gaps wider than these are no longer between neighbours. */
function neighboursMm(task: HangTask, seen: readonly Box[]): number {
  const size = seen.reduce((sum, box) => sum + Math.max(box.widthMm, box.heightMm), 0) / (seen.length || 1);
  return Math.max(6 * task.gapMm, 1.5 * size);
}

function facingPairs(seen: readonly Seen[], limitMm: number): (readonly [Seen, Seen])[] {
  return seen.flatMap((a, i) =>
    seen.slice(i + 1).flatMap((b) => {
      const [across, up] = [acrossGapMm(a, b), upGapMm(a, b)];
      return across < 0 !== up < 0 && Math.max(across, up) < limitMm ? [[a, b] as const] : [];
    }),
  );
}

function alignmentOf(seen: readonly Box[]): number {
  const marks = (box: Box) => [
    [box.xMm - box.widthMm / 2, box.xMm, box.xMm + box.widthMm / 2],
    [box.yMm - box.heightMm / 2, box.yMm, box.yMm + box.heightMm / 2],
  ];
  const all = seen.map(marks);
  const shares = (a: number[][], b: number[][]) =>
    a.some((line, axis) => line.some((mark, k) => Math.abs(mark - b[axis]![k]!) <= SAME_MM));
  const aligned = all.filter((a, i) => all.some((b, j) => i !== j && shares(a, b)));
  return seen.length < 2 ? 0 : aligned.length / seen.length;
}
