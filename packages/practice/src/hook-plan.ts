/** Every hook of a piece on a wall: where, how high over laser and floor, what it bears and is to be rated for. */
import { above, within } from './bounds.ts';
import type { Hardware } from './hardware.ts';
import { heightsOf, hookHeightOf, hooksOf } from './hook-heights.ts';
import type { Issue } from './issues.ts';
import { loadsOf } from './loads.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';
import { wireOf } from './wires.ts';

export interface PlannedHook {
  readonly xMm: number;
  /** Above the level plane. */
  readonly heightMm: number;
  readonly fromLaserMm: number;
  readonly fromFloorMm: number;
  /** Null where the weight is not known. A rigid piece on three or more may bear on any two: half is taken for each. */
  readonly loadKg: number | null;
  /** Load × the profile's factor. */
  readonly ratingKg: number | null;
}

/** The wall's laser line and floor (mm over the level plane), the floor falling evenly from left to right as faced. */
export interface WallDatum {
  readonly lengthMm: number;
  readonly laserMm: number;
  readonly floorLeftMm: number;
  readonly floorRightMm: number;
}

/** Level of the floor (mm) at a place along a wall. RangeError on a wall of no length. Source: geometry. */
export function floorLevelOf(wall: WallDatum, xMm: number): number {
  const share = within('xMm', xMm, -1e6, 1e6) / above('lengthMm', wall.lengthMm, 0, 1e6);
  return wall.floorLeftMm + (wall.floorRightMm - wall.floorLeftMm) * share;
}

/**
 * Hooks of a piece by its hardware, left to right. D-rings, plates, screws, sleeves and hooks bear at the drop; a cleat or
 * batten bears along its length, and its fixings stand as its hooks do; of a wire with its lengths given the drop is worked
 * out. An issue where the drop is not known or the wire cannot reach. RangeError on a size that is not above 0. Source: a
 * museum's own hanging guide; statics; the rating is common practice, no source. Local code, the lender and a licensed
 * professional decide what a wall holds.
 */
export function hookPlanOf(
  piece: {
    readonly centreXmm: number;
    readonly centreMm: number;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly weightKg: number | null;
    /** Along the wall; absent: its middle. */
    readonly centreOfGravityXmm?: number;
  },
  hardware: Hardware,
  wall: WallDatum,
  wire: { readonly ringsApartMm: number; readonly wireMm: number; readonly ringsBelowTopMm: number } | null = null,
  profile: PracticeProfile = DEFAULT_PROFILE,
): readonly PlannedHook[] | Issue {
  const { centreXmm, centreMm, weightKg } = piece;
  const widthMm = above('widthMm', piece.widthMm, 0, 1e5);
  const heightMm = above('heightMm', piece.heightMm, 0, 1e5);
  if (weightKg !== null) within('weightKg', weightKg, 0, 1e6);
  const { hooks, spacingMm } = hardware;
  const taut =
    hardware.kind === 'wire' && wire !== null && (hooks === 1 || hooks === 2)
      ? wireOf({ ...wire, hooks, ...(spacingMm === undefined ? {} : { hooksApartMm: spacingMm }) })
      : null;
  if (taut !== null && 'what' in taut) return taut;
  const dropMm = taut?.dropMm ?? hardware.dropMm;
  if (dropMm === undefined) return { where: 'drop', what: 'is not known', value: hardware.kind };
  const xs = hooksOf({ centreXmm, widthMm, hooks, ...(spacingMm === undefined ? {} : { spacingMm }) });
  const loads = shares(weightKg, xs, piece.centreOfGravityXmm ?? centreXmm);
  if ('what' in loads) return loads;
  const hookMm = hookHeightOf({ centreMm, heightMm, dropMm });
  return xs.map((xMm, index) => {
    const loadKg = loads[index] ?? null;
    const ratingKg = loadKg === null ? null : loadKg * limitOf(profile, 'ratingFactor');
    const heights = heightsOf({ hookMm, laserMm: wall.laserMm, floorMm: floorLevelOf(wall, xMm) });
    return { xMm, heightMm: hookMm, ...heights, loadKg, ratingKg };
  });
}

function shares(weightKg: number | null, xs: readonly number[], cg: number): readonly (number | null)[] | Issue {
  const [left, right] = xs;
  if (weightKg === null) return xs.map(() => null);
  if (left === undefined || right === undefined) return xs.map(() => weightKg);
  if (xs.length > 2) return xs.map(() => weightKg / 2);
  return loadsOf({ weightKg, leftXmm: left, rightXmm: right, centreOfGravityXmm: cg });
}
