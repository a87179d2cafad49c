/** How large a label is, where it goes beside its work, and whether it is read; lengths in mm. */
import { above, within } from './bounds.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';

/** A box on a wall: x, y to its centre, as every place. */
export interface LabelBox {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

const POINT_MM = 25.4 / 72;
/** Of a grotesque, in ems: mean width of a letter, leading. Common practice, no source. */
const LETTER_EM = 0.5;
const LEADING_EM = 1.3;
const MARGIN_MM = 10;

/** x-height (mm) for a viewing distance: distance / 107. RangeError below 0. Source: from memory, not confirmed. */
export function letterHeightOf(distanceMm: number): number {
  return within('distanceMm', distanceMm, 0, 1e6) / 107;
}

/** Contrast of two reflectances (LRV 0–100), |B1 − B2| / the larger, percent; 0 for two blacks. RangeError outside. Source: older US signage advice, from memory. */
export function signContrastOf(oneLrv: number, otherLrv: number): number {
  const most = Math.max(within('oneLrv', oneLrv, 0, 100), within('otherLrv', otherLrv, 0, 100));
  return most === 0 ? 0 : (Math.abs(oneLrv - otherLrv) / most) * 100;
}

/**
 * Size of a label for its text, set ragged in lines of the profile's length, with its words counted. RangeError on a point
 * size outside 4–500. Source: letters and leading are common practice, no source; lengths US federal museum guidelines.
 */
export function labelSizeOf(
  text: string,
  points?: number,
  profile: PracticeProfile = DEFAULT_PROFILE,
): {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines: number;
  readonly words: number;
  readonly tooLong: boolean;
} {
  const em = within('points', points ?? limitOf(profile, 'labelPoints'), 4, 500) * POINT_MM;
  const most = limitOf(profile, 'labelLineCharacters');
  let [lines, widest, words] = [0, 0, 0];
  for (const paragraph of text.split('\n')) {
    let line = 0;
    lines += 1;
    for (const word of paragraph.split(/\s+/).filter((each) => each !== '')) {
      words += 1;
      const joined = line === 0 ? word.length : line + 1 + word.length;
      if (line > 0 && joined > most) {
        lines += 1;
        line = word.length;
      } else line = joined;
      widest = Math.max(widest, line);
    }
  }
  const widthMm = widest * LETTER_EM * em + 2 * MARGIN_MM;
  const heightMm = lines * LEADING_EM * em + 2 * MARGIN_MM;
  return { widthMm, heightMm, lines, words, tooLong: words > limitOf(profile, 'labelWords') };
}

/**
 * Where a label goes: on the wished side of its work, else on the other, at the profile's centre height above the floor,
 * moved within its band until it overlaps nothing that is taken; null where neither side has room. The box takes wall space
 * and is itself to be given as taken for the next. RangeError on a size not above 0. Source: label guidelines, as read.
 */
export function labelPlaceOf(
  work: LabelBox,
  label: { readonly widthMm: number; readonly heightMm: number },
  wall: { readonly lengthMm: number; readonly floorMm: number; readonly taken: readonly LabelBox[] },
  side: 'left' | 'right' = 'right',
  profile: PracticeProfile = DEFAULT_PROFILE,
): LabelBox | null {
  const width = above('widthMm', label.widthMm, 0, 1e5);
  const height = above('heightMm', label.heightMm, 0, 1e5);
  const [low, high, centre] = [
    limitOf(profile, 'labelLowestMm') + height / 2,
    limitOf(profile, 'labelHighestMm') - height / 2,
    limitOf(profile, 'labelCentreMm'),
  ];
  const away = (work.widthMm + width) / 2 + limitOf(profile, 'labelGapMm');
  for (const sign of side === 'right' ? [1, -1] : [-1, 1]) {
    const xMm = work.xMm + sign * away;
    if (xMm - width / 2 < 0 || xMm + width / 2 > wall.lengthMm) continue;
    const column = wall.taken.filter((box) => Math.abs(box.xMm - xMm) < (box.widthMm + width) / 2);
    // The usual height first, then just above or below each thing in its column: one of these is free if any is.
    const heights = [
      Math.min(Math.max(centre, low), Math.max(low, high)),
      ...column.flatMap((box) => [-1, 1].map((up) => box.yMm - wall.floorMm + (up * (box.heightMm + height)) / 2)),
    ].filter((y) => y >= low - 1e-9 && y <= high + 1e-9);
    const free = heights
      .sort((a, b) => Math.abs(a - centre) - Math.abs(b - centre))
      .find((y) => column.every((box) => Math.abs(box.yMm - wall.floorMm - y) >= (box.heightMm + height) / 2 - 1e-9));
    if (free !== undefined) return { xMm, yMm: free + wall.floorMm, widthMm: width, heightMm: height };
  }
  return null;
}
