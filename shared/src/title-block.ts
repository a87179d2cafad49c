/** The ruled block along the foot of a sheet. */
import { centimetresText } from '@enfilade/space/lengths';
import { MARGIN, TITLE_BLOCK, TITLE_TOP } from './elevation-layout.ts';
import type { WallSchedule } from './hanging-schedule.ts';
import type { Judgements } from './judgements.ts';
import { A3, linesOf, type SheetMark, type SheetText, textMark } from './sheet.ts';

export interface Stamp {
  /** 0: not frozen, a draft on screen. */
  readonly version: number;
  /** Words of the moment: "12 May 2026, 14:02". */
  readonly at: string;
  readonly by: string;
}

/** What the sheet is of, at which scale, as of which version; the same on every sheet of a wall. */
export function titleBlock(
  judgements: Judgements,
  wall: WallSchedule,
  scale: number,
  stamp: Stamp,
  page: number,
  pages: number,
): SheetMark[] {
  const top = TITLE_TOP;
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
    textMark(MARGIN + 4, top + 7, linesOf(judgements.setting('title'), 96, 5.4, 'serif', 1)[0] ?? '', 5.4, 'serif'),
  );
  marks.push(textMark(MARGIN + 4, top + 12.4, judgements.setting('museum'), 2.8));
  marks.push(textMark(MARGIN + 4, top + 17.2, `${wall.roomName}, ${wall.wallName}: elevation and hanging`, 2.8));
  marks.push(
    textMark(columns[1] + 4, top + 5, 'Scale on A3', 2.6),
    textMark(columns[1] + 4, top + 11, `1 : ${scale}`, 4.6, 'sans bold'),
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
    textMark(columns[1] + 4, top + 19, '0', 2.3),
    textMark(columns[1] + 4 + bar, top + 19, '100 cm', 2.3, 'sans', 'middle'),
  );
  marks.push(textMark(columns[2] + 4, top + 5, paintText(wall), 2.6));
  marks.push(
    textMark(
      columns[2] + 4,
      top + 9.4,
      `Centre line ${centimetresText(wall.centreLineMm)}, laser line ${centimetresText(wall.laserMm)}, above the room’s level plane`,
      2.6,
    ),
  );
  marks.push(textMark(columns[2] + 4, top + 13.8, 'Hook = centre + half the height − drop, under tension', 2.6));
  marks.push(textMark(columns[2] + 4, top + 18.2, `${wall.rows.length} to hang`, 2.6));
  const version = stamp.version === 0 ? 'Draft' : `Version ${stamp.version}`;
  const white = (
    x: number,
    y: number,
    words: string,
    size: number,
    face: SheetText['face'],
    anchor?: 'end',
  ): SheetText => ({
    ...textMark(x, y, words, size, face, anchor ?? 'start'),
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

/** 'Paint: Saffron. Last coat 2026-05-12; hang not before 2026-05-16, better 2026-05-19' */
function paintText({ paint, drying }: WallSchedule): string {
  if (drying === null) return `Paint: ${paint}`;
  const { lastCoat, earliest, preferred } = drying;
  return `Paint: ${paint}. Last coat ${lastCoat}; hang not before ${earliest}, better ${preferred}`;
}
