import type { Box } from './boxes.ts';
import { massedRows, seenOf, silhouetteOf } from './mass-rows.ts';
import type { MassCandidate, MassMeasures, MassName, MassPlace, MassReason, MassTask } from './mass-task.ts';
import { balanceOf, facingGaps, spreadOf } from './measures.ts';

/** The ways there are, in the order they are offered. */
export const MASS_WAYS: readonly MassName[] = ['rows, tall at the back', 'peak', 'slope with one apart'];

/**
 * Ways to mass things on a level, the tallest at the back and nothing hidden: rows alive in height, a peak in the
 * middle, a slope with the smallest set apart. Never nearer than the gap or the edge, never less seen than asked,
 * never higher than the risers and the clear height allow; what cannot stand so is left unplaced and said.
 * RangeError for sizes that are not above 0 or a negative gap.
 */
export function massed(task: MassTask): readonly MassCandidate[] {
  const kept: MassCandidate[] = [];
  for (const name of MASS_WAYS) {
    const candidate = massedAs(name, task);
    const look = lookOf(task, candidate);
    if (kept.every((other) => differs(look, lookOf(task, other)))) kept.push(candidate);
  }
  return kept;
}

/** One of these ways, by its name. RangeError as for `massed`. */
export function massedAs(name: MassName, task: MassTask): MassCandidate {
  task.things.forEach((thing, i) => {
    for (const what of ['widthMm', 'depthMm', 'heightMm'] as const)
      if (!(thing[what] > 0)) throw new RangeError(`things[${i}].${what} is ${thing[what]}; it must be above 0`);
  });
  if (!(task.gapMm >= 0)) throw new RangeError(`gapMm is ${task.gapMm}; it must be 0 or more`);
  return described(task, name, massedRows(task, name));
}

/** What a person sees of it, whichever of two equal things stands where: sizes and places from the back, left to right. */
function lookOf({ things }: MassTask, { places }: MassCandidate): readonly (readonly number[])[] {
  return places
    .flatMap((at, i) => (at ? [[at.yMm, at.xMm, at.liftMm, things[i]!.widthMm, things[i]!.heightMm]] : []))
    .sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
}

function differs(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): boolean {
  return a.length !== b.length || a.some((look, i) => look.some((value, k) => Math.abs(value - b[i]![k]!) > 20));
}

function described(task: MassTask, name: MassName, places: readonly (MassPlace | null)[]): MassCandidate {
  const standing = places.flatMap((at, i) => (at === null ? [] : [{ at, i }]));
  const fronts = standing.map(({ at, i }): Box => {
    const { leftMm, rightMm, bottomMm, topMm } = silhouetteOf(task, i, at);
    const [xMm, yMm] = [(leftMm + rightMm) / 2, (bottomMm + topMm) / 2];
    return { xMm, yMm, widthMm: rightMm - leftMm, heightMm: topMm - bottomMm };
  });
  const plan = standing.map(({ at, i }): Box => {
    const { widthMm, depthMm } = task.things[i]!;
    return { xMm: at.xMm, yMm: at.yMm, widthMm, heightMm: depthMm };
  });
  const gaps = spreadOf(facingGaps(plan, Math.max(6 * task.gapMm, 100)));
  const left = Math.min(...fronts.map((box) => box.xMm - box.widthMm / 2));
  const right = Math.max(...fronts.map((box) => box.xMm + box.widthMm / 2));
  const top = Math.max(0, ...fronts.map((box) => box.yMm + box.heightMm / 2));
  const seen = [...seenOf(task, places).values()];
  const measures: MassMeasures = {
    leastSeen: Math.min(1, ...seen),
    balanceX: balanceOf(fronts, { xMm: task.widthMm / 2, yMm: 0 }).x,
    gapCv: gaps.cv,
    meanGapMm: gaps.meanMm,
    perSquareMetre: standing.length / ((task.widthMm * task.depthMm) / 1e6),
    outline: { widthMm: Math.max(0, right - left), heightMm: top },
    rows: new Set(standing.map(({ at }) => at.yMm)).size,
  };
  const unplaced = places.flatMap((at, i) => (at === null ? [i] : []));
  const highestMm = Math.max(0, ...standing.map(({ at }) => at.liftMm));
  const reasons: MassReason[] = [
    { kind: 'rows', count: measures.rows },
    { kind: 'seen', leastShare: measures.leastSeen },
  ];
  if (highestMm > 0) reasons.push({ kind: 'risers', highestMm });
  if (Math.abs(measures.balanceX) > 0.15) reasons.push({ kind: 'leans', to: measures.balanceX < 0 ? 'left' : 'right' });
  if (unplaced.length > 0) reasons.push({ kind: 'no room', count: unplaced.length });
  return { name, places, unplaced, measures, reasons };
}
