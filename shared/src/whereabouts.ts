/**
 * Where each piece is in its room, worked out from its place: a load follows its carrier, a thing on the floor is seen
 * in plan and in the elevation of the walls it stands before.
 */
import { standingIn } from '@enfilade/space/elevation';
import {
  floorLevelAlong,
  floorLevelAt,
  planFromWall,
  type RoomShape,
  WALL_SIDES,
  type WallSide,
  wallLengthOf,
} from '@enfilade/space/room';
import type { ShowDocuments } from './documents.ts';
import { carrierOf, objectOfPiece, type PieceId, type Place, type SurfaceId, surfaceParts } from './schema.ts';
import { type TrueSize, trueSizeOf } from './true-size.ts';

/** A piece as faced on a surface. Centre and size in the surface's own frame, mm; turn in degrees clockwise. */
export interface Seen {
  readonly pieceId: PieceId;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turnDegrees: number;
  /** How far its nearest face stands before the wall; its depth behind the viewer's nearest thing. 0 on the wall. */
  readonly standOffMm: number;
  /** True when its place is on this very surface; false when it is seen there by projection or on a carrier. */
  readonly direct: boolean;
}

/** A floor-standing thing farther than this from a wall is not drawn in its elevation (own rule). */
const BEFORE_A_WALL_MM = 1500;

/** In the plan of a room: centre, footprint, and the height of its foot above the reference plane. */
interface Standing {
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDegrees: number;
  readonly baseMm: number;
}

export class Whereabouts {
  private readonly documents: ShowDocuments;
  private readonly directly = new Map<string, Set<PieceId>>();
  private readonly onOf = new Map<PieceId, string>();

  constructor(documents: ShowDocuments) {
    this.documents = documents;
    this.take(documents.all('places').keys());
    documents.subscribe('places', (ids) => this.take(ids));
  }

  private take(ids: Iterable<PieceId>): void {
    for (const pieceId of ids) {
      const before = this.onOf.get(pieceId);
      if (before !== undefined) this.directly.get(before)?.delete(pieceId);
      const on = this.documents.get('places', pieceId)?.[0];
      if (on === undefined) {
        this.onOf.delete(pieceId);
        continue;
      }
      const key = carrierOf(on)?.pieceId ?? on;
      const set = this.directly.get(key);
      if (set === undefined) this.directly.set(key, new Set([pieceId]));
      else set.add(pieceId);
      this.onOf.set(pieceId, key);
    }
  }

  /** Pieces whose place names this surface (or this carrier), in no order. */
  directlyOn(surfaceOrCarrier: string): ReadonlySet<PieceId> {
    return this.directly.get(surfaceOrCarrier) ?? NONE;
  }

  sizeOf(pieceId: PieceId): TrueSize | null {
    const object = this.documents.get('objects', objectOfPiece(pieceId));
    return object === undefined ? null : trueSizeOf(object, this.documents.get('pieces', pieceId));
  }

  /**
   * Its place, or null when it is unplaced: no place, a carrier that is gone, or a ring of carriers, from which the
   * piece with the greatest id falls out (the same on every replica, whatever order the writes came in).
   */
  placeOf(pieceId: PieceId): Place | null {
    const at = this.documents.get('places', pieceId);
    if (at === undefined) return null;
    return this.standingPlace(pieceId, at) === 'stands' ? at : null;
  }

  /** True for the piece that falls out of a ring of carriers: its place is written, and it is unplaced all the same. */
  fellFromRing(pieceId: PieceId): boolean {
    const at = this.documents.get('places', pieceId);
    return at !== undefined && this.standingPlace(pieceId, at) === 'ring';
  }

  private standingPlace(pieceId: PieceId, at: Place): 'stands' | 'ring' | 'carrier gone' {
    const chain = [pieceId];
    for (let carrier = carrierOf(at[0]); carrier !== null; ) {
      if (chain.includes(carrier.pieceId)) {
        const ring = chain.slice(chain.indexOf(carrier.pieceId));
        return ring.every((id) => id <= pieceId) && ring.includes(pieceId) ? 'ring' : 'stands';
      }
      chain.push(carrier.pieceId);
      if (this.documents.get('objects', objectOfPiece(carrier.pieceId)) === undefined) return 'carrier gone';
      const next = this.documents.get('places', carrier.pieceId);
      if (next === undefined) return 'carrier gone';
      carrier = carrierOf(next[0]);
    }
    return 'stands';
  }

  /** The surface a piece finally stands on, through its carriers; null when unplaced. */
  surfaceOf(pieceId: PieceId): SurfaceId | null {
    let at = this.placeOf(pieceId);
    for (let steps = 0; at !== null && steps < 64; steps++) {
      const carrier = carrierOf(at[0]);
      if (carrier === null) return at[0];
      at = this.placeOf(carrier.pieceId);
    }
    return null;
  }

  /** Everything carried by a piece, directly or through other carriers. */
  loadOf(pieceId: PieceId): PieceId[] {
    const load: PieceId[] = [];
    const wait = [pieceId];
    for (let next = wait.pop(); next !== undefined; next = wait.pop()) {
      for (const id of this.directlyOn(next)) {
        if (this.placeOf(id) === null || load.includes(id)) continue;
        load.push(id);
        wait.push(id);
      }
    }
    return load;
  }

  /** Heights of a carrier's levels above its own foot, the top first; empty when nothing can stand on it. */
  levelsOf(pieceId: PieceId): readonly number[] {
    const object = this.documents.get('objects', objectOfPiece(pieceId));
    return object?.levelsMm ?? [];
  }

  roomOf(surface: SurfaceId): RoomShape | null {
    const parts = surfaceParts(surface);
    return parts === null ? null : (this.documents.get('rooms', parts.roomId) ?? null);
  }

  /** What is seen of a wall as faced: hung on it, on its shelves, and standing before it; back to front. */
  elevationOf(surface: SurfaceId): Seen[] {
    const parts = surfaceParts(surface);
    const room = this.roomOf(surface);
    if (parts === null || room === null || !WALL_SIDES.includes(parts.side as WallSide)) return [];
    const side = parts.side as WallSide;
    const seen: Seen[] = [];
    for (const pieceId of this.directlyOn(surface)) {
      const at = this.placeOf(pieceId);
      const size = this.sizeOf(pieceId);
      if (at === null || size === null) continue;
      const own: Seen = {
        pieceId,
        xMm: at[1],
        yMm: at[2],
        widthMm: size.widthMm,
        heightMm: size.heightMm,
        turnDegrees: at[4] / 100,
        standOffMm: at[3],
        direct: true,
      };
      seen.push(own);
      this.addWallLoad(own, seen);
    }
    for (const pieceId of this.directlyOn(`${parts.roomId}:floor`)) {
      const at = this.placeOf(pieceId);
      if (at === null) continue;
      const foot = {
        xMm: at[1],
        yMm: at[2],
        turnDegrees: at[4] / 100,
        baseMm: floorLevelAt(room, at[1], at[2]) + at[3],
      };
      this.addStanding(pieceId, foot, room, side, seen);
    }
    return seen.sort((a, b) => a.standOffMm - b.standOffMm || (a.pieceId < b.pieceId ? -1 : 1));
  }

  /** Things on a carrier that hangs on a wall: the carrier's front is the wall's. */
  private addWallLoad(carrier: Seen, seen: Seen[]): void {
    const levels = this.levelsOf(carrier.pieceId);
    for (const pieceId of this.directlyOn(carrier.pieceId)) {
      const at = this.placeOf(pieceId);
      const size = this.sizeOf(pieceId);
      if (at === null || size === null) continue;
      const level = levels[carrierOf(at[0])?.level ?? 0] ?? carrier.heightMm;
      const own: Seen = {
        pieceId,
        xMm: carrier.xMm - carrier.widthMm / 2 + at[1],
        yMm: carrier.yMm - carrier.heightMm / 2 + level + at[3] + size.heightMm / 2,
        widthMm: size.widthMm,
        heightMm: size.heightMm,
        turnDegrees: 0,
        standOffMm: carrier.standOffMm + 1,
        direct: false,
      };
      seen.push(own);
      this.addWallLoad(own, seen);
    }
  }

  private addStanding(pieceId: PieceId, foot: Standing, room: RoomShape, side: WallSide, seen: Seen[]): void {
    const size = this.sizeOf(pieceId);
    if (size === null) return;
    const view = standingIn(room, side, { ...foot, ...size, turnCentidegrees: foot.turnDegrees * 100 });
    if (view.distanceMm <= BEFORE_A_WALL_MM) {
      seen.push({
        pieceId,
        xMm: view.xMm,
        yMm: foot.baseMm + size.heightMm / 2,
        widthMm: view.widthMm,
        heightMm: size.heightMm,
        turnDegrees: 0,
        standOffMm: Math.max(1, view.distanceMm),
        direct: false,
      });
    }
    for (const load of this.directlyOn(pieceId)) {
      const standing = this.onCarrier(load, pieceId, foot, size);
      if (standing !== null) this.addStanding(load, standing, room, side, seen);
    }
  }

  private onCarrier(pieceId: PieceId, carrierId: PieceId, foot: Standing, carrier: TrueSize): Standing | null {
    const at = this.placeOf(pieceId);
    if (at === null) return null;
    const turn = (foot.turnDegrees * Math.PI) / 180;
    const dx = at[1] - carrier.widthMm / 2;
    const dy = at[2] - carrier.depthMm / 2;
    const level = this.levelsOf(carrierId)[carrierOf(at[0])?.level ?? 0] ?? carrier.heightMm;
    return {
      // Clockwise seen from above, with plan y pointing away from the foot wall.
      xMm: foot.xMm + dx * Math.cos(turn) + dy * Math.sin(turn),
      yMm: foot.yMm - dx * Math.sin(turn) + dy * Math.cos(turn),
      turnDegrees: foot.turnDegrees + at[4] / 100,
      baseMm: foot.baseMm + level + at[3],
    };
  }

  /** What stands on a floor (or lies on the layout floor) seen from above; loads above their carriers. */
  planOf(surface: SurfaceId): Seen[] {
    const room = this.roomOf(surface);
    const seen: Seen[] = [];
    const add = (pieceId: PieceId, foot: Standing, direct: boolean): void => {
      const size = this.sizeOf(pieceId);
      if (size === null) return;
      const layout = room === null;
      seen.push({
        pieceId,
        xMm: foot.xMm,
        yMm: foot.yMm,
        widthMm: size.widthMm,
        // On the layout floor things lie face up, as they will be faced; on a room's floor one sees their footprint.
        heightMm: layout ? size.heightMm : size.depthMm || FLAT_ON_FLOOR_MM,
        turnDegrees: foot.turnDegrees,
        standOffMm: foot.baseMm,
        direct,
      });
      for (const load of this.directlyOn(pieceId)) {
        const standing = this.onCarrier(load, pieceId, foot, size);
        if (standing !== null) add(load, standing, false);
      }
    };
    for (const pieceId of this.directlyOn(surface)) {
      const at = this.placeOf(pieceId);
      if (at === null) continue;
      const baseMm = (room === null ? 0 : floorLevelAt(room, at[1], at[2])) + at[3];
      add(pieceId, { xMm: at[1], yMm: at[2], turnDegrees: at[4] / 100, baseMm }, true);
    }
    return seen.sort((a, b) => a.standOffMm - b.standOffMm || (a.pieceId < b.pieceId ? -1 : 1));
  }

  /** A wall's length and its floor level at x; null for what is no wall. */
  wallOf(surface: SurfaceId): { lengthMm: number; heightMm: number; floorAt(xMm: number): number } | null {
    const parts = surfaceParts(surface);
    const room = this.roomOf(surface);
    if (parts === null || room === null || !WALL_SIDES.includes(parts.side as WallSide)) return null;
    const side = parts.side as WallSide;
    return {
      lengthMm: wallLengthOf(room, side),
      heightMm: room.heightMm,
      floorAt: (xMm) => floorLevelAlong(room, side, xMm),
    };
  }

  /** Plan position of a spot before a wall. */
  planSpotOf(surface: SurfaceId, xMm: number, standOffMm: number): { xMm: number; yMm: number } | null {
    const parts = surfaceParts(surface);
    const room = this.roomOf(surface);
    return parts === null || room === null ? null : planFromWall(room, parts.side as WallSide, xMm, standOffMm);
  }
}

/** A thing whose back is to this wall has this turn (degrees clockwise from above; 0 faces the foot wall). */
export const TURN_OF_BACK: Record<WallSide, number> = { head: 0, right: 90, foot: 180, left: 270 };

/** A flat thing's footprint is still drawn, as a line this thick. */
const FLAT_ON_FLOOR_MM = 20;

const NONE: ReadonlySet<PieceId> = new Set();
