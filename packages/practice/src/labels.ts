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

/** Sides of its work a label may stand on. */
export const LABEL_SIDES = ['right', 'left', 'below'] as const;
export type LabelSide = (typeof LABEL_SIDES)[number];

/** Where it is looked for where nobody has said: consistently right, else left, else below. Common practice, no source. */
const LOOKED_FOR: readonly LabelSide[] = LABEL_SIDES;

export interface LabelWall {
  readonly lengthMm: number;
  /** Level of the floor (mm) along it. */
  floorAt(xMm: number): number;
  readonly taken: readonly LabelBox[];
}

/**
 * Where a label goes: on the first of these sides of its work where it overlaps nothing that is taken, beside it at the
 * profile's centre height above the floor, moved within its band; below it right under its foot; null where none has room
 * on the wall and in the band. The box takes wall space and is itself to be given as taken for the next. RangeError on a
 * size not above 0. Source: label guidelines, as read.
 */
export function labelPlaceOf(
  work: LabelBox,
  label: { readonly widthMm: number; readonly heightMm: number },
  wall: LabelWall,
  sides: readonly LabelSide[] = LOOKED_FOR,
  profile: PracticeProfile = DEFAULT_PROFILE,
): (LabelBox & { readonly side: LabelSide }) | null {
  for (const side of sides) {
    const wished = labelWishOf(work, label, wall, side, profile);
    const { xMm, widthMm: width, heightMm: height } = wished;
    const floorMm = wall.floorAt(xMm);
    if (xMm - width / 2 < 0 || xMm + width / 2 > wall.lengthMm) continue;
    const { low, high } = bandOf(height, profile);
    const column = wall.taken.filter((box) => Math.abs(box.xMm - xMm) < (box.widthMm + width) / 2);
    // The wished height first; beside a work then just above or below each thing in its column: one is free if any is.
    const others = column.flatMap((box) => [-1, 1].map((up) => box.yMm - floorMm + (up * (box.heightMm + height)) / 2));
    const wish = wished.yMm - floorMm;
    const free = [wish, ...(side === 'below' ? [] : others)]
      .filter((y) => y >= low - 1e-9 && y <= high + 1e-9)
      .sort((a, b) => Math.abs(a - wish) - Math.abs(b - wish))
      .find((y) => column.every((box) => Math.abs(box.yMm - floorMm - y) >= (box.heightMm + height) / 2 - 1e-9));
    if (free !== undefined) return { ...wished, yMm: free + floorMm };
  }
  return null;
}

/** Where it would stand on a side whatever is there already. RangeError on a size not above 0. Source: as `labelPlaceOf`. */
export function labelWishOf(
  work: LabelBox,
  label: { readonly widthMm: number; readonly heightMm: number },
  wall: Pick<LabelWall, 'floorAt'>,
  side: LabelSide,
  profile: PracticeProfile = DEFAULT_PROFILE,
): LabelBox & { readonly side: LabelSide } {
  const widthMm = above('widthMm', label.widthMm, 0, 1e5);
  const heightMm = above('heightMm', label.heightMm, 0, 1e5);
  const gap = limitOf(profile, 'labelGapMm');
  if (side === 'below') {
    return { xMm: work.xMm, yMm: work.yMm - (work.heightMm + heightMm) / 2 - gap, widthMm, heightMm, side };
  }
  const { low, high } = bandOf(heightMm, profile);
  const away = (work.widthMm + widthMm) / 2 + gap;
  const up = Math.min(Math.max(limitOf(profile, 'labelCentreMm'), low), Math.max(low, high));
  const xMm = work.xMm + (side === 'right' ? away : -away);
  return { xMm, yMm: wall.floorAt(xMm) + up, widthMm, heightMm, side };
}

/** Lowest and highest centre (mm above the floor) at which all of a label is read. */
function bandOf(heightMm: number, profile: PracticeProfile): { readonly low: number; readonly high: number } {
  return {
    low: limitOf(profile, 'labelLowestMm') + heightMm / 2,
    high: limitOf(profile, 'labelHighestMm') - heightMm / 2,
  };
}
