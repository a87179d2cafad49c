/** A wall's elevation as printed sheets: A3, to scale, with the hanging schedule beside it or on the next sheets. */
import { centimetresText, sizeText, toInches } from '@enfilade/space/lengths';
import { type ScheduleRow, type WallSchedule, wallScheduleOf } from './hanging-schedule.ts';
import type { FixtureBox, Judgements, OpeningBox } from './judgements.ts';
import type { SurfaceId } from './schema.ts';
import { A3, linesOf, type Sheet, type SheetMark, type SheetText } from './sheet.ts';

/** Scales a drawing office uses for a wall; the largest that fits is taken. */
export const SCALES = [10, 20, 25, 50] as const;

const MARGIN = 12;
const TITLE_BLOCK = 22;
const SCHEDULE_WIDTH = 126;
const GUTTER = 10;
/** Room round the wall for dimensions: above, below, left, right. */
const ROUND = { top: 12, bottom: 26, left: 20, right: 20 };
const CAUTION_LINES = 5;

export interface Stamp {
  /** 0: not frozen, a draft on screen. */
  readonly version: number;
  /** Words of the moment: "12 May 2026, 14:02". */
  readonly at: string;
  readonly by: string;
}

/** The scale a wall is drawn at on A3; the smallest on offer where even that does not fit. */
export function scaleOf(lengthMm: number, heightMm: number): number {
  const width = A3.widthMm - 2 * MARGIN - ROUND.left - ROUND.right;
  const height = A3.heightMm - 2 * MARGIN - TITLE_BLOCK - ROUND.top - ROUND.bottom;
  return SCALES.find((scale) => lengthMm / scale <= width && heightMm / scale <= height) ?? 50;
}

export function elevationSheetsOf(judgements: Judgements, surface: SurfaceId, stamp: Stamp): Sheet[] {
  const wall = wallScheduleOf(judgements, surface);
  if (wall === null) return [];
  const scale = scaleOf(wall.lengthMm, wall.heightMm);
  const drawnWidth = wall.lengthMm / scale + ROUND.left + ROUND.right;
  const beside = drawnWidth + GUTTER + SCHEDULE_WIDTH <= A3.widthMm - 2 * MARGIN;
  const cautions = cautionTextsOf(judgements, wall);
  const first: SheetMark[] = drawing(wall, scale, judgements.openingsOn(surface), judgements.fixturesOn(surface));
  const top = MARGIN + ROUND.top + wall.heightMm / scale + ROUND.bottom;
  const width = beside ? A3.widthMm - 2 * MARGIN - SCHEDULE_WIDTH - GUTTER : A3.widthMm - 2 * MARGIN;
  const shown = cautionMarks(cautions, MARGIN, top, width, A3.heightMm - MARGIN - TITLE_BLOCK - 4, first);

  const pages: SheetMark[][] = [first];
  let rows = wall.rows;
  if (beside) rows = schedule(first, rows, A3.widthMm - MARGIN - SCHEDULE_WIDTH, false);
  let rest = cautions.slice(shown);
  while (rows.length > 0 || rest.length > 0 || (pages.length === 1 && !beside)) {
    const page: SheetMark[] = [];
    for (const column of [0, 1, 2]) {
      const x = MARGIN + column * (SCHEDULE_WIDTH + (A3.widthMm - 2 * MARGIN - 3 * SCHEDULE_WIDTH) / 2);
      if (rows.length > 0 || (column === 0 && pages.length === 1 && !beside)) {
        rows = schedule(page, rows, x, pages.length > 1 || column > 0);
      } else if (rest.length > 0) {
        const put = cautionMarks(rest, x, MARGIN + 6, SCHEDULE_WIDTH, A3.heightMm - MARGIN - TITLE_BLOCK - 4, page);
        if (put === 0) break;
        rest = rest.slice(put);
      }
    }
    if (page.length === 0) break;
    pages.push(page);
  }
  return pages.map((marks, index) => ({
    title: `${wall.roomName}, ${wall.wallName}, sheet ${index + 1} of ${pages.length}`,
    marks: [...marks, ...titleBlock(judgements, wall, scale, stamp, index + 1, pages.length)],
  }));
}

function text(
  xMm: number,
  yMm: number,
  words: string,
  sizeMm: number,
  face: SheetText['face'] = 'sans',
  anchor: SheetText['anchor'] = 'start',
): SheetText {
  return { kind: 'text', xMm, yMm, text: words, sizeMm, face, anchor };
}

function drawing(
  wall: WallSchedule,
  scale: number,
  openings: readonly OpeningBox[],
  fixtures: readonly FixtureBox[],
): SheetMark[] {
  const left = MARGIN + ROUND.left;
  const base = MARGIN + ROUND.top + wall.heightMm / scale;
  const X = (mm: number): number => left + mm / scale;
  const Y = (mm: number): number => base - mm / scale;
  const right = X(wall.lengthMm);
  const marks: SheetMark[] = [];
  // The wall: its top and sides, and the floor as it falls.
  marks.push(
    { kind: 'line', x1: left, y1: Y(wall.floorLeftMm), x2: left, y2: Y(wall.heightMm), weightMm: 0.5 },
    { kind: 'line', x1: left, y1: Y(wall.heightMm), x2: right, y2: Y(wall.heightMm), weightMm: 0.5 },
    { kind: 'line', x1: right, y1: Y(wall.heightMm), x2: right, y2: Y(wall.floorRightMm), weightMm: 0.5 },
    { kind: 'line', x1: left - 4, y1: Y(wall.floorLeftMm), x2: right + 4, y2: Y(wall.floorRightMm), weightMm: 0.7 },
  );
  for (let x = left - 4; x < right + 4; x += 3) {
    const y = Y(wall.floorLeftMm) + ((x - left) / (right - left)) * (Y(wall.floorRightMm) - Y(wall.floorLeftMm));
    marks.push({ kind: 'line', x1: x, y1: y + 3, x2: Math.min(x + 3, right + 4), y2: y, weightMm: 0.12 });
  }
  for (const opening of openings) {
    const x = X(opening.xMm - opening.widthMm / 2);
    const y = Y(opening.yMm + opening.heightMm / 2);
    const w = opening.widthMm / scale;
    const h = opening.heightMm / scale;
    marks.push({ kind: 'box', xMm: x, yMm: y, widthMm: w, heightMm: h, weightMm: 0.35, fill: 'paper' });
    marks.push({ kind: 'line', x1: x, y1: y, x2: x + w, y2: y + h, weightMm: 0.12 });
    marks.push({ kind: 'line', x1: x + w, y1: y, x2: x, y2: y + h, weightMm: 0.12 });
  }
  // Datum lines run behind what hangs.
  const line = (mm: number, label: string, dash: readonly number[], weightMm: number): void => {
    marks.push({ kind: 'line', x1: left - 6, y1: Y(mm), x2: right + 6, y2: Y(mm), weightMm, dash });
    marks.push(text(left - 7, Y(mm) - 0.6, label, 2.4, 'sans', 'end'));
    marks.push(text(left - 7, Y(mm) + 2.2, centimetresText(mm), 2.4, 'sans', 'end'));
  };
  line(wall.laserMm, 'laser line', [5, 1, 1, 1], 0.35);
  if (Math.abs(wall.centreLineMm - wall.laserMm) / scale > 4) line(wall.centreLineMm, 'centre line', [3, 1.5], 0.15);
  for (const { seen, name } of wall.standing) {
    const box = boxOf(seen, X, Y, scale);
    marks.push({ kind: 'box', ...box, weightMm: 0.2, dash: [1.5, 1] });
    if (box.widthMm > 18) {
      const [words] = linesOf(name, box.widthMm - 2, 2.3, 'sans', 1);
      marks.push(text(box.xMm + box.widthMm / 2, box.yMm + box.heightMm / 2 + 0.8, words ?? '', 2.3, 'sans', 'middle'));
    }
  }
  for (const fixture of fixtures) {
    marks.push({ kind: 'box', ...boxOf(fixture, X, Y, scale), weightMm: 0.25, fill: 'paper' });
    marks.push(text(X(fixture.xMm), Y(fixture.yMm - fixture.heightMm / 2) + 2.8, fixture.kind, 2, 'sans', 'middle'));
  }
  for (const row of wall.rows) {
    const box = boxOf(row.seen, X, Y, scale);
    marks.push({ kind: 'box', ...box, weightMm: 0.35, fill: 'paper', turnDegrees: row.seen.turnDegrees });
    const size = Math.max(2.2, Math.min(5, box.heightMm * 0.5, box.widthMm * 0.5));
    marks.push(text(X(row.seen.xMm), Y(row.seen.yMm) + size * 0.36, `${row.number}`, size, 'sans bold', 'middle'));
    if (!row.hooks.known) continue;
    for (const point of row.hooks.points) {
      const y = Y(row.hooks.heightMm);
      marks.push({ kind: 'ring', xMm: X(point.xMm), yMm: y, radiusMm: 0.9, weightMm: 0.25 });
      marks.push({ kind: 'line', x1: X(point.xMm) - 1.6, y1: y, x2: X(point.xMm) + 1.6, y2: y, weightMm: 0.2 });
      marks.push({ kind: 'line', x1: X(point.xMm), y1: y - 1.6, x2: X(point.xMm), y2: y + 1.6, weightMm: 0.2 });
    }
  }
  marks.push(...dimension(left, right, Y(wall.heightMm) - 6, centimetresText(wall.lengthMm)));
  marks.push(...alongLine(wall, X, base + 12));
  const falls = wall.floorLeftMm - wall.floorRightMm;
  const floor =
    falls === 0
      ? 'floor level along this wall'
      : `floor falls ${centimetresText(Math.abs(falls))} to the ${falls > 0 ? 'right' : 'left'}: never measure up from it`;
  marks.push(text(left, base + 22, `along, from the left corner, cm (edges of the five largest).  ${floor}`, 2.4));
  return marks;
}

function boxOf(
  seen: { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number },
  X: (mm: number) => number,
  Y: (mm: number) => number,
  scale: number,
): { xMm: number; yMm: number; widthMm: number; heightMm: number } {
  return {
    xMm: X(seen.xMm - seen.widthMm / 2),
    yMm: Y(seen.yMm + seen.heightMm / 2),
    widthMm: seen.widthMm / scale,
    heightMm: seen.heightMm / scale,
  };
}

function tick(x: number, y: number): SheetMark {
  return { kind: 'line', x1: x - 1.2, y1: y + 1.2, x2: x + 1.2, y2: y - 1.2, weightMm: 0.4 };
}

function dimension(left: number, right: number, y: number, words: string): SheetMark[] {
  return [
    { kind: 'line', x1: left, y1: y, x2: right, y2: y, weightMm: 0.18 },
    tick(left, y),
    tick(right, y),
    text((left + right) / 2, y - 1.4, words, 3, 'sans', 'middle'),
  ];
}

/** Left and right edges of the largest works, set so that figures never run into each other. */
function alongLine(wall: WallSchedule, X: (mm: number) => number, y: number): SheetMark[] {
  const large = [...wall.rows].sort((a, b) => b.seen.widthMm - a.seen.widthMm).slice(0, 5);
  const stops = [
    0,
    wall.lengthMm,
    ...large.flatMap(({ seen }) => [seen.xMm - seen.widthMm / 2, seen.xMm + seen.widthMm / 2]),
  ];
  const marks: SheetMark[] = [{ kind: 'line', x1: X(0), y1: y, x2: X(wall.lengthMm), y2: y, weightMm: 0.18 }];
  let last = Number.NEGATIVE_INFINITY;
  for (const stop of [...new Set(stops.map(Math.round))].sort((a, b) => a - b)) {
    const end = stop === wall.lengthMm;
    if (X(stop) - last < 9 || (!end && X(wall.lengthMm) - X(stop) < 9)) continue;
    last = X(stop);
    marks.push(
      tick(X(stop), y),
      text(X(stop), y + 4.6, stop === 0 ? '0' : centimetresText(stop), 2.6, 'sans', 'middle'),
    );
  }
  return marks;
}

const ROW_TOP = 20;

/** Draws as many rows as fit into one column; returns the rest. */
function schedule(
  marks: SheetMark[],
  rows: readonly ScheduleRow[],
  x: number,
  goesOn: boolean,
): readonly ScheduleRow[] {
  const right = x + SCHEDULE_WIDTH;
  const bottom = A3.heightMm - MARGIN - TITLE_BLOCK - 10;
  const heightRight = x + 84;
  marks.push(text(x, MARGIN + 5, goesOn ? 'Hanging schedule, continued' : 'Hanging schedule', 5, 'serif'));
  marks.push({ kind: 'line', x1: x, y1: MARGIN + 8, x2: right, y2: MARGIN + 8, weightMm: 0.5 });
  marks.push(text(x, MARGIN + 12, 'no.', 2.4), text(x + 8, MARGIN + 12, 'work, hardware, weight', 2.4));
  marks.push(text(heightRight, MARGIN + 12, 'hook height from', 2.4, 'sans', 'end'));
  marks.push(text(heightRight, MARGIN + 15.4, 'laser line · floor, cm, in', 2.4, 'sans', 'end'));
  marks.push(text(right, MARGIN + 12, 'hook along, from left', 2.4, 'sans', 'end'));
  marks.push(text(right, MARGIN + 15.4, 'corner, cm, in', 2.4, 'sans', 'end'));
  marks.push({ kind: 'line', x1: x, y1: MARGIN + 17, x2: right, y2: MARGIN + 17, weightMm: 0.25 });
  if (rows.length === 0) marks.push(text(x, MARGIN + 24, 'Nothing hangs on this wall.', 3, 'serif'));
  let y = MARGIN + ROW_TOP;
  for (const [index, row] of rows.entries()) {
    const names = linesOf(row.name, 42, 3.2, 'serif', 2);
    const facts = factsOf(row).flatMap((line) => linesOf(line, 44, 2.3, 'sans', 2));
    const points = row.hooks.known ? Math.max(1, row.hooks.points.length) : 1;
    const height = Math.max(names.length * 3.8 + facts.length * 3 + 2, points * 5.4 + 3, 12 + (points - 1) * 3.4);
    if (y + height > bottom) return rows.slice(index);
    marks.push(text(x, y + 3, `${row.number}`, 4, 'sans bold'));
    for (const [n, line] of names.entries()) marks.push(text(x + 8, y + 2.8 + n * 3.8, line, 3.2, 'serif'));
    for (const [n, line] of facts.entries()) {
      marks.push(text(x + 8, y + names.length * 3.8 + 2 + n * 3, line, 2.3));
    }
    hookFigures(marks, row, heightRight, right, y);
    y += height;
    marks.push({ kind: 'line', x1: x, y1: y, x2: right, y2: y, weightMm: 0.18 });
    y += 2.4;
  }
  const note = 'Both figures are to the hook’s bearing edge under load; measure both at the wall.';
  if (y + 4 < bottom + 8) marks.push(text(x, y + 2.4, note, 2.3));
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
    `${hardware}, ${row.weightKg === null ? 'not weighed' : `${Math.round(row.weightKg * 10) / 10} kg`}`,
  ];
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
      marks.push(text(right, y + 3 + n * 3.2, line, 2.6, 'sans', 'end'));
    }
    return;
  }
  const way = hooks.fromLaserMm < 0 ? 'down ' : 'up ';
  const laser = Math.abs(hooks.fromLaserMm);
  marks.push(text(heightRight, y + 3.6, `${way}${centimetresText(laser)}`, 4.4, 'sans bold', 'end'));
  marks.push(text(heightRight, y + 7.4, `${toInches(laser)} in`, 2.6, 'sans', 'end'));
  if (hooks.points.length === 0) marks.push(text(right, y + 3.6, 'spacing not known', 2.6, 'sans', 'end'));
  for (const [n, point] of hooks.points.entries()) {
    const line = y + 3.6 + n * 5.4;
    marks.push(text(right - 24, line, toInches(point.xMm), 2.6, 'sans', 'end'));
    marks.push(text(right, line, centimetresText(point.xMm), 4, 'sans bold', 'end'));
    const floor = `floor ${centimetresText(point.fromFloorMm)} · ${toInches(point.fromFloorMm)} in`;
    if (n === 0 || point.fromFloorMm !== hooks.points[n - 1]?.fromFloorMm) {
      marks.push(text(heightRight, y + 10.6 + (n === 0 ? 0 : n * 3.2), floor, 2.3, 'sans', 'end'));
    }
  }
}

/** Cautions of the wall, like ones told once with how many they are; then what is not recorded. */
function cautionTextsOf(judgements: Judgements, wall: WallSchedule): string[] {
  const byText = new Map<string, { numbers: number[]; ask: string }>();
  for (const row of wall.rows) {
    for (const caution of judgements.cautionsOf(row.pieceId)) {
      const known = byText.get(caution.what) ?? { numbers: [], ask: caution.ask };
      known.numbers.push(row.number);
      byText.set(caution.what, known);
    }
  }
  return [...byText].map(([what, { numbers, ask }]) => `${numbersText(numbers)}: ${what} Ask ${ask}.`);
}

function numbersText(numbers: readonly number[]): string {
  const parts: string[] = [];
  for (let i = 0; i < numbers.length; ) {
    let j = i;
    while (numbers[j + 1] === (numbers[j] ?? 0) + 1) j += 1;
    parts.push(j > i + 1 ? `${numbers[i]}–${numbers[j]}` : numbers.slice(i, j + 1).join(', '));
    i = j + 1;
  }
  return parts.join(', ');
}

/** Draws cautions downwards from y; returns how many fitted. */
function cautionMarks(
  cautions: readonly string[],
  x: number,
  y: number,
  width: number,
  bottom: number,
  marks: SheetMark[],
): number {
  if (cautions.length === 0 || y + 12 > bottom) return 0;
  marks.push(text(x, y + 4, 'Cautions', 4.2, 'serif'));
  let at = y + 9;
  let shown = 0;
  for (const caution of cautions) {
    const lines = linesOf(caution, width - 8, 2.6, 'sans', CAUTION_LINES);
    if (at + lines.length * 3.4 > bottom - 3) break;
    marks.push(
      { kind: 'line', x1: x, y1: at, x2: x + 1.5, y2: at - 2.6, weightMm: 0.3 },
      { kind: 'line', x1: x + 1.5, y1: at - 2.6, x2: x + 3, y2: at, weightMm: 0.3 },
      { kind: 'line', x1: x, y1: at, x2: x + 3, y2: at, weightMm: 0.3 },
    );
    for (const line of lines) {
      marks.push(text(x + 5, at, line, 2.6));
      at += 3.4;
    }
    at += 0.8;
    shown += 1;
  }
  const defer = 'Defer to local code, the lender’s terms, a conservator and a licensed professional.';
  if (shown > 0) marks.push(text(x + 5, Math.min(at + 0.6, bottom), defer, 2.3));
  return shown;
}

function titleBlock(
  judgements: Judgements,
  wall: WallSchedule,
  scale: number,
  stamp: Stamp,
  page: number,
  pages: number,
): SheetMark[] {
  const top = A3.heightMm - MARGIN - TITLE_BLOCK;
  const right = A3.widthMm - MARGIN;
  const columns = [MARGIN, 120, 190, 300, 330] as const;
  const marks: SheetMark[] = [
    { kind: 'box', xMm: MARGIN, yMm: top, widthMm: right - MARGIN, heightMm: TITLE_BLOCK, weightMm: 0.5 },
    {
      kind: 'box',
      xMm: columns[4],
      yMm: top,
      widthMm: right - columns[4],
      heightMm: TITLE_BLOCK,
      weightMm: 0.5,
      fill: 'ink',
    },
  ];
  for (const x of columns.slice(1, 3)) {
    marks.push({ kind: 'line', x1: x, y1: top, x2: x, y2: top + TITLE_BLOCK, weightMm: 0.25 });
  }
  marks.push(
    text(MARGIN + 4, top + 7, linesOf(judgements.setting('title'), 96, 5.4, 'serif', 1)[0] ?? '', 5.4, 'serif'),
  );
  marks.push(text(MARGIN + 4, top + 12.4, judgements.setting('museum'), 2.8));
  marks.push(text(MARGIN + 4, top + 17.2, `${wall.roomName}, ${wall.wallName}: elevation and hanging`, 2.8));
  marks.push(
    text(columns[1] + 4, top + 5, 'Scale on A3', 2.6),
    text(columns[1] + 4, top + 11, `1 : ${scale}`, 4.6, 'sans bold'),
  );
  const bar = 1000 / scale;
  marks.push({
    kind: 'box',
    xMm: columns[1] + 4,
    yMm: top + 14,
    widthMm: bar / 2,
    heightMm: 1.4,
    weightMm: 0.2,
    fill: 'ink',
  });
  marks.push({
    kind: 'box',
    xMm: columns[1] + 4 + bar / 2,
    yMm: top + 14,
    widthMm: bar / 2,
    heightMm: 1.4,
    weightMm: 0.2,
  });
  marks.push(
    text(columns[1] + 4, top + 19, '0', 2.3),
    text(columns[1] + 4 + bar, top + 19, '100 cm', 2.3, 'sans', 'middle'),
  );
  marks.push(text(columns[2] + 4, top + 5, `Paint: ${wall.paint}`, 2.6));
  marks.push(
    text(
      columns[2] + 4,
      top + 9.4,
      `Centre line ${centimetresText(wall.centreLineMm)}, laser line ${centimetresText(wall.laserMm)}, above the room’s level plane`,
      2.6,
    ),
  );
  marks.push(text(columns[2] + 4, top + 13.8, 'Hook = centre + half the height − drop, under tension', 2.6));
  marks.push(text(columns[2] + 4, top + 18.2, `${wall.rows.length} to hang`, 2.6));
  const version = stamp.version === 0 ? 'Draft' : `Version ${stamp.version}`;
  const white = (
    x: number,
    y: number,
    words: string,
    size: number,
    face: SheetText['face'],
    anchor?: 'end',
  ): SheetText => ({
    ...text(x, y, words, size, face, anchor ?? 'start'),
    ink: 'white',
  });
  marks.push(white(columns[4] + 4, top + 8, version, 5, 'sans bold'));
  marks.push(white(right - 3, top + 8, `sheet ${page} of ${pages}`, 2.6, 'sans', 'end'));
  marks.push(white(columns[4] + 4, top + 13, stamp.at, 2.6, 'sans'));
  marks.push(
    white(
      columns[4] + 4,
      top + 17.4,
      stamp.version === 0 ? 'not frozen: do not hang from it' : 'a later version makes this sheet void',
      2.6,
      'sans',
    ),
  );
  return marks;
}
