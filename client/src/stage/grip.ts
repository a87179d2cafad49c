/** What is under the hand during a drag: the piece taken hold of, those that go with it, and where they were. */
import { carrierOf, type PieceId, type Place } from '@enfilade/shared/schema';
import { planFromWall, type WallSide, wallFromPlan } from '@enfilade/space/room';
import type { Dropped } from './dropping.ts';
import type { ScenePanel } from './panels.ts';
import { type Lookup, type Standing, standingOf } from './standing.ts';

export interface Grip {
  readonly grabbed: PieceId;
  /** What moves, the grabbed first; what stands on any of these goes along of itself. */
  readonly pieces: readonly PieceId[];
  readonly from: ReadonlyMap<PieceId, { readonly place: Place; readonly at: Standing }>;
  /** The panel it was taken hold of on, and its centre there; null from the rail. */
  readonly start: { readonly panel: ScenePanel; readonly xMm: number; readonly yMm: number } | null;
  /** From its centre to the pointer, in the panel's frame (mm). */
  readonly offset: { readonly xMm: number; readonly yMm: number };
}

/** Between things laid side by side when several are let go at once from the rail (mm, own rule). */
export const SIDE_BY_SIDE_MM = 60;

/** Takes hold of pieces. What stands on another of them is left out: it goes along with what carries it. */
export function gripOf(
  lookup: Lookup,
  grabbed: PieceId,
  selected: readonly PieceId[],
  start: Grip['start'],
  offset: Grip['offset'],
): Grip {
  const all = new Set(selected.includes(grabbed) ? selected : [grabbed]);
  let first = grabbed;
  // Taken hold of by what stands on a carrier that is selected too: the carrier is what moves.
  for (let at = carrierAt(lookup, first); at !== null && all.has(at); at = carrierAt(lookup, first)) first = at;
  const pieces = [first];
  const from = new Map<PieceId, { place: Place; at: Standing }>();
  for (const pieceId of [first, ...all]) {
    if (pieceId !== first && (pieceId === grabbed || carriedBySome(lookup, pieceId, all))) continue;
    const place = lookup.placeOf(pieceId);
    const at = standingOf(lookup, pieceId);
    if (place !== null && at !== null) from.set(pieceId, { place, at });
    if (!pieces.includes(pieceId)) pieces.push(pieceId);
  }
  return { grabbed: first, pieces, from, start, offset };
}

function carrierAt(lookup: Lookup, pieceId: PieceId): PieceId | null {
  return carrierOf(lookup.placeOf(pieceId)?.[0] ?? '')?.pieceId ?? null;
}

function carriedBySome(lookup: Lookup, pieceId: PieceId, some: ReadonlySet<PieceId>): boolean {
  let at = carrierAt(lookup, pieceId);
  for (let steps = 0; at !== null && steps < 64; steps++) {
    if (some.has(at)) return true;
    at = carrierAt(lookup, at);
  }
  return false;
}

/** Places of everything under the hand, once the grabbed piece rests at `dropped` on `panel`. */
export function placesOf(lookup: Lookup, grip: Grip, panel: ScenePanel, dropped: Dropped): Map<PieceId, Place> {
  const places = new Map<PieceId, Place>([[grip.grabbed, dropped.place]]);
  const own = grip.from.get(grip.grabbed);
  let reachMm = (lookup.sizeOf(grip.grabbed)?.widthMm ?? 0) / 2;
  for (const pieceId of grip.pieces) {
    if (pieceId === grip.grabbed) continue;
    const its = grip.from.get(pieceId);
    if (its === undefined) {
      // From the rail, one beside the other.
      const width = lookup.sizeOf(pieceId)?.widthMm ?? 0;
      const [on, x, y, lift, turn] = dropped.place;
      places.set(pieceId, [on, Math.round(x + reachMm + SIDE_BY_SIDE_MM + width / 2), y, lift, turn]);
      reachMm += SIDE_BY_SIDE_MM + width;
    } else if (own !== undefined && its.place[0] === own.place[0]) {
      places.set(pieceId, withTheGrabbed(its.place, own.place, dropped.place));
    } else if (own !== undefined) {
      const moved = alongWall(grip, panel, dropped, its);
      if (moved !== null) places.set(pieceId, moved);
    }
  }
  return places;
}

/** Same distance from the grabbed piece as before; its own lift and turn as long as it stays on the same thing. */
function withTheGrabbed(its: Place, was: Place, now: Place): Place {
  const same = was[0] === now[0];
  return [now[0], now[1] + its[1] - was[1], now[2] + its[2] - was[2], same ? its[3] : now[3], same ? its[4] : now[4]];
}

/** A group over wall and floor: what the grabbed one moves along the wall, the others do too. */
function alongWall(
  grip: Grip,
  panel: ScenePanel,
  dropped: Dropped,
  its: { readonly place: Place; readonly at: Standing },
): Place | null {
  if (grip.start === null || grip.start.panel.surface !== panel.surface || panel.kind !== 'wall') return null;
  const dx = Math.round(dropped.xMm - grip.start.xMm);
  const dy = Math.round(dropped.yMm - grip.start.yMm);
  const [on, x, y, lift, turn] = its.place;
  if (on === panel.surface) return [on, x + dx, y + dy, lift, turn];
  if (carrierOf(on) !== null) return [on, x + dx, y, lift, turn];
  if (its.at.kind !== 'floor' || panel.room === null) return null;
  const side = panel.side as WallSide;
  const at = wallFromPlan(panel.room, side, x, y);
  const spot = planFromWall(panel.room, side, at.xMm + dx, at.standOffMm);
  return [on, Math.round(spot.xMm), Math.round(spot.yMm), lift, turn];
}
