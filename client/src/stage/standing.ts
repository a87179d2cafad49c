/**
 * Where one piece is, followed down through its carriers to a wall, a floor, a ceiling or an opening. The same geometry as
 * `@enfilade/shared/whereabouts`, but piece by piece and over any lookup, so that one remote move costs one piece and
 * a drag can be drawn before it is written.
 */
import { hungAt } from '@enfilade/shared/overhead';
import {
  carrierOf,
  LAYOUT_FLOOR,
  type Opening,
  type OpeningId,
  openingOf,
  type PieceId,
  type Place,
  type SurfaceId,
  surfaceParts,
} from '@enfilade/shared/schema';
import type { TrueSize } from '@enfilade/shared/true-size';
import { floorLevelAt, type RoomShape, WALL_SIDES, type WallSide } from '@enfilade/space/room';

/** What the geometry needs to know of a show. Places may be those of the documents, of a trial, or of a drag. */
export interface Lookup {
  placeOf(pieceId: PieceId): Place | null;
  sizeOf(pieceId: PieceId): TrueSize | null;
  levelsOf(pieceId: PieceId): readonly number[];
  roomOf(surface: SurfaceId): RoomShape | null;
  openingOf(id: OpeningId): Opening | null;
}

/** Hung on a wall, or on a carrier that hangs there: centre in the wall's frame (mm), turn clockwise as faced. */
export interface OnWall {
  readonly kind: 'wall';
  readonly surface: SurfaceId;
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDegrees: number;
  readonly standOffMm: number;
  readonly direct: boolean;
}

/**
 * Standing on a floor (or lying on the layout floor), hanging from a ceiling, or on a carrier there: plan position, turn
 * from above, height of its foot.
 */
export interface OnFloor {
  readonly kind: 'floor';
  readonly overhead: boolean;
  readonly surface: SurfaceId;
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDegrees: number;
  readonly baseMm: number;
  readonly direct: boolean;
}

/** In a doorway or window, or on a carrier there: in the opening's own frame, turn as seen from its first side. */
export interface InOpening {
  readonly kind: 'opening';
  /** Its first side. */
  readonly surface: SurfaceId;
  readonly opening: Opening;
  readonly openingId: OpeningId;
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDegrees: number;
  readonly liftMm: number;
  readonly direct: boolean;
}

export type Standing = OnWall | OnFloor | InOpening;

export function isWall(side: string): side is WallSide {
  return (WALL_SIDES as readonly string[]).includes(side);
}

/** Where a piece is, or null when it is unplaced or what it is on is gone. */
export function standingOf(lookup: Lookup, pieceId: PieceId, depth = 0): Standing | null {
  const at = lookup.placeOf(pieceId);
  if (at === null || depth > 63) return null;
  const carrier = carrierOf(at[0]);
  const size = lookup.sizeOf(pieceId);
  if (carrier === null) return directStanding(lookup, at, size?.heightMm ?? 0);
  const base = standingOf(lookup, carrier.pieceId, depth + 1);
  const under = lookup.sizeOf(carrier.pieceId);
  if (base === null || size === null || under === null) return null;
  const level = lookup.levelsOf(carrier.pieceId)[carrier.level] ?? under.heightMm;
  if (base.kind !== 'floor') {
    const xMm = base.xMm - under.widthMm / 2 + at[1];
    const yMm = base.yMm - under.heightMm / 2 + level + at[3] + size.heightMm / 2;
    const on = { xMm, yMm, turnDegrees: 0, direct: false };
    if (base.kind === 'wall') return { ...base, ...on, standOffMm: base.standOffMm + 1 };
    return { ...base, ...on, liftMm: base.liftMm - (at[2] - under.depthMm / 2) };
  }
  const spot = fromCarrier(base, at[1] - under.widthMm / 2, at[2] - under.depthMm / 2);
  return {
    ...base,
    ...spot,
    turnDegrees: base.turnDegrees + at[4] / 100,
    baseMm: base.baseMm + level + at[3],
    direct: false,
  };
}

function directStanding(lookup: Lookup, at: Place, heightMm: number): Standing | null {
  const [on, xMm, yMm, liftMm, turn] = at;
  const turnDegrees = turn / 100;
  if (on === LAYOUT_FLOOR) {
    return { kind: 'floor', overhead: false, surface: on, xMm, yMm, turnDegrees, baseMm: liftMm, direct: true };
  }
  const openingId = openingOf(on);
  if (openingId !== null) {
    const opening = lookup.openingOf(openingId);
    const surface = opening?.sides[0]?.surface;
    if (opening === null || surface === undefined) return null;
    return {
      kind: 'opening',
      surface,
      opening,
      openingId,
      xMm,
      yMm,
      turnDegrees,
      liftMm,

      direct: true,
    };
  }
  const side = surfaceParts(on)?.side;
  const room = lookup.roomOf(on);
  if (side === undefined || room === null) return null;
  if (isWall(side)) return { kind: 'wall', surface: on, xMm, yMm, turnDegrees, standOffMm: liftMm, direct: true };
  if (side === 'ceiling') {
    return { kind: 'floor', overhead: true, surface: on, ...hungAt(room, at, heightMm), direct: true };
  }
  if (side !== 'floor') return null;
  const baseMm = floorLevelAt(room, xMm, yMm) + liftMm;
  return { kind: 'floor', overhead: false, surface: on, xMm, yMm, turnDegrees, baseMm, direct: true };
}

/** A step in a carrier's own axes (x along its front, y to its back), seen in plan. Clockwise, plan y up. */
export function fromCarrier(
  base: { readonly xMm: number; readonly yMm: number; readonly turnDegrees: number },
  dxMm: number,
  dyMm: number,
): { readonly xMm: number; readonly yMm: number } {
  const turn = (base.turnDegrees * Math.PI) / 180;
  return {
    xMm: base.xMm + dxMm * Math.cos(turn) + dyMm * Math.sin(turn),
    yMm: base.yMm - dxMm * Math.sin(turn) + dyMm * Math.cos(turn),
  };
}

/** The inverse: a step in plan as a step in the carrier's axes. */
export function ontoCarrier(
  turnDegrees: number,
  dxMm: number,
  dyMm: number,
): { readonly dxMm: number; readonly dyMm: number } {
  const turn = (turnDegrees * Math.PI) / 180;
  return {
    dxMm: dxMm * Math.cos(turn) - dyMm * Math.sin(turn),
    dyMm: dxMm * Math.sin(turn) + dyMm * Math.cos(turn),
  };
}
