/** A frame as it lies within the rectangle of what it is round: where its sight edge is, and its sides' tones. */
import { FRAME_COLOURS, FRAME_FINISHES, type FrameFinish } from '@enfilade/colour/frames';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { ChosenFrame } from '@enfilade/shared/frames';
import type { TrueSize } from '@enfilade/shared/true-size';

/** How much of the width and height of what it is round it takes on either side: seen aslant it narrows with it. */
export interface Moulding {
  readonly finish: FrameFinish;
  readonly across: number;
  readonly up: number;
}

/** A rectangle of the canvas, device px. */
export interface Within {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export function mouldingOf({ kind, widthMm }: ChosenFrame, size: TrueSize): Moulding {
  return { finish: kind, across: widthMm / size.widthMm, up: widthMm / size.heightMm };
}

/** What is seen within the moulding of a rectangle; all of it where the moulding is under half a pixel. */
export function sightOf({ across, up }: Moulding, { x, y, w, h }: Within): Within {
  const dx = Math.min(Math.round(across * w), Math.floor((w - 1) / 2));
  const dy = Math.min(Math.round(up * h), Math.floor((h - 1) / 2));
  return dx < 1 || dy < 1 ? { x, y, w, h } : { x: x + dx, y: y + dy, w: w - 2 * dx, h: h - 2 * dy };
}

/** CSS colours of a finish: unlit, and its four sides and those of a slope within them, from the top clockwise. */
export interface MouldingTones {
  readonly flat: string;
  readonly sides: readonly string[];
  readonly slopes: readonly string[];
}

/** L* over or under the finish's own for the top, right, bottom and left side: light falls from the upper left. */
const LIGHTS = [8, -4, -8, 4];

const TONES = new Map<FrameFinish, MouldingTones>(
  FRAME_FINISHES.map((finish) => {
    const { L, a, b } = FRAME_COLOURS[finish];
    const lit = (by: number): string => hexFromLabD65({ L: Math.max(0, Math.min(100, L + by)), a, b });
    return [finish, { flat: lit(0), sides: LIGHTS.map(lit), slopes: LIGHTS.map((by) => lit(-by)) }];
  }),
);

export function mouldingTonesOf(finish: FrameFinish): MouldingTones {
  return TONES.get(finish) as MouldingTones;
}
