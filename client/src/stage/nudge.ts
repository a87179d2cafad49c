/** A step by keys, along the screen's axes, as places in the frame of what each piece is on. Pure. */
import { carrierOf, type PieceId, type Place } from '@enfilade/shared/schema';
import { arrowOnPanel, type Panel } from '@enfilade/space/fold-out';
import { planFromWall, type WallSide, wallFromPlan } from '@enfilade/space/room';
import type { ScenePanel } from './panels.ts';
import type { SceneItem } from './scene-items.ts';
import { type Lookup, ontoCarrier, standingOf } from './standing.ts';

/**
 * Where pieces come to be after a step of (dx, dy) on the screen (mm, dy down). `itemOf` says on which panel a piece is
 * looked at. What stands on another of them goes along with it and gets no place of its own.
 */
export function nudged(
  lookup: Lookup,
  pieceIds: readonly PieceId[],
  itemOf: (pieceId: PieceId) => SceneItem | undefined,
  dx: number,
  dy: number,
): Map<PieceId, Place> {
  const places = new Map<PieceId, Place>();
  const moving = new Set(pieceIds);
  for (const pieceId of pieceIds) {
    const place = lookup.placeOf(pieceId);
    const item = itemOf(pieceId);
    if (place === null || item === undefined || moving.has(carrierOf(place[0])?.pieceId ?? '')) continue;
    const step = stepOn(lookup, pieceId, place, item.panel, dx, dy);
    if (step === null) continue;
    const [on, x, y, lift, turn] = place;
    const dropped = step.dropMm === undefined ? lift : Math.max(0, Math.round(lift + step.dropMm));
    places.set(pieceId, [on, Math.round(x + step.dxMm), Math.round(y + step.dyMm), dropped, turn]);
  }
  return places;
}

interface Step {
  readonly dxMm: number;
  readonly dyMm: number;
  /** Farther down from the ceiling. */
  readonly dropMm?: number;
}

function stepOn(
  lookup: Lookup,
  pieceId: PieceId,
  place: Place,
  panel: ScenePanel,
  dx: number,
  dy: number,
): Step | null {
  const step = arrowOnPanel(panel as Panel, dx, dy);
  if (place[0] === panel.surface) return step;
  const at = standingOf(lookup, pieceId);
  if (at === null) return null;
  // On a carrier that hangs on the wall: along its front, and to its back.
  if (at.kind === 'wall') return step;
  if (at.kind === 'opening') {
    if (panel.kind !== 'wall') return null;
    return at.surface === panel.surface ? step : { dxMm: -step.dxMm, dyMm: step.dyMm };
  }
  if (at.overhead && at.direct && panel.kind === 'wall') {
    // Up in an elevation is up: what hangs there drops less, and stays as far before the wall.
    return { ...beforeTheWall(panel, at, { dxMm: step.dxMm, dyMm: 0 }), dropMm: -step.dyMm };
  }
  const plan = panel.kind === 'wall' ? beforeTheWall(panel, at, step) : step;
  const carrier = carrierOf(place[0]);
  const base = carrier === null ? null : standingOf(lookup, carrier.pieceId);
  return base === null ? plan : ontoCarrier(base.turnDegrees, plan.dxMm, plan.dyMm);
}

/** Looked at in an elevation, a thing on the floor goes along the wall, and up means nearer to the wall. */
function beforeTheWall(
  panel: ScenePanel,
  at: { readonly xMm: number; readonly yMm: number },
  step: { readonly dxMm: number; readonly dyMm: number },
): { readonly dxMm: number; readonly dyMm: number } {
  if (panel.room === null) return step;
  const side = panel.side as WallSide;
  const now = wallFromPlan(panel.room, side, at.xMm, at.yMm);
  const next = planFromWall(panel.room, side, now.xMm + step.dxMm, now.standOffMm - step.dyMm);
  return { dxMm: next.xMm - at.xMm, dyMm: next.yMm - at.yMm };
}
