/** A record's frame as the colour engine takes it, and as it lies in or round the stated size. */
import { FRAME_FINISHES, type Frame, type FrameFinish } from '@enfilade/colour/frames';
import { FRAME_KINDS, type FrameFact } from './schema.ts';

// What is framed shows its frame however little is known of its moulding.
const SOME_WIDTH_MM = 1;

/** The frame that meets the wall; null for a work that has none, or of which nothing is said that can be read. */
export function frameFrom(frame: FrameFact | null | undefined): Frame | null {
  if (!frame || frame.kind === 'none' || !FRAME_KINDS.includes(frame.kind)) return null;
  const colour = frame.kind === 'from the picture' ? 'picture' : frame.kind;
  return { widthMm: Math.max(SOME_WIDTH_MM, widthOf(frame)), colour };
}

/** A frame that no photograph shows. */
export interface ChosenFrame {
  readonly kind: FrameFinish;
  readonly widthMm: number;
}

/** A frame somebody chose round a work, as wide as it is known to be; null for what its photograph shows, or none. */
export function chosenFrameOf(frame: FrameFact | null | undefined): ChosenFrame | null {
  const finish = FRAME_FINISHES.find((one) => one === frame?.kind);
  return frame && finish !== undefined ? { kind: finish, widthMm: widthOf(frame) } : null;
}

/** 0 for what is no width: a broken or hostile client's word breaks no page. */
function widthOf({ widthMm }: FrameFact): number {
  return Number.isFinite(widthMm) && widthMm > 0 ? widthMm : 0;
}

/** A chosen frame as it is drawn within a size, at most to the middle; null where there is none, or its width is not known. */
export function drawnFrameOf(
  frame: FrameFact | null | undefined,
  size: { readonly widthMm: number; readonly heightMm: number },
): ChosenFrame | null {
  const chosen = chosenFrameOf(frame);
  const most = Math.min(size.widthMm, size.heightMm) / 2 - 1;
  if (chosen === null || chosen.widthMm === 0 || !(most > 0)) return null;
  return { kind: chosen.kind, widthMm: Math.min(chosen.widthMm, most) };
}
