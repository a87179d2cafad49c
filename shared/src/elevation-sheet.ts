/**
 * A wall's elevation as printed sheets: A3, to scale, with the hanging schedule beside it, beneath it, or on the next
 * sheets, whichever is the first that holds it.
 */
import { cautionMarks, cautionTextsOf } from './caution-marks.ts';
import { elevationDrawing } from './elevation-drawing.ts';
import { COLUMN, GUTTER, MARGIN, ROUND, scaleOf, TITLE_TOP } from './elevation-layout.ts';
import { type ScheduleRow, wallScheduleOf } from './hanging-schedule.ts';
import type { Judgements } from './judgements.ts';
import { scheduleColumn } from './schedule-column.ts';
import type { SurfaceId } from './schema.ts';
import { A3, type Sheet, type SheetMark } from './sheet.ts';
import { type Stamp, titleBlock } from './title-block.ts';

const WIDTH = A3.widthMm - 2 * MARGIN;
const COLUMNS = [0, 1, 2].map((column) => MARGIN + column * (COLUMN + GUTTER));
const BOTTOM = TITLE_TOP - 4;

/** What is still to be put on paper. */
interface Rest {
  readonly rows: readonly ScheduleRow[];
  readonly cautions: readonly string[];
}

export function elevationSheetsOf(judgements: Judgements, surface: SurfaceId, stamp: Stamp): Sheet[] {
  const wall = wallScheduleOf(judgements, surface);
  if (wall === null) return [];
  const scale = scaleOf(wall.lengthMm, wall.heightMm);
  const drawing = elevationDrawing(wall, scale, judgements.openingsOn(surface), judgements.fixturesOn(surface));
  const top = MARGIN + ROUND.top + wall.heightMm / scale + ROUND.bottom;
  const all: Rest = { rows: wall.rows, cautions: cautionTextsOf(judgements, wall) };
  const beside = wall.lengthMm / scale + ROUND.left + ROUND.right + GUTTER + COLUMN <= WIDTH;
  const pages = beside
    ? [...besideDrawing(drawing, all, top)]
    : (beneathDrawing(drawing, all, top) ?? [...followingDrawing(drawing, all, top)]);
  return pages.map((marks, index) => ({
    title: `${wall.roomName}, ${wall.wallName}, sheet ${index + 1} of ${pages.length}`,
    marks: [...marks, ...titleBlock(judgements, wall, scale, stamp, index + 1, pages.length)],
  }));
}

function besideDrawing(drawing: readonly SheetMark[], { rows, cautions }: Rest, top: number): SheetMark[][] {
  const first = [...drawing];
  const shown = cautionMarks(cautions, MARGIN, top, WIDTH - COLUMN - GUTTER, BOTTOM, first);
  const place = { x: MARGIN + WIDTH - COLUMN, top: MARGIN, goesOn: false };
  const rest = { rows: scheduleColumn(first, rows, place), cautions: cautions.slice(shown) };
  return [first, ...furtherSheets(rest, true)];
}

/** One sheet for all of it, or null: columns of schedule beneath the drawing, then its cautions. */
function beneathDrawing(drawing: readonly SheetMark[], { rows, cautions }: Rest, top: number): SheetMark[][] | null {
  const sheet = [...drawing];
  let left = rows;
  for (const [column, x] of COLUMNS.entries()) {
    if (column > 0 && left.length === 0) return fits(cautionsBeneath(sheet, cautions, x, top));
    const before = left.length;
    left = scheduleColumn(sheet, left, { x, top, goesOn: column > 0 });
    if (left.length === before && before > 0) return null;
  }
  return fits(left.length === 0 && cautions.length === 0);

  function fits(whole: boolean): SheetMark[][] | null {
    return whole ? [sheet] : null;
  }
}

function cautionsBeneath(sheet: SheetMark[], cautions: readonly string[], x: number, top: number): boolean {
  return cautionMarks(cautions, x, top, MARGIN + WIDTH - x, TITLE_TOP, sheet) === cautions.length;
}

function followingDrawing(drawing: readonly SheetMark[], { rows, cautions }: Rest, top: number): SheetMark[][] {
  const first = [...drawing];
  const shown = cautionMarks(cautions, MARGIN, top, WIDTH, BOTTOM, first);
  return [first, ...furtherSheets({ rows, cautions: cautions.slice(shown) }, false)];
}

/** Sheets of three columns: the schedule, then the cautions that are left; none where nothing is. */
function furtherSheets({ rows, cautions }: Rest, goesOn: boolean): SheetMark[][] {
  const pages: SheetMark[][] = [];
  let [left, waiting, begun] = [rows, cautions, goesOn];
  while (left.length > 0 || waiting.length > 0) {
    const page: SheetMark[] = [];
    for (const x of COLUMNS) {
      if (left.length > 0) {
        left = scheduleColumn(page, left, { x, top: MARGIN, goesOn: begun });
        begun = true;
      } else {
        waiting = waiting.slice(cautionMarks(waiting, x, MARGIN + 1, COLUMN, BOTTOM, page));
      }
    }
    pages.push(page);
  }
  return pages;
}
