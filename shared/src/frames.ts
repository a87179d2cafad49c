/** A record's frame as the colour engine takes it, and as it lies in or round the stated size. */
import type { Frame } from '@enfilade/colour/frames';
import type { FrameFact } from './schema.ts';

// What is framed shows its frame however little is known of its moulding.
const SOME_WIDTH_MM = 1;

/** The frame that meets the wall; null for a work that has none, or of which nothing is said. */
export function frameFrom(frame: FrameFact | null | undefined): Frame | null {
  if (!frame || frame.kind === 'none') return null;
  const colour = frame.kind === 'from the picture' ? 'picture' : frame.kind;
  return { widthMm: Math.max(SOME_WIDTH_MM, frame.widthMm), colour };
}

/** A frame that no photograph shows, and so is drawn round the picture, at most to the middle; null where there is none. */
export function drawnFrameOf(
  frame: FrameFact | null | undefined,
  size: { readonly widthMm: number; readonly heightMm: number },
): FrameFact | null {
  if (!frame || frame.kind === 'none' || frame.kind === 'from the picture' || !(frame.widthMm > 0)) return null;
  const most = Math.min(size.widthMm, size.heightMm) / 2 - 1;
  return most > 0 ? { kind: frame.kind, widthMm: Math.min(frame.widthMm, most) } : null;
}
