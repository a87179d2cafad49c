/** Cloth and wallpaper to order, with their repeats. */
import { above, within } from './bounds.ts';
import type { Issue } from './issues.ts';

const INCH_MM = 25.4;

/** Vertical and horizontal repeat together, up to so many inches: so much more cloth. Source: upholsterers' charts, as read. */
const UPLIFTS: readonly (readonly [belowInches: number, share: number])[] = [
  [3, 0],
  [15, 0.1],
  [20, 0.15],
  [28, 0.2],
  [37, 0.25],
  [46, 0.3],
  [55, 0.35],
];

/**
 * Cloth to order (mm) for a length that a plain 54 in cloth would need, its repeats (mm, 0 for none) and width.
 * `beyondTable`: repeats over 54 in or cloth under 50 in, which the chart leaves out: ask the upholsterer. RangeError
 * outside 0–1e6 mm. Source: upholsterers' yardage charts, as read.
 */
export function clothOf(cloth: {
  readonly plainMm: number;
  readonly verticalRepeatMm: number;
  readonly horizontalRepeatMm: number;
  readonly clothWidthMm?: number;
}): { readonly orderMm: number; readonly upliftShare: number; readonly beyondTable: boolean } {
  const repeat =
    within('verticalRepeatMm', cloth.verticalRepeatMm, 0, 1e5) +
    within('horizontalRepeatMm', cloth.horizontalRepeatMm, 0, 1e5);
  const widthMm = above('clothWidthMm', cloth.clothWidthMm ?? 54 * INCH_MM, 0, 1e5);
  const row = UPLIFTS.find(([below]) => repeat / INCH_MM < below - 1e-9);
  // The chart's own further ten points are for 50 to 52 in goods.
  const narrow = widthMm < 53 * INCH_MM ? 0.1 : 0;
  const upliftShare = (row?.[1] ?? 0.35) + narrow;
  return {
    orderMm: within('plainMm', cloth.plainMm, 0, 1e6) * (1 + upliftShare),
    upliftShare,
    beyondTable: row === undefined || widthMm < 50 * INCH_MM - 1e-9,
  };
}

/**
 * Wallpaper for one wall (mm): strip, strips a roll, strips, rolls. A strip is the height and trim, rounded up to the
 * repeat; a half-drop takes half a repeat more. An issue where a roll is shorter than a strip. RangeError on a size that
 * is not above 0. Source: wallpaper guides, as read; half-drop from memory.
 */
export function wallpaperOf(wall: {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly trimMm: number;
  /** 0: none. */
  readonly repeatMm: number;
  readonly rollWidthMm: number;
  readonly rollLengthMm: number;
  readonly halfDrop?: boolean;
}):
  | { readonly stripMm: number; readonly stripsPerRoll: number; readonly strips: number; readonly rolls: number }
  | Issue {
  const whole = above('heightMm', wall.heightMm, 0, 1e5) + within('trimMm', wall.trimMm, 0, 1e5);
  const repeatMm = within('repeatMm', wall.repeatMm, 0, 1e5);
  const repeated = repeatMm < 1 ? whole : ceil(whole / repeatMm) * repeatMm;
  const stripMm = repeated + (wall.halfDrop === true ? repeatMm / 2 : 0);
  const stripsPerRoll = Math.floor(above('rollLengthMm', wall.rollLengthMm, 0, 1e6) / stripMm + 1e-9);
  if (stripsPerRoll < 1) return { where: 'roll', what: 'is shorter than one strip', value: wall.rollLengthMm };
  const strips = ceil(above('widthMm', wall.widthMm, 0, 1e6) / above('rollWidthMm', wall.rollWidthMm, 0, 1e5));
  return { stripMm, stripsPerRoll, strips, rolls: ceil(strips / stripsPerRoll) };
}

/** Up to the next whole, at least 1, but for the last bits of binary arithmetic. */
function ceil(value: number): number {
  return Math.max(1, Math.ceil(value - 1e-9));
}
