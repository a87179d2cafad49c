/** The hanging schedule as columns of a sheet: what a preparator reads on the ladder, the figures large. */
import { centimetresText, sizeText, toInches } from '@enfilade/space/lengths';
import { COLUMN, TITLE_TOP } from './elevation-layout.ts';
import type { ScheduleRow } from './hanging-schedule.ts';
import { linesOf, type SheetMark, textMark } from './sheet.ts';

const HEAD = 19;

export interface ColumnPlace {
  readonly x: number;
  readonly top: number;
  /** A column stands before it. */
  readonly goesOn: boolean;
}

/** Draws as many rows as fit into one column; returns the rest. */
export function scheduleColumn(
  marks: SheetMark[],
  rows: readonly ScheduleRow[],
  { x, top, goesOn }: ColumnPlace,
): readonly ScheduleRow[] {
  const right = x + COLUMN;
  const bottom = TITLE_TOP - 2;
  const heightRight = x + 84;
  marks.push(textMark(x, top + 5, goesOn ? 'Hanging schedule, continued' : 'Hanging schedule', 5, 'serif'));
  marks.push({ kind: 'line', x1: x, y1: top + 8, x2: right, y2: top + 8, weightMm: 0.5 });
  marks.push(textMark(x, top + 12, 'no.', 2.4), textMark(x + 8, top + 12, 'work, hardware, weight', 2.4));
  marks.push(textMark(heightRight, top + 12, 'hook height from', 2.4, 'sans', 'end'));
  marks.push(textMark(heightRight, top + 15.4, 'laser line · floor, cm, in', 2.4, 'sans', 'end'));
  marks.push(textMark(right, top + 12, 'hook along, from left', 2.4, 'sans', 'end'));
  marks.push(textMark(right, top + 15.4, 'corner, cm, in', 2.4, 'sans', 'end'));
  marks.push({ kind: 'line', x1: x, y1: top + 17, x2: right, y2: top + 17, weightMm: 0.25 });
  if (rows.length === 0) marks.push(textMark(x, top + 24, 'Nothing hangs on this wall.', 3, 'serif'));
  let y = top + HEAD;
  for (const [index, row] of rows.entries()) {
    const names = linesOf(row.name, 52, 3.2, 'serif', 2);
    const facts = factsOf(row).flatMap((line) => linesOf(line, 44, 2.3, 'sans', 2));
    const points = row.hooks.known ? Math.max(1, row.hooks.points.length) : 1;
    const height = Math.max(names.length * 3.8 + facts.length * 3 + 2, points * 5.4 + 3, 12 + (points - 1) * 3.4);
    if (y + height > bottom) return rows.slice(index);
    marks.push(textMark(x, y + 3, `${row.number}`, 4, 'sans bold'));
    for (const [n, line] of names.entries()) marks.push(textMark(x + 8, y + 2.8 + n * 3.8, line, 3.2, 'serif'));
    for (const [n, line] of facts.entries()) {
      marks.push(textMark(x + 8, y + names.length * 3.8 + 2 + n * 3, line, 2.3));
    }
    hookFigures(marks, row, heightRight, right, y);
    y += height;
    marks.push({ kind: 'line', x1: x, y1: y, x2: right, y2: y, weightMm: 0.18 });
    y += 2.4;
  }
  const note = 'Both figures are to the hook’s bearing edge under load; measure both at the wall.';
  if (y + 3 < TITLE_TOP - 1) marks.push(textMark(x, y + 2.4, note, 2.3));
  return [];
}

function factsOf(row: ScheduleRow): string[] {
  const { hooks, size } = row;
  const hardware = hooks.hardware === null ? 'hardware not known' : hardwareWords(row);
  const dims = size.known
    ? `${sizeText(size.heightMm, size.widthMm, size.depthMm || null, 'cm')}${size.certain ? '' : `, ${size.basis}`}`
    : 'size not known';
  return [
    `${row.objectNumber}, ${dims}`,
    `${hardware}, ${row.weightKg === null ? 'not weighed' : kilograms(row.weightKg)}`,
    ...(hooks.known && hooks.loadKg !== null && hooks.ratingKg !== null
      ? [`${bearing(hooks.points, hooks.loadKg)}: rated for ${kilograms(hooks.ratingKg)}`]
      : []),
    ...(hooks.known && hooks.wire !== null ? [wireWords(hooks.wire)] : []),
    ...(row.label === null ? [] : [labelWords(row.label)]),
  ];
}

function wireWords({
  angleDegrees,
  pullKg,
}: {
  readonly angleDegrees: number;
  readonly pullKg: number | null;
}): string {
  return `wire at ${Math.round(angleDegrees)}°${pullKg === null ? '' : `, pulls ${kilograms(pullKg)}`}`;
}

function labelWords({ box, fromFloorMm }: NonNullable<ScheduleRow['label']>): string {
  const what = box.pieces.length > 1 ? `one label for ${box.pieces.length}` : 'label';
  const along = centimetresText(box.xMm);
  return `${what} ${box.side}, its middle ${along} along, ${centimetresText(fromFloorMm)} over the floor`;
}

/** Each hook's own where they differ: the weight's middle is not always the piece's. */
function bearing(points: readonly { readonly loadKg: number | null }[], mostKg: number): string {
  const loads = [...new Set(points.flatMap(({ loadKg }) => (loadKg === null ? [] : [kilograms(loadKg)])))];
  return loads.length > 1 ? `hooks bear ${loads.join(' and ')}` : `a hook bears ${kilograms(mostKg)}`;
}

function kilograms(kg: number): string {
  return `${Math.round(kg * 10) / 10} kg`;
}

function hardwareWords({ hooks }: ScheduleRow): string {
  const hardware = hooks.hardware;
  if (hardware === null) return 'hardware not known';
  if (hardware.hooks === 0) return 'no hooks';
  const count = `${hardware.hooks} ${hardware.hooks === 1 ? 'hook' : 'hooks'}`;
  const drop = hardware.dropMm === undefined ? 'drop not known' : `drop ${centimetresText(hardware.dropMm)}`;
  return `${hardware.kind}, ${count}, ${drop}`;
}

function hookFigures(marks: SheetMark[], row: ScheduleRow, heightRight: number, right: number, y: number): void {
  const { hooks } = row;
  if (!hooks.known) {
    for (const [n, line] of linesOf(hooks.missing, 60, 2.6, 'sans', 2).entries()) {
      marks.push(textMark(right, y + 3 + n * 3.2, line, 2.6, 'sans', 'end'));
    }
    return;
  }
  const way = hooks.fromLaserMm < 0 ? 'down ' : 'up ';
  const laser = Math.abs(hooks.fromLaserMm);
  marks.push(textMark(heightRight, y + 3.6, `${way}${centimetresText(laser)}`, 4.4, 'sans bold', 'end'));
  marks.push(textMark(heightRight, y + 7.4, `${toInches(laser)} in`, 2.6, 'sans', 'end'));
  if (hooks.points.length === 0) marks.push(textMark(right, y + 3.6, 'spacing not known', 2.6, 'sans', 'end'));
  for (const [n, point] of hooks.points.entries()) {
    const line = y + 3.6 + n * 5.4;
    marks.push(textMark(right - 24, line, toInches(point.xMm), 2.6, 'sans', 'end'));
    marks.push(textMark(right, line, centimetresText(point.xMm), 4, 'sans bold', 'end'));
    const floor = `floor ${centimetresText(point.fromFloorMm)} · ${toInches(point.fromFloorMm)} in`;
    if (n === 0 || point.fromFloorMm !== hooks.points[n - 1]?.fromFloorMm) {
      marks.push(textMark(heightRight, y + 10.6 + (n === 0 ? 0 : n * 3.2), floor, 2.3, 'sans', 'end'));
    }
  }
}
