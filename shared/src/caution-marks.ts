/** Cautions on a sheet: like ones told once, each with the numbers on the drawing that it is of. */
import type { WallSchedule } from './hanging-schedule.ts';
import type { Judgements } from './judgements.ts';
import { runsText } from './runs-text.ts';
import { linesOf, type SheetMark, textMark } from './sheet.ts';

const CAUTION_LINES = 5;
const FIGURE = /\d+(?:\.\d+)?/g;

/** '2, 4, 5: Its centre is 252.8 to 283.5 cm above the floor, above reach. Ask the preparator (common practice, no source).' */
export function cautionTextsOf(judgements: Judgements, wall: WallSchedule): string[] {
  const alike = new Map<string, { numbers: number[]; texts: string[]; ask: string; source: string }>();
  for (const { number, pieceId } of wall.rows) {
    for (const { what, ask, source } of judgements.cautionsOf(pieceId)) {
      const key = `${what.replace(FIGURE, '#')} ${ask}`;
      const known = alike.get(key) ?? { numbers: [], texts: [], ask, source };
      known.numbers.push(number);
      known.texts.push(what);
      alike.set(key, known);
    }
  }
  return [...alike.values()].map(
    ({ numbers, texts, ask, source }) => `${runsText(numbers)}: ${rangedText(texts)} Ask ${ask} (${source}).`,
  );
}

/** Texts that differ in their figures alone, said once: each figure from its least to its most. */
export function rangedText(texts: readonly string[]): string {
  const figures = texts.map((text) => text.match(FIGURE) ?? []);
  let at = -1;
  return (texts[0] ?? '').replace(FIGURE, (figure) => {
    at += 1;
    const own = figures.map((all) => all[at] ?? figure);
    const [least, most] = [...own]
      .sort((a, b) => Number(a) - Number(b))
      .filter((_, n, all) => n === 0 || n === all.length - 1);
    return most === undefined || least === most ? figure : `${least} to ${most}`;
  });
}

/** Draws cautions downwards from y; returns how many fitted. */
export function cautionMarks(
  cautions: readonly string[],
  x: number,
  y: number,
  width: number,
  bottom: number,
  marks: SheetMark[],
): number {
  if (cautions.length === 0 || y + 12 > bottom) return 0;
  marks.push(textMark(x, y + 4, 'Cautions', 4.2, 'serif'));
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
      marks.push(textMark(x + 5, at, line, 2.6));
      at += 3.4;
    }
    at += 0.8;
    shown += 1;
  }
  const defer = 'Defer to local code, the lender’s terms, a conservator and a licensed professional.';
  if (shown > 0) marks.push(textMark(x + 5, Math.min(at + 0.6, bottom), defer, 2.3));
  return shown;
}
