import type { Issue } from './issues.ts';

export interface Line {
  /** Centres from left to right, whole mm, so that a gap may differ from the one asked for by up to 1 mm. */
  readonly places: readonly { readonly xMm: number; readonly yMm: number }[];
  /** The gap between neighbours before rounding (mm). */
  readonly gapMm: number;
  /** What is left at either end before rounding (mm). */
  readonly endMm: number;
  /** Where it does not fit: no places, and by how much. */
  readonly issues: readonly Issue[];
}

interface LineTask {
  readonly surfaceWidthMm: number;
  readonly centreLineMm: number;
  readonly widthsMm: readonly number[];
}

/** A line with a fixed gap (mm), the group centred on the surface, every centre on the centre line. Common practice. */
export function line(task: LineTask & { readonly gapMm: number }): Line {
  if (!(task.gapMm >= 0)) throw new RangeError(`gapMm is ${task.gapMm}; it must be 0 or more`);
  const widthsMm = sumOf(task.widthsMm);
  const endMm = (task.surfaceWidthMm - widthsMm - task.gapMm * Math.max(0, task.widthsMm.length - 1)) / 2;
  if (endMm >= 0) return { places: placesOf(task, task.gapMm, endMm), gapMm: task.gapMm, endMm, issues: [] };
  const issue = { where: 'line', what: 'longer than the wall, by so many mm', value: -2 * endMm };
  return { places: [], gapMm: task.gapMm, endMm, issues: [issue] };
}

/** A line that fills the surface, one gap between neighbours and at both ends: (wall − Σ widths) / (n + 1). Common practice. */
export function evenLine(task: LineTask): Line {
  const gapMm = (task.surfaceWidthMm - sumOf(task.widthsMm)) / (task.widthsMm.length + 1);
  if (gapMm >= 0) return { places: placesOf(task, gapMm, gapMm), gapMm, endMm: gapMm, issues: [] };
  const short = sumOf(task.widthsMm) - task.surfaceWidthMm;
  const issue = { where: 'line', what: 'wider together than the wall, by so many mm', value: short };
  return { places: [], gapMm, endMm: gapMm, issues: [issue] };
}

/** The place in the middle of a wall on its centre line, whole mm. */
export function centreOnWall(task: { readonly surfaceWidthMm: number; readonly centreLineMm: number }) {
  return { xMm: Math.round(task.surfaceWidthMm / 2), yMm: Math.round(task.centreLineMm) };
}

function placesOf(task: LineTask, gapMm: number, endMm: number): Line['places'] {
  let leftMm = endMm;
  return task.widthsMm.map((widthMm) => {
    const place = { xMm: Math.round(leftMm + widthMm / 2), yMm: Math.round(task.centreLineMm) };
    leftMm += widthMm + gapMm;
    return place;
  });
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
