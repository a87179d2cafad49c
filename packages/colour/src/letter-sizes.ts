/** A size of letters: height of the small x and of the capitals in mm, type size in points. */
export interface LetterSize {
  readonly xHeightMm: number;
  readonly capitalMm: number;
  readonly points: number;
}

const MM_PER_POINT = 25.4 / 72;
// Of the type size, in a sans serif for reading: common practice, no source.
const X_HEIGHT = 0.5;
const CAPITAL = 0.7;

/** The least letters that are read from a distance in mm: x-height a 107th of it (from memory, no source read). RangeError from 0 down. */
export function smallestLettersAt(distanceMm: number): LetterSize {
  if (!(distanceMm > 0)) throw new RangeError(`smallestLettersAt: ${distanceMm} mm is not over 0`);
  const xHeightMm = distanceMm / 107;
  const emMm = xHeightMm / X_HEIGHT;
  return { xHeightMm, capitalMm: emMm * CAPITAL, points: emMm / MM_PER_POINT };
}

/** Words on walls by what they are for. */
export type WordsKind = 'object label' | 'panel' | 'introduction';

/** Smallest type sizes in points that a national museum's published standard gives (practice, section 3); 35 is its least for panels. */
export const SMALLEST_POINTS: Readonly<Record<WordsKind, number>> = { 'object label': 24, panel: 35, introduction: 75 };

/** Letters from which WCAG 2.2 takes text for large, in points: 18, or 14 when bold. */
export const LARGE_POINTS = { regular: 18, bold: 14 } as const;

/**
 * Capitals of a sign in mm, the least that ADA 2010, 703.5.5 has for a viewing distance in mm with the sign's baseline 40 to
 * 70 inches up: 5/8 inch under 72 inches and 1/8 inch more for each foot beyond (from memory). For signs; a measure for labels.
 */
export function smallestSignCapitalMm(distanceMm: number): number {
  if (!(distanceMm > 0)) throw new RangeError(`smallestSignCapitalMm: ${distanceMm} mm is not over 0`);
  const feetBeyond = Math.max(0, distanceMm / 304.8 - 6);
  return (5 / 8 + feetBeyond / 8) * 25.4;
}
