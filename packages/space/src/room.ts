/**
 * A room is a rectangle: plan x from the left wall to the right, plan y from the foot wall (the entrance) to the head
 * wall. Along a wall, x runs from its left corner as faced from inside; y is up from the level plane through the
 * foot left corner. All lengths in millimetres.
 */
import type { Issue } from './issues.ts';

export type HeadFaces = 'north' | 'east' | 'south' | 'west';
export type WallSide = 'foot' | 'right' | 'head' | 'left';

export const WALL_SIDES: readonly WallSide[] = ['head', 'right', 'foot', 'left'];

export interface RoomShape {
  readonly widthMm: number;
  readonly depthMm: number;
  /** Ceiling above the level plane. */
  readonly heightMm: number;
  /** Floor above the level plane at foot left, foot right, head right, head left; may be negative. */
  readonly cornersMm: readonly [number, number, number, number];
  /** Laser line above the level plane. */
  readonly laserMm: number;
  readonly headFaces: HeadFaces;
}

export interface PlanPoint {
  readonly xMm: number;
  readonly yMm: number;
}

const COMPASS: readonly HeadFaces[] = ['north', 'east', 'south', 'west'];

/** Name of a wall by the way it faces, as 'east wall'; the compass turns clockwise head, right, foot, left. */
export function wallNameOf(shape: Pick<RoomShape, 'headFaces'>, side: WallSide): string {
  const quarter = COMPASS.indexOf(shape.headFaces) + WALL_SIDES.indexOf(side);
  return `${COMPASS[quarter % 4]} wall`;
}

/** Length of a wall (mm). */
export function wallLengthOf(shape: Pick<RoomShape, 'widthMm' | 'depthMm'>, side: WallSide): number {
  return side === 'head' || side === 'foot' ? shape.widthMm : shape.depthMm;
}

/**
 * Floor above the level plane at a point of the plan (mm): bilinear between the corners, which is a plane where the
 * corners lie in one. Beyond the walls the nearest point of the floor counts.
 */
export function floorLevelAt(shape: RoomShape, xMm: number, yMm: number): number {
  const u = shareOf(xMm, shape.widthMm);
  const v = shareOf(yMm, shape.depthMm);
  const [footLeft, footRight, headRight, headLeft] = shape.cornersMm;
  const foot = between(footLeft, footRight, u);
  return between(foot, between(headLeft, headRight, u), v);
}

/** Floor above the level plane at the foot of a wall, x along it (mm). */
export function floorLevelAlong(shape: RoomShape, side: WallSide, xMm: number): number {
  const at = planFromWall(shape, side, xMm);
  return floorLevelAt(shape, at.xMm, at.yMm);
}

/** Plan point at x along a wall, standing off it into the room (mm). */
export function planFromWall(
  shape: Pick<RoomShape, 'widthMm' | 'depthMm'>,
  side: WallSide,
  xMm: number,
  standOffMm = 0,
): PlanPoint {
  switch (side) {
    case 'head':
      return { xMm, yMm: shape.depthMm - standOffMm };
    case 'foot':
      return { xMm: shape.widthMm - xMm, yMm: standOffMm };
    case 'left':
      return { xMm: standOffMm, yMm: xMm };
    case 'right':
      return { xMm: shape.widthMm - standOffMm, yMm: shape.depthMm - xMm };
  }
}

/** The inverse of planFromWall: x along the wall and the distance from it into the room (mm). */
export function wallFromPlan(
  shape: Pick<RoomShape, 'widthMm' | 'depthMm'>,
  side: WallSide,
  xMm: number,
  yMm: number,
): { readonly xMm: number; readonly standOffMm: number } {
  switch (side) {
    case 'head':
      return { xMm, standOffMm: shape.depthMm - yMm };
    case 'foot':
      return { xMm: shape.widthMm - xMm, standOffMm: yMm };
    case 'left':
      return { xMm: yMm, standOffMm: xMm };
    case 'right':
      return { xMm: shape.depthMm - yMm, standOffMm: shape.widthMm - xMm };
  }
}

/** What cannot be true of a room as typed; empty when it can be drawn. */
export function roomIssuesOf(shape: RoomShape): readonly Issue[] {
  const issues: Issue[] = [];
  for (const [where, value] of [
    ['width', shape.widthMm],
    ['depth', shape.depthMm],
    ['height', shape.heightMm],
  ] as const) {
    if (!(value > 0 && Number.isFinite(value))) issues.push({ where, what: 'must be longer than nothing', value });
  }
  const names = ['foot left corner', 'foot right corner', 'head right corner', 'head left corner'] as const;
  for (const [i, where] of names.entries()) {
    const value = shape.cornersMm[i] ?? 0;
    if (!Number.isFinite(value)) issues.push({ where, what: 'has no level', value });
    else if (value >= shape.heightMm) issues.push({ where, what: 'lies above the ceiling', value });
  }
  if (shape.cornersMm[0] !== 0 && Number.isFinite(shape.cornersMm[0])) {
    issues.push({ where: names[0], what: 'is what levels are measured from, so it is 0', value: shape.cornersMm[0] });
  }
  if (!(shape.laserMm > 0 && shape.laserMm < shape.heightMm)) {
    issues.push({ where: 'laser line', what: 'must lie between floor and ceiling', value: shape.laserMm });
  }
  return issues;
}

/** Written so that equal ends, and either end, come out exactly. */
function between(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}

function shareOf(value: number, whole: number): number {
  return whole > 0 ? Math.min(1, Math.max(0, value / whole)) : 0;
}
