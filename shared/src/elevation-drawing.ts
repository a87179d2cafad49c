/** A wall drawn to scale: cut floor, openings, datum lines, what stands before it, what hangs on it and on which hooks. */
import { centimetresText } from '@enfilade/space/lengths';
import { alongLine, dimensionLine } from './dimension-lines.ts';
import { MARGIN, ROUND } from './elevation-layout.ts';
import type { ScheduleRow, WallSchedule } from './hanging-schedule.ts';
import type { FixtureBox, OpeningBox } from './judgements.ts';
import { linesOf, type SheetMark, textMark, textWidthMm } from './sheet.ts';
import type { WallLabel } from './wall-labels.ts';
import type { Seen } from './whereabouts.ts';

interface PaperBox {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** From millimetres of the wall to millimetres of paper. */
interface Frame {
  readonly scale: number;
  readonly X: (mm: number) => number;
  readonly Y: (mm: number) => number;
}

export function elevationDrawing(
  wall: WallSchedule,
  scale: number,
  openings: readonly OpeningBox[],
  fixtures: readonly FixtureBox[],
): SheetMark[] {
  const left = MARGIN + ROUND.left;
  const base = MARGIN + ROUND.top + wall.heightMm / scale;
  const frame: Frame = { scale, X: (mm) => left + mm / scale, Y: (mm) => base - mm / scale };
  const right = frame.X(wall.lengthMm);
  const falls = wall.floorLeftMm - wall.floorRightMm;
  const floor =
    falls === 0
      ? 'Floor level along this wall.'
      : `Floor falls ${centimetresText(Math.abs(falls))} to the ${falls > 0 ? 'right' : 'left'}: never measure up from it.`;
  const hung = wall.rows.map(({ seen }) => boxOf(seen, frame));
  const fixed = fixtures.map((fixture) => boxOf(fixture, frame));
  return [
    ...wallMarks(wall, frame),
    ...openings.flatMap((opening) => openingMarks(boxOf(opening, frame))),
    // Datum lines run behind what hangs.
    ...datumMarks(wall, frame),
    ...standingMarks(wall, frame, [...hung, ...fixed]),
    ...fixtures.flatMap((fixture, index) => fixtureMarks(fixture.kind, fixed[index] as PaperBox, hung)),
    ...wall.labels.flatMap((label) => labelMarks(label, frame)),
    ...wall.rows.flatMap((row) => hungMarks(row, frame)),
    // One without room is seen over what it lies over.
    ...wall.labels.filter(({ meets }) => meets.length > 0).flatMap((label) => labelMarks(label, frame)),
    ...dimensionLine(left, right, frame.Y(wall.heightMm) - 6, wall.lengthMm),
    ...alongLine(
      wall.lengthMm,
      wall.rows.map(({ seen }) => seen),
      frame.X,
      base + 8,
    ),
    textMark(
      left,
      base + 20.2,
      `Along, from the left corner: cm, inches beneath; edges of the largest. ${wall.labels.length > 0 ? 'Small plates are labels. ' : ''}${floor}`,
      2.4,
    ),
  ];
}

/** Its top and sides, and the floor as it falls, cut and hatched. */
function wallMarks(wall: WallSchedule, { X, Y }: Frame): SheetMark[] {
  const [left, right, top] = [X(0), X(wall.lengthMm), Y(wall.heightMm)];
  const [floorLeft, floorRight] = [Y(wall.floorLeftMm), Y(wall.floorRightMm)];
  const marks: SheetMark[] = [
    { kind: 'line', x1: left, y1: floorLeft, x2: left, y2: top, weightMm: 0.5 },
    { kind: 'line', x1: left, y1: top, x2: right, y2: top, weightMm: 0.5 },
    { kind: 'line', x1: right, y1: top, x2: right, y2: floorRight, weightMm: 0.5 },
    { kind: 'line', x1: left - 4, y1: floorLeft, x2: right + 4, y2: floorRight, weightMm: 0.7 },
  ];
  for (let x = left - 4; x < right + 4; x += 3) {
    const y = floorLeft + ((x - left) / (right - left)) * (floorRight - floorLeft);
    marks.push({ kind: 'line', x1: x, y1: y + 3, x2: Math.min(x + 3, right + 4), y2: y, weightMm: 0.12 });
  }
  return marks;
}

function openingMarks(box: PaperBox): SheetMark[] {
  const { xMm: x, yMm: y, widthMm: w, heightMm: h } = box;
  return [
    { kind: 'box', ...box, weightMm: 0.35, fill: 'paper' },
    { kind: 'line', x1: x, y1: y, x2: x + w, y2: y + h, weightMm: 0.12 },
    { kind: 'line', x1: x + w, y1: y, x2: x, y2: y + h, weightMm: 0.12 },
  ];
}

function datumMarks(wall: WallSchedule, { X, Y, scale }: Frame): SheetMark[] {
  const left = X(0);
  const line = (mm: number, label: string, dash: readonly number[], weightMm: number): SheetMark[] => [
    { kind: 'line', x1: left - 6, y1: Y(mm), x2: X(wall.lengthMm) + 6, y2: Y(mm), weightMm, dash },
    textMark(left - 7, Y(mm) - 0.6, label, 2.4, 'sans', 'end'),
    textMark(left - 7, Y(mm) + 2.2, centimetresText(mm), 2.4, 'sans', 'end'),
  ];
  // Two labels nearer than this would run into each other.
  const apart = Math.abs(wall.centreLineMm - wall.laserMm) / scale > 6;
  return [
    ...line(wall.laserMm, 'laser line', [5, 1, 1, 1], 0.35),
    ...(apart ? line(wall.centreLineMm, 'centre line', [3, 1.5], 0.15) : []),
  ];
}

const STANDING_SIZE = 2.3;

/** Dashed: it is set after hanging. Its name stands where nothing else is, or is left out. */
function standingMarks(wall: WallSchedule, frame: Frame, taken: readonly PaperBox[]): SheetMark[] {
  const boxes = wall.standing.map(({ seen }) => boxOf(seen, frame));
  const words: PaperBox[] = [];
  return wall.standing.flatMap(({ name }, index): SheetMark[] => {
    const box = boxes[index] as PaperBox;
    const outline: SheetMark = { kind: 'box', ...box, weightMm: 0.2, dash: [1.5, 1] };
    const [label] = box.widthMm > 12 ? linesOf(name, box.widthMm - 2, STANDING_SIZE, 'sans', 1) : [];
    if (label === undefined) return [outline];
    const width = textWidthMm(label, STANDING_SIZE, 'sans');
    const others = [...taken, ...words, ...boxes.filter((other) => other !== box && other.widthMm < box.widthMm)];
    for (const share of [0.97, 0.75, 0.5, 0.25]) {
      for (const x of [box.xMm + (box.widthMm - width) / 2, box.xMm + 1, box.xMm + box.widthMm - 1 - width]) {
        const baseline = box.yMm + Math.max(STANDING_SIZE + 0.6, box.heightMm * share - 0.8);
        const area = { xMm: x, yMm: baseline - STANDING_SIZE, widthMm: width, heightMm: STANDING_SIZE + 0.8 };
        if (others.some((other) => meet(area, other))) continue;
        words.push(area);
        return [outline, textMark(x, baseline, label, STANDING_SIZE)];
      }
    }
    return [outline];
  });
}

/** Its name below it, or above where a work hangs below. */
function fixtureMarks(kind: string, box: PaperBox, hung: readonly PaperBox[]): SheetMark[] {
  const width = textWidthMm(kind, 2, 'sans');
  const x = box.xMm + box.widthMm / 2;
  const at = (yMm: number): PaperBox => ({ xMm: x - width / 2, yMm: yMm - 2, widthMm: width, heightMm: 2.6 });
  const below = box.yMm + box.heightMm + 2.8;
  const free = [below, box.yMm - 1].find((y) => !hung.some((other) => meet(at(y), other)));
  return [
    { kind: 'box', ...box, weightMm: 0.25, fill: 'paper' },
    ...(free === undefined ? [] : [textMark(x, free, kind, 2, 'sans', 'middle')]),
  ];
}

/** Nearer to each other than this on paper, a label's lines run into one. */
const LEAST_LEADING_MM = 0.45;

/** A label as a small plate with its lines of text as strokes; dashed where it lies over something. */
function labelMarks({ meets, text, ...label }: WallLabel, frame: Frame): SheetMark[] {
  const box = boxOf(label, frame);
  const lines = text.split('\n').filter((line) => line !== '');
  const dash = meets.length > 0 ? { dash: [0.8, 0.6] } : {};
  const marks: SheetMark[] = [{ kind: 'box', ...box, weightMm: 0.15, fill: 'paper', ...dash }];
  const leading = (box.heightMm * 0.7) / Math.max(1, lines.length);
  if (leading < LEAST_LEADING_MM) return marks;
  const longest = Math.max(...lines.map(({ length }) => length));
  const [left, width] = [box.xMm + box.widthMm * 0.08, box.widthMm * 0.84];
  for (const [n, line] of lines.entries()) {
    const y = box.yMm + box.heightMm * 0.15 + (n + 0.5) * leading;
    marks.push({ kind: 'line', x1: left, y1: y, x2: left + (width * line.length) / longest, y2: y, weightMm: 0.1 });
  }
  return marks;
}

/** A work, its frame's sight edge, its number, and its hooks; in a small work the number gives way to the hook. */
function hungMarks({ number, seen, hooks, frameMm }: ScheduleRow, frame: Frame): SheetMark[] {
  const { X, Y } = frame;
  const box = boxOf(seen, frame);
  let size = Math.max(2.2, Math.min(5, box.heightMm * 0.5, box.widthMm * 0.5));
  let baseline = Y(seen.yMm) + size * 0.36;
  const marks: SheetMark[] = [];
  if (hooks.known) {
    const y = Y(hooks.heightMm);
    const words = textWidthMm(`${number}`, size, 'sans bold') / 2 + 1.8;
    const met = hooks.points.some(({ xMm }) => Math.abs(xMm - seen.xMm) / frame.scale < words);
    const below = box.yMm + box.heightMm - (y + 1.8);
    if (met && baseline - size * 0.72 < y + 1.8 && below > 1.8) {
      size = Math.min(size, below * 0.95);
      baseline = y + 1.8 + (below + size * 0.72) / 2;
    }
    for (const { xMm } of hooks.points) {
      const x = X(xMm);
      marks.push({ kind: 'ring', xMm: x, yMm: y, radiusMm: 0.9, weightMm: 0.25 });
      marks.push({ kind: 'line', x1: x - 1.6, y1: y, x2: x + 1.6, y2: y, weightMm: 0.2 });
      marks.push({ kind: 'line', x1: x, y1: y - 1.6, x2: x, y2: y + 1.6, weightMm: 0.2 });
    }
  }
  return [
    { kind: 'box', ...box, weightMm: 0.35, fill: 'paper', turnDegrees: seen.turnDegrees },
    ...sightEdgeMarks(seen, frameMm, frame),
    textMark(X(seen.xMm), baseline, `${number}`, size, 'sans bold', 'middle'),
    ...marks,
  ];
}

/** Nearer to the outline than this the two lines run into one. */
const LEAST_MOULDING_MM = 0.4;

/** Where the frame ends and the picture begins. */
function sightEdgeMarks(seen: Seen, frameMm: number, frame: Frame): SheetMark[] {
  if (frameMm / frame.scale < LEAST_MOULDING_MM) return [];
  const sight = { ...seen, widthMm: seen.widthMm - 2 * frameMm, heightMm: seen.heightMm - 2 * frameMm };
  return [{ kind: 'box', ...boxOf(sight, frame), weightMm: 0.15, turnDegrees: seen.turnDegrees }];
}

function boxOf(
  seen: { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number },
  { X, Y, scale }: Frame,
): PaperBox {
  return {
    xMm: X(seen.xMm - seen.widthMm / 2),
    yMm: Y(seen.yMm + seen.heightMm / 2),
    widthMm: seen.widthMm / scale,
    heightMm: seen.heightMm / scale,
  };
}

function meet(a: PaperBox, b: PaperBox): boolean {
  return (
    a.xMm < b.xMm + b.widthMm && b.xMm < a.xMm + a.widthMm && a.yMm < b.yMm + b.heightMm && b.yMm < a.yMm + a.heightMm
  );
}
