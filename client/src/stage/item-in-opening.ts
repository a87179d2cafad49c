/** How a thing in a doorway or window is drawn: from both sides of its wall, and in the plans of both rooms. */
import { inPlanOf, onFaceOf } from '@enfilade/shared/in-openings';
import { type Place, surfaceParts } from '@enfilade/shared/schema';
import type { WallSide } from '@enfilade/space/room';
import type { ScenePanel } from './panels.ts';
import type { InOpening } from './standing.ts';

/** A flat thing's footprint is still drawn, as a line this thick. */
export const FLAT_ON_FLOOR_MM = 20;

interface SeenThere {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turnDegrees: number;
  readonly as: 'picture' | 'footprint';
  readonly depth: number;
  readonly direct: boolean;
}

/** In the elevation of either side its picture, behind all on the wall; in the plan its footprint. */
export function inOpening(
  panel: ScenePanel,
  at: InOpening,
  size: { readonly widthMm: number; readonly heightMm: number; readonly depthMm: number },
): SeenThere | null {
  const place: Place = [`opening:${at.openingId}`, at.xMm, at.yMm, at.liftMm, at.turnDegrees * 100];
  if (panel.kind === 'wall') {
    const face = onFaceOf(at.opening, panel.surface, place);
    const { widthMm, heightMm } = size;
    return face && { ...face, widthMm, heightMm, as: 'picture', depth: at.direct ? -1 : 0, direct: at.direct };
  }
  const parts = surfaceParts(panel.surface);
  const on = at.opening.sides.find(({ surface }) => surfaceParts(surface)?.roomId === parts?.roomId);
  if (panel.kind !== 'floor' || panel.room === null || on === undefined) return null;
  const side = surfaceParts(on.surface)?.side as WallSide;
  const foot = inPlanOf(at.opening, on.surface, panel.room, side, place, size.heightMm);
  if (foot === null) return null;
  const { baseMm, ...spot } = foot;
  const seen = { widthMm: size.widthMm, heightMm: size.depthMm || FLAT_ON_FLOOR_MM };
  return { ...spot, ...seen, as: 'footprint', depth: baseMm, direct: false };
}
