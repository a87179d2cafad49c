/** What is seen through a doorway, and the even gap of a line. */
import { above, within } from './bounds.ts';

/**
 * Gap (mm) that fills a wall evenly, ends too: (wall − Σ widths) / (n + 1); below 0 where they do not fit. RangeError on a
 * width below 0. Source: common practice, no source.
 */
export function evenGapOf(wallMm: number, widthsMm: readonly number[]): number {
  const sum = widthsMm.reduce((all, each) => all + within('widthMm', each, 0, 1e6), 0);
  return (within('wallMm', wallMm, 0, 1e6) - sum) / (widthsMm.length + 1);
}

/**
 * Span of a wall seen through a doorway (mm, right of its axis positive): the eye stands before it and off its axis, the
 * wall lies beyond. RangeError on a distance not above 0. Source: similar triangles.
 */
export function seenThroughOf(door: {
  readonly widthMm: number;
  readonly eyeBeforeMm: number;
  readonly eyeRightMm: number;
  readonly wallBeyondMm: number;
}): { readonly fromMm: number; readonly toMm: number } {
  const reach = within('wallBeyondMm', door.wallBeyondMm, 0, 1e6) / above('eyeBeforeMm', door.eyeBeforeMm, 0, 1e6);
  const eye = within('eyeRightMm', door.eyeRightMm, -1e6, 1e6);
  const half = above('widthMm', door.widthMm, 0, 1e6) / 2;
  return { fromMm: -half + (-half - eye) * reach, toMm: half + (half - eye) * reach };
}
