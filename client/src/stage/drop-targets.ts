/**
 * Where a thing comes to rest when it is let go over a surface: hung on the wall or the ceiling, standing on a floor, on
 * a carrier's level, or in a doorway or window. Pure: panel coordinates in, a place out.
 */
import { TURN_OF_BACK } from '@enfilade/shared/in-openings';
import { carrierOn, type Place } from '@enfilade/shared/schema';
import type { TrueSize } from '@enfilade/shared/true-size';
import { floorLevelAt, planFromWall, type WallSide, wallFromPlan } from '@enfilade/space/room';
import { inOpening } from './drop-in-opening.ts';
import { hangsHere, onCeiling, overheadBefore } from './drop-overhead.ts';
import { type Dropped, type Dropping, kept, settle } from './dropping.ts';
import type { ScenePanel } from './panels.ts';
import type { SceneItem } from './scene-items.ts';
import { type Lookup, ontoCarrier, standingOf } from './standing.ts';

/** Things shallower than this hang; deeper ones stand where there is something to stand on (own rule, mm). */
const STANDS_FROM_MM = 60;
/** A carrier taller than this stands on the floor; a lower one may hang as a shelf (own rule, mm). */
const SHELF_UP_TO_MM = 300;
export function droppedAt(lookup: Lookup, dropping: Dropping): Dropped {
  const { panel } = dropping;
  if (panel.kind === 'layout') return onSurface(dropping, dropping.xMm, dropping.yMm, false);
  if (panel.kind === 'floor') return onFloorPlan(lookup, dropping);
  if (panel.kind === 'ceiling') return onCeiling(dropping);
  return onWall(lookup, dropping);
}

function onSurface(dropping: Dropping, xMm: number, yMm: number, onCentreLine: boolean): Dropped {
  const { panel, from, reachMm } = dropping;
  const same = from !== null && from.place[0] === panel.surface;
  const x = Math.round(settle(xMm, reachMm));
  const y = Math.round(onCentreLine ? yMm : settle(yMm, reachMm));
  const place: Place = [panel.surface, x, y, same ? from.place[3] : 0, same ? from.place[4] : 0];
  return { place, xMm: x, yMm: y, carrier: null, onCentreLine };
}

function onWall(lookup: Lookup, dropping: Dropping): Dropped {
  const { panel, size, reachMm, levelsMm } = dropping;
  const room = panel.room;
  if (hangsHere(dropping)) return overheadBefore(dropping);
  const xMm = kept(dropping.xMm, size.widthMm / 2, panel.widthMm);
  const footMm = dropping.yMm - size.heightMm / 2;
  const stands = size.depthMm >= STANDS_FROM_MM;
  const heavy = levelsMm.length > 0 && size.heightMm > SHELF_UP_TO_MM;
  const near = Math.max(reachMm * 2, stands ? 60 : 15);
  const onto = heavy ? null : carrierUnder(lookup, dropping, xMm, footMm, near);
  if (onto !== null) return onto;
  const inside = heavy ? null : inOpening(lookup, dropping);
  if (inside !== null) return inside;
  if (room !== null && (heavy || stands)) {
    const floor = panel.floorMm[0] + ((panel.floorMm[1] - panel.floorMm[0]) * xMm) / panel.widthMm;
    if (heavy || footMm <= floor + near) return onFloorBefore(dropping, xMm);
  }
  const yMm = kept(dropping.yMm, size.heightMm / 2, panel.heightMm);
  const onCentreLine = reachMm > 0 && Math.abs(yMm - dropping.centreLineMm) <= reachMm;
  return onSurface({ ...dropping }, xMm, onCentreLine ? dropping.centreLineMm : yMm, onCentreLine);
}

/** On the floor before a wall: as far from it as it stood, or with its back to it. */
function onFloorBefore(dropping: Dropping, xMm: number): Dropped {
  const { panel, size, from, reachMm } = dropping;
  const room = panel.room as NonNullable<ScenePanel['room']>;
  const side = panel.side as WallSide;
  const floor = `${panel.surface.slice(0, panel.surface.indexOf(':'))}:floor`;
  const stood = from !== null && from.at.kind === 'floor' && from.at.surface === floor ? from.at : null;
  const off = stood === null ? size.depthMm / 2 : wallFromPlan(room, side, stood.xMm, stood.yMm).standOffMm;
  const spot = planFromWall(room, side, settle(xMm, reachMm), off);
  const turn = stood === null ? TURN_OF_BACK[side] * 100 : Math.round(stood.turnDegrees * 100);
  const place: Place = [floor, Math.round(spot.xMm), Math.round(spot.yMm), 0, turn];
  const yMm = floorLevelAt(room, spot.xMm, spot.yMm) + size.heightMm / 2;
  return { place, xMm: settle(xMm, reachMm), yMm, carrier: null, onCentreLine: false };
}

/** The carrier's level nearest under the foot of what is held, if any is near enough. */
function carrierUnder(lookup: Lookup, dropping: Dropping, xMm: number, footMm: number, nearMm: number): Dropped | null {
  let best: { item: SceneItem; level: number; upMm: number; missMm: number } | null = null;
  for (const item of dropping.items) {
    const levels = lookup.levelsOf(item.pieceId);
    const size = lookup.sizeOf(item.pieceId);
    if (levels.length === 0 || size === null || Math.abs(xMm - item.xMm) > item.widthMm / 2) continue;
    for (const [level, heightMm] of levels.entries()) {
      const upMm = item.yMm - size.heightMm / 2 + heightMm;
      const missMm = Math.abs(footMm - upMm);
      if (missMm <= nearMm && (best === null || missMm < best.missMm)) best = { item, level, upMm, missMm };
    }
  }
  if (best === null) return null;
  const { item, level, upMm } = best;
  const under = lookup.sizeOf(item.pieceId) as TrueSize;
  const x = settle(xMm, dropping.reachMm);
  const at = standingOf(lookup, item.pieceId);
  const { panel, size } = dropping;
  let across = x - item.xMm;
  let deep = 0;
  if (at?.kind === 'floor' && panel.room !== null) {
    // Through the plan: a carrier seen from its flank or its back has its own axes.
    const side = panel.side as WallSide;
    const { standOffMm } = wallFromPlan(panel.room, side, at.xMm, at.yMm);
    const spot = planFromWall(panel.room, side, x, standOffMm);
    const step = ontoCarrier(at.turnDegrees, spot.xMm - at.xMm, spot.yMm - at.yMm);
    across = step.dxMm;
    deep = step.dyMm;
  }
  const place: Place = [
    carrierOn(item.pieceId, level),
    Math.round(across + under.widthMm / 2),
    Math.round(deep + under.depthMm / 2),
    0,
    0,
  ];
  return { place, xMm: x, yMm: upMm + size.heightMm / 2, carrier: item.pieceId, onCentreLine: false };
}

function onFloorPlan(lookup: Lookup, dropping: Dropping): Dropped {
  const { panel, size, from, reachMm, levelsMm } = dropping;
  const xMm = settle(kept(dropping.xMm, size.widthMm / 2, panel.widthMm), reachMm);
  const yMm = settle(kept(dropping.yMm, (size.depthMm || 20) / 2, panel.heightMm), reachMm);
  if (from !== null && hangsHere(dropping)) {
    const [on, , , drop, turn] = from.place;
    return { place: [on, xMm, yMm, drop, turn], xMm, yMm, carrier: null, onCentreLine: false };
  }
  const heavy = levelsMm.length > 0 && size.heightMm > SHELF_UP_TO_MM;
  for (const item of heavy ? [] : [...dropping.items].reverse()) {
    const under = lookup.sizeOf(item.pieceId);
    const at = standingOf(lookup, item.pieceId);
    if (under === null || at?.kind !== 'floor' || at.overhead || lookup.levelsOf(item.pieceId).length === 0) continue;
    const step = ontoCarrier(at.turnDegrees, xMm - at.xMm, yMm - at.yMm);
    if (Math.abs(step.dxMm) > under.widthMm / 2 || Math.abs(step.dyMm) > under.depthMm / 2) continue;
    const place: Place = [
      carrierOn(item.pieceId, 0),
      Math.round(step.dxMm + under.widthMm / 2),
      Math.round(step.dyMm + under.depthMm / 2),
      0,
      0,
    ];
    return { place, xMm, yMm, carrier: item.pieceId, onCentreLine: false };
  }
  const turn =
    from === null
      ? 0
      : from.at.kind === 'floor'
        ? Math.round(from.at.turnDegrees * 100)
        : TURN_OF_BACK[from.at.surface.slice(from.at.surface.indexOf(':') + 1) as WallSide] * 100;
  return { place: [panel.surface, xMm, yMm, 0, turn], xMm, yMm, carrier: null, onCentreLine: false };
}
