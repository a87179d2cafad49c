/**
 * Where each piece is in its room, worked out from its place: a load follows its carrier, a thing on the floor or the
 * ceiling is seen in plan and in the elevation of the walls it is before, a thing in an opening from both its sides.
 */
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
import { inPlanOf, onFaceOf } from './in-openings.ts';
import { fromBelow, hungAt, type InRoom, seenBefore } from './overhead.ts';
import {
  carrierOf,
  LAYOUT_FLOOR,
  objectOfPiece,
  openingOf,
  type PieceId,
  type Place,
  type SurfaceId,
  surfaceParts,
} from './schema.ts';
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
  /**
   * Absent on a wall, a floor or furniture: it hangs from the ceiling, or it is in a doorway or window; beneath: it
   * stands on the floor under a ceiling seen from below.
   */
  readonly held?: 'overhead' | 'in an opening' | 'beneath';
  /** True when its place is on this very surface; false when it is seen there by projection or on a carrier. */
  readonly direct: boolean;
}

/** What stands or hangs farther before a wall hides nothing on it from who goes between (own rule). */
export const BEFORE_IT_MM = 600;

export class Whereabouts {
  private readonly documents: ShowDocuments;
  private readonly directly = new Map<string, Set<PieceId>>();
  private readonly onOf = new Map<PieceId, string>();
  private readonly leave: () => void;

  constructor(documents: ShowDocuments) {
    this.documents = documents;
    this.take(documents.all('places').keys());
    this.leave = documents.subscribe('places', (ids) => this.take(ids));
  }

  /** Stops following the places: for what is asked once and let go. */
  close(): void {
    this.leave();
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
   * Its place, or null when it is unplaced: no place, a carrier, room or opening that is gone, or a ring of carriers. The
   * piece with the greatest id falls out of a ring (the same on every replica, whatever order the writes came in), and
   * what stands on it, round the ring, is unplaced with it until it has a place again.
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

  private standingPlace(pieceId: PieceId, at: Place): 'stands' | 'ring' | 'gone' {
    const chain = [pieceId];
    let on = at[0];
    for (let carrier = carrierOf(on); carrier !== null; carrier = carrierOf(on)) {
      if (chain.includes(carrier.pieceId)) {
        const ring = chain.slice(chain.indexOf(carrier.pieceId));
        return ring.every((id) => id <= pieceId) && ring.includes(pieceId) ? 'ring' : 'gone';
      }
      chain.push(carrier.pieceId);
      if (this.documents.get('objects', objectOfPiece(carrier.pieceId)) === undefined) return 'gone';
      const next = this.documents.get('places', carrier.pieceId);
      if (next === undefined) return 'gone';
      on = next[0];
    }
    return this.isThere(on) ? 'stands' : 'gone';
  }

  /** Whether there is such a surface or opening: somebody may take a room away while another hangs a work in it. */
  private isThere(on: string): boolean {
    if (on === LAYOUT_FLOOR) return true;
    const opening = openingOf(on);
    if (opening !== null) {
      return this.documents.get('openings', opening)?.sides.some(({ surface }) => this.isThere(surface)) === true;
    }
    const parts = surfaceParts(on);
    return parts !== null && SIDES.has(parts.side) && this.documents.get('rooms', parts.roomId) !== undefined;
  }

  /** The surface a piece is finally on, through its carriers; of an opening its first wall; null when unplaced. */
  surfaceOf(pieceId: PieceId): SurfaceId | null {
    let at = this.placeOf(pieceId);
    for (let steps = 0; at !== null && steps < 64; steps++) {
      const carrier = carrierOf(at[0]);
      if (carrier === null) {
        const opening = openingOf(at[0]);
        const sides = opening === null ? [] : (this.documents.get('openings', opening)?.sides ?? []);
        return opening === null ? at[0] : (sides.find(({ surface }) => this.isThere(surface))?.surface ?? null);
      }
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
    for (const [pieceId, foot] of this.standingOn(`${parts.roomId}:floor`, room)) {
      this.addStanding(pieceId, foot, room, side, seen, false);
    }
    for (const [pieceId, foot] of this.standingOn(`${parts.roomId}:ceiling`, room)) {
      this.addStanding(pieceId, foot, room, side, seen, true);
    }
    for (const [openingId, opening] of this.documents.all('openings')) {
      for (const pieceId of this.directlyOn(`opening:${openingId}`)) {
        const at = this.placeOf(pieceId);
        const size = this.sizeOf(pieceId);
        const face = at === null ? null : onFaceOf(opening, surface, at);
        if (face === null || size === null) continue;
        const { widthMm, heightMm } = size;
        const own: Seen = {
          ...{ pieceId, ...face, widthMm, heightMm, standOffMm: IN_THE_WALL_MM },
          ...{ direct: false, held: 'in an opening' },
        };
        seen.push(own);
        this.addWallLoad(own, seen, opening.sides[0]?.surface !== surface);
      }
    }
    return seen.sort((a, b) => a.standOffMm - b.standOffMm || (a.pieceId < b.pieceId ? -1 : 1));
  }

  /** Things on a carrier that hangs on a wall: the carrier's front is the wall's. */
  private addWallLoad(carrier: Seen, seen: Seen[], fromBehind = false): void {
    const levels = this.levelsOf(carrier.pieceId);
    for (const pieceId of this.directlyOn(carrier.pieceId)) {
      const at = this.placeOf(pieceId);
      const size = this.sizeOf(pieceId);
      if (at === null || size === null) continue;
      const level = levels[carrierOf(at[0])?.level ?? 0] ?? carrier.heightMm;
      const own: Seen = {
        pieceId,
        xMm: carrier.xMm + (at[1] - carrier.widthMm / 2) * (fromBehind ? -1 : 1),
        yMm: carrier.yMm - carrier.heightMm / 2 + level + at[3] + size.heightMm / 2,
        widthMm: size.widthMm,
        heightMm: size.heightMm,
        turnDegrees: 0,
        standOffMm: carrier.standOffMm + 1,
        direct: false,
        ...heldAs(carrier.held),
      };
      seen.push(own);
      this.addWallLoad(own, seen, fromBehind);
    }
  }

  /** What is directly on a floor or a ceiling, as it is in the room. */
  private *standingOn(surface: SurfaceId, room: RoomShape): Generator<readonly [PieceId, InRoom]> {
    const overhead = surface.endsWith(':ceiling');
    for (const pieceId of this.directlyOn(surface)) {
      const at = this.placeOf(pieceId);
      const size = this.sizeOf(pieceId);
      if (at === null || size === null) continue;
      const [, xMm, yMm, liftMm, turn] = at;
      const baseMm = floorLevelAt(room, xMm, yMm) + liftMm;
      yield [pieceId, overhead ? hungAt(room, at, size.heightMm) : { xMm, yMm, turnDegrees: turn / 100, baseMm }];
    }
  }

  private addStanding(
    pieceId: PieceId,
    foot: InRoom,
    room: RoomShape,
    side: WallSide,
    seen: Seen[],
    overhead: boolean,
  ): void {
    const size = this.sizeOf(pieceId);
    if (size === null) return;
    const view = seenBefore(room, side, foot, size, overhead);
    if (view !== null) {
      seen.push({
        pieceId,
        xMm: view.xMm,
        yMm: foot.baseMm + size.heightMm / 2,
        widthMm: view.widthMm,
        heightMm: size.heightMm,
        turnDegrees: 0,
        standOffMm: Math.max(1, view.distanceMm),
        direct: false,
        ...heldAs(overhead ? 'overhead' : undefined),
      });
    }
    for (const load of this.directlyOn(pieceId)) {
      const standing = this.onCarrier(load, pieceId, foot, size);
      if (standing !== null) this.addStanding(load, standing, room, side, seen, overhead);
    }
  }

  private onCarrier(
    pieceId: PieceId,
    carrierId: PieceId,
    foot: InRoom,
    carrier: TrueSize,
    held?: Seen['held'],
  ): InRoom | null {
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
      // In an opening, as on a wall, a load is seen from its carrier's front.
      turnDegrees: held === 'in an opening' ? foot.turnDegrees : foot.turnDegrees + at[4] / 100,
      baseMm: foot.baseMm + level + at[3],
    };
  }

  /**
   * What stands on a floor (or lies on the layout floor) seen from above, loads above their carriers, what hangs over it
   * and what is in its doorways and windows; or a ceiling with what hangs there, and what stands beneath, seen from below
   * (x and y in plan, turn as seen from below, the stand-off that of its foot from the ceiling).
   */
  planOf(surface: SurfaceId): Seen[] {
    const room = this.roomOf(surface);
    const parts = surfaceParts(surface);
    const below = parts?.side === 'ceiling' && room !== null;
    const seen: Seen[] = [];
    const add = (pieceId: PieceId, foot: InRoom, direct: boolean, held: Seen['held']): void => {
      const size = this.sizeOf(pieceId);
      if (size === null) return;
      seen.push({
        pieceId,
        xMm: foot.xMm,
        yMm: foot.yMm,
        widthMm: size.widthMm,
        // On the layout floor things lie face up, as they will be faced; on a room's floor one sees their footprint.
        heightMm: room === null ? size.heightMm : size.depthMm || FLAT_ON_FLOOR_MM,
        turnDegrees: below ? fromBelow(foot.turnDegrees) : foot.turnDegrees,
        standOffMm: below ? room.heightMm - foot.baseMm : foot.baseMm,
        direct: direct && held === (below ? 'overhead' : undefined),
        ...heldAs(held),
      });
      for (const load of held === 'beneath' ? [] : this.directlyOn(pieceId)) {
        const standing = this.onCarrier(load, pieceId, foot, size, held);
        if (standing !== null) add(load, standing, false, held);
      }
    };
    if (room === null || parts === null) {
      for (const pieceId of this.directlyOn(surface)) {
        const at = this.placeOf(pieceId);
        if (at !== null)
          add(pieceId, { xMm: at[1], yMm: at[2], turnDegrees: at[4] / 100, baseMm: at[3] }, true, undefined);
      }
    } else {
      const overhead = `${parts.roomId}:ceiling`;
      for (const [pieceId, foot] of this.standingOn(`${parts.roomId}:floor`, room)) {
        add(pieceId, foot, true, below ? 'beneath' : undefined);
      }
      for (const [pieceId, foot] of this.standingOn(overhead, room)) add(pieceId, foot, true, 'overhead');
      if (!below)
        for (const [pieceId, foot] of this.inOpeningsOf(parts.roomId, room)) add(pieceId, foot, true, 'in an opening');
    }
    return seen.sort((a, b) => a.standOffMm - b.standOffMm || (a.pieceId < b.pieceId ? -1 : 1));
  }

  private *inOpeningsOf(roomId: string, room: RoomShape): Generator<readonly [PieceId, InRoom]> {
    for (const [openingId, opening] of this.documents.all('openings')) {
      const there = this.directlyOn(`opening:${openingId}`);
      const on = there.size === 0 ? undefined : opening.sides.find(({ surface }) => surface.startsWith(`${roomId}:`));
      const side = on === undefined ? undefined : (surfaceParts(on.surface)?.side as WallSide);
      if (on === undefined || side === undefined) continue;
      for (const pieceId of there) {
        const at = this.placeOf(pieceId);
        const size = this.sizeOf(pieceId);
        const foot = at && size ? inPlanOf(opening, on.surface, room, side, at, size.heightMm) : null;
        if (foot !== null) yield [pieceId, foot];
      }
    }
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

function heldAs(held: Seen['held']): Pick<Seen, 'held'> {
  return held === undefined ? {} : { held };
}

/** Behind whatever hangs on the wall's face. */
const IN_THE_WALL_MM = -1;

/** A flat thing's footprint is still drawn, as a line this thick. */
const FLAT_ON_FLOOR_MM = 20;

/** Of a room. */
const SIDES: ReadonlySet<string> = new Set([...WALL_SIDES, 'floor', 'ceiling']);

const NONE: ReadonlySet<PieceId> = new Set();
