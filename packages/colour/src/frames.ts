import type { LabD65 } from './lab.ts';
import type { Swatch } from './palette.ts';

/** What frames are called where no colour was measured. */
export const FRAME_FINISHES = ['gilt', 'silver', 'black', 'white', 'pale wood', 'wood', 'dark wood'] as const;
export type FrameFinish = (typeof FRAME_FINISHES)[number];

/**
 * A work's frame: how wide its moulding is, mm, and what it looks like: a finish, a measured colour (CIELAB D65), or
 * `picture` where the photograph shows it, so that the picture's own edge is the frame's.
 */
export interface Frame {
  readonly widthMm: number;
  readonly colour: FrameFinish | 'picture' | LabD65;
}

/**
 * CIELAB D65 of finishes as they stand under even light, their lights and darks averaged; a metal leaf shows more of
 * both. Own values, not measured: gilt lies in the band of practice (L* 60 to 75, warm), the others were set by eye.
 */
export const FRAME_COLOURS: Readonly<Record<FrameFinish, LabD65>> = {
  gilt: { L: 66, a: 7, b: 38 },
  silver: { L: 70, a: 0, b: 4 },
  black: { L: 16, a: 0, b: 1 },
  white: { L: 93, a: 0, b: 3 },
  'pale wood': { L: 72, a: 7, b: 25 },
  wood: { L: 48, a: 14, b: 27 },
  'dark wood': { L: 27, a: 10, b: 12 },
};

/** The colours of a picture once its frame is round it: what meets the wall is the frame; without one, the picture's edge. */
export interface FramedColours {
  readonly body: readonly Swatch[];
  readonly edge: readonly Swatch[];
  /** Whether the edge is a frame's, for the words. */
  readonly framed: boolean;
}

/**
 * Body and edge as they meet the wall, CIELAB D65. `frame` null: hung without one. A frame of a finish or a measured
 * colour takes the picture's edge into the picture. RangeError for a width that is none.
 */
export function framedColoursOf(
  colours: { readonly body: readonly Swatch[]; readonly edge: readonly Swatch[] },
  frame: Frame | null,
): FramedColours {
  if (frame === null) return { body: colours.body, edge: colours.edge, framed: false };
  if (!(frame.widthMm >= 0)) throw new RangeError(`framedColoursOf: widthMm ${frame.widthMm} is not 0 or more`);
  if (frame.widthMm === 0) return { body: colours.body, edge: colours.edge, framed: false };
  if (frame.colour === 'picture') return { body: colours.body, edge: colours.edge, framed: true };
  const lab = typeof frame.colour === 'string' ? FRAME_COLOURS[frame.colour] : frame.colour;
  return { body: colours.body, edge: [{ lab, share: 1 }], framed: true };
}
