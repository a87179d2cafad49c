/**
 * A printed sheet as plain marks in millimetres of paper, y down: lines, rectangles and words. The screen draws them as
 * SVG and the server as PDF, so that what is seen is what is printed.
 */

export const A3 = { widthMm: 420, heightMm: 297 } as const;

export interface SheetText {
  readonly kind: 'text';
  readonly xMm: number;
  /** Baseline. */
  readonly yMm: number;
  readonly text: string;
  /** Em size. */
  readonly sizeMm: number;
  readonly face: 'serif' | 'sans' | 'sans bold';
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly ink?: 'white';
}

export type SheetMark =
  | SheetText
  | {
      readonly kind: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly weightMm: number;
      readonly dash?: readonly number[];
    }
  | {
      readonly kind: 'box';
      readonly xMm: number;
      readonly yMm: number;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly weightMm: number;
      readonly fill?: 'ink' | 'paper';
      readonly dash?: readonly number[];
      /** Clockwise about its centre. */
      readonly turnDegrees?: number;
    }
  | {
      readonly kind: 'ring';
      readonly xMm: number;
      readonly yMm: number;
      readonly radiusMm: number;
      readonly weightMm: number;
    };

export interface Sheet {
  readonly title: string;
  readonly marks: readonly SheetMark[];
}

export function textMark(
  xMm: number,
  yMm: number,
  words: string,
  sizeMm: number,
  face: SheetText['face'] = 'sans',
  anchor: SheetText['anchor'] = 'start',
): SheetText {
  return { kind: 'text', xMm, yMm, text: words, sizeMm, face, anchor };
}

/** Advance widths of the two faces in em by class of letter: measured off the fonts, enough to break lines by. */
const WIDE = /[MWmw—@%]/;
const NARROW = /[iljtfrI.,;:'’!|()[\] ]/;

export function textWidthMm(text: string, sizeMm: number, face: SheetText['face']): number {
  let em = 0;
  for (const letter of text) {
    em += WIDE.test(letter) ? 0.84 : NARROW.test(letter) ? 0.29 : letter >= 'A' && letter <= 'Z' ? 0.64 : 0.54;
  }
  return em * sizeMm * (face === 'sans bold' ? 1.05 : face === 'serif' ? 0.96 : 1);
}

/** Breaks a text into lines no wider than given; at most `lines`, the last one ending in … where it was cut. */
export function linesOf(
  text: string,
  widthMm: number,
  sizeMm: number,
  face: SheetText['face'],
  lines: number,
): string[] {
  const out: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidthMm(longer, sizeMm, face) <= widthMm || line === '') {
      line = longer;
    } else {
      out.push(line);
      line = word;
    }
  }
  if (line !== '') out.push(line);
  const cut = (end: string): string => {
    let kept = end;
    while (kept.length > 1 && textWidthMm(`${kept}…`, sizeMm, face) > widthMm) kept = kept.slice(0, -1);
    return `${kept.trimEnd()}…`;
  };
  if (out.length > lines) out.splice(lines - 1, out.length, cut(out[lines - 1] ?? ''));
  return out.map((one) => (textWidthMm(one, sizeMm, face) > widthMm ? cut(one) : one));
}
