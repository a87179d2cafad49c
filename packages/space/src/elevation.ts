/** What is seen when one wall is faced: the floor's line at its foot, and things that stand on the floor before it. */
import type { RoomShape, WallSide } from './room.ts';
import { floorLevelAlong, floorLevelAt, wallFromPlan, wallLengthOf } from './room.ts';

export interface StandingThing {
  /** Centre of its footprint in plan. */
  readonly xMm: number;
  readonly yMm: number;
  /** Along plan x while unturned. */
  readonly widthMm: number;
  /** Along plan y while unturned. */
  readonly depthMm: number;
  readonly heightMm: number;
  /** Clockwise from above. */
  readonly turnCentidegrees: number;
}

export interface StandingView {
  /** Wall x of its centre. */
  readonly xMm: number;
  /** Width as seen. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Wall y of its foot: the floor under its centre. */
  readonly baseMm: number;
  /** From the wall to its nearest part; negative where it runs into the wall. */
  readonly distanceMm: number;
}

/** A thing on the floor as seen in a wall's elevation: a parallel projection of its turned footprint (mm). */
export function standingIn(shape: RoomShape, side: WallSide, thing: StandingThing): StandingView {
  const turn = (thing.turnCentidegrees / 100) * (Math.PI / 180);
  // Kept to whole quarter turns exactly: a chest turned by 90° is as deep as it was wide.
  const c = Math.abs(Math.round(Math.cos(turn) * 1e12) / 1e12);
  const s = Math.abs(Math.round(Math.sin(turn) * 1e12) / 1e12);
  const alongX = thing.widthMm * c + thing.depthMm * s;
  const alongY = thing.widthMm * s + thing.depthMm * c;
  const facesDepth = side === 'head' || side === 'foot';
  const at = wallFromPlan(shape, side, thing.xMm, thing.yMm);
  return {
    xMm: at.xMm,
    widthMm: facesDepth ? alongX : alongY,
    heightMm: thing.heightMm,
    baseMm: floorLevelAt(shape, thing.xMm, thing.yMm),
    distanceMm: at.standOffMm - (facesDepth ? alongY : alongX) / 2,
  };
}

/** The floor at the foot of a wall: its level at the wall's left and right corner; straight between them (mm). */
export function floorLineOf(
  shape: RoomShape,
  side: WallSide,
): { readonly leftMm: number; readonly rightMm: number; readonly fallMm: number } {
  const leftMm = floorLevelAlong(shape, side, 0);
  const rightMm = floorLevelAlong(shape, side, wallLengthOf(shape, side));
  return { leftMm, rightMm, fallMm: leftMm - rightMm };
}
