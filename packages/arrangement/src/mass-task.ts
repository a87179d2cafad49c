import type { Spot } from './nearest-free.ts';

/** A thing that stands, seen from the front. */
export interface StandingThing {
  readonly widthMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
}

/** Things to be massed on one level of a table, shelf or cabinet, or on a patch of floor. All in mm. */
export interface MassTask {
  /** The level: across from its left edge, deep from its front edge. */
  readonly widthMm: number;
  readonly depthMm: number;
  readonly things: readonly StandingThing[];
  /** The least gap between things, glass to glass: 20 is common practice. */
  readonly gapMm: number;
  /** Kept free along every edge. */
  readonly edgeMm: number;
  /** How much of each thing must be seen from the front, as a share of its silhouette; a third unless given. */
  readonly seenShare?: number;
  /** How high things at the back may be raised on risers; 0, no risers, unless given. */
  readonly riserMm?: number;
  /** Clear height above the level; none unless given. */
  readonly clearHeightMm?: number;
}

export type MassName = 'rows, tall at the back' | 'peak' | 'slope with one apart';

/** x from the left edge and y from the front edge to the thing's centre, whole mm, and how high it is raised. */
export interface MassPlace extends Spot {
  readonly liftMm: number;
}

export interface MassMeasures {
  /** The least share of a thing that is seen from the front. */
  readonly leastSeen: number;
  /** −1 … 1: where the silhouettes' weight lies from the middle of the level; positive is right. */
  readonly balanceX: number;
  /** Standard deviation over mean of the gaps between neighbours across. */
  readonly gapCv: number;
  readonly meanGapMm: number;
  /** Things to the square metre of the level. */
  readonly perSquareMetre: number;
  readonly outline: { readonly widthMm: number; readonly heightMm: number };
  /** How many rows, front to back. */
  readonly rows: number;
}

export type MassReason =
  | { readonly kind: 'rows'; readonly count: number }
  | { readonly kind: 'seen'; readonly leastShare: number }
  | { readonly kind: 'risers'; readonly highestMm: number }
  | { readonly kind: 'leans'; readonly to: 'left' | 'right' }
  | { readonly kind: 'no room'; readonly count: number };

export interface MassCandidate {
  readonly name: MassName;
  /** By thing; null where one found no room or would be hidden or hide another. */
  readonly places: readonly (MassPlace | null)[];
  readonly unplaced: readonly number[];
  readonly measures: MassMeasures;
  readonly reasons: readonly MassReason[];
}
