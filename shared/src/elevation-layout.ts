/** How an A3 elevation sheet is laid out, in millimetres of paper, and the scale a wall is drawn at on it. */
import { A3 } from './sheet.ts';

/** Scales a drawing office uses for a wall; the largest that fits is taken. */
export const SCALES = [10, 20, 25, 50] as const;

export const MARGIN = 12;
export const TITLE_BLOCK = 22;
export const TITLE_TOP = A3.heightMm - MARGIN - TITLE_BLOCK;
/** Of one column of the hanging schedule; three stand side by side. */
export const COLUMN = 126;
export const GUTTER = 9;
/** Room round the wall for dimensions: above, below, left, right. */
export const ROUND = { top: 11, bottom: 23, left: 20, right: 20 } as const;

/** The scale a wall is drawn at on A3; the smallest on offer where even that does not fit. */
export function scaleOf(lengthMm: number, heightMm: number): number {
  const width = A3.widthMm - 2 * MARGIN - ROUND.left - ROUND.right;
  const height = TITLE_TOP - MARGIN - ROUND.top - ROUND.bottom;
  return SCALES.find((scale) => lengthMm / scale <= width && heightMm / scale <= height) ?? 50;
}
