import type { Box, Extent } from './boxes.ts';
import type { Spot } from './nearest-free.ts';

export interface HangPiece {
  readonly widthMm: number;
  readonly heightMm: number;
  /** How far it stands off the wall. */
  readonly depthMm?: number;
  readonly weightKg?: number;
  /** It stays here, whatever the rules say: a person put it there. */
  readonly pinnedAt?: Spot;
}

/** Pieces of given sizes to be hung on one wall. All in mm, y up, centres. */
export interface HangTask {
  /** Where pieces may be, already inset from the surface's edges. */
  readonly surface: Extent;
  readonly pieces: readonly HangPiece[];
  /** Openings, fixtures, label places, other things hanging there. */
  readonly keepClear: readonly Box[];
  /** The least gap between pieces and to what is kept clear. */
  readonly gapMm: number;
  readonly centreLineMm: number;
  readonly seed: number;
  /** The piece the others are hung round; the largest unless given. */
  readonly focal?: number;
  /** No top of a heavy piece goes above; common practice. */
  readonly reachMm?: number;
  /** From here on a piece is heavy; 11.3 kg (25 lb, common practice) unless given. */
  readonly heavyKg?: number;
  readonly heavyMayHangHigh?: boolean;
  /** How unlike two pieces' colours are, ΔE2000, by index; undefined where one is not known. */
  readonly difference?: (a: number, b: number) => number | undefined;
  /** Told how far it is; answers false to have it stop. */
  readonly progress?: (done: number, of: number) => boolean;
}

export type HangName =
  | 'massed salon'
  | 'salon on an axis'
  | 'salon in columns'
  | 'line with one gap'
  | 'line that fills the wall'
  | 'line in pairs'
  | 'double hang on an axis'
  | 'double hang on two lines'
  | 'double hang in a rectangle'
  | 'pendants close'
  | 'pendants wide'
  | 'pendants stacked';

export interface HangMeasures {
  /** −1 … 1: where the pieces' weight lies from the middle of their outline; positive is right, above. */
  readonly balanceX: number;
  readonly balanceY: number;
  /** Standard deviation over mean of the gaps between neighbours that face each other. */
  readonly facingGapCv: number;
  readonly meanGapMm: number;
  readonly largestVoidMm: number;
  /** 0 … 1: the share of pieces that share an edge or a middle, to 2 mm, with another. */
  readonly alignment: number;
  /** Mean ΔE2000 between facing neighbours, and its coefficient of variation; null where no colours are known. */
  readonly colourRhythm: { readonly mean: number; readonly cv: number } | null;
  /** How far the pieces' common centre, weighed by area, lies above the centre line. */
  readonly aboveCentreLineMm: number;
  /** `fill`: the pieces' area over the outline's. */
  readonly outline: { readonly widthMm: number; readonly heightMm: number; readonly fill: number };
}

/** What speaks for or against, in figures the screen puts into words and the person's unit. */
export type HangReason =
  | { readonly kind: 'gaps'; readonly leastMm: number; readonly mostMm: number }
  | { readonly kind: 'aligned'; readonly share: number }
  | { readonly kind: 'outline'; readonly widthMm: number; readonly heightMm: number }
  | { readonly kind: 'largest void'; readonly mm: number }
  | { readonly kind: 'leans'; readonly to: 'left' | 'right' }
  | { readonly kind: 'centre'; readonly aboveCentreLineMm: number }
  | { readonly kind: 'colours'; readonly meanDifference: number }
  | { readonly kind: 'above reach'; readonly count: number; readonly reachMm: number }
  /** Deeper than an edge may stand out between 27 and 80 in above the floor (ADA 307.2): a caution, not a bar. */
  | { readonly kind: 'stands out'; readonly pieces: readonly number[]; readonly mostMm: number }
  | { readonly kind: 'no room'; readonly count: number }
  | { readonly kind: 'stopped' };

export interface HangCandidate {
  readonly name: HangName;
  /** Whole mm, by piece; null where a piece found no room. */
  readonly places: readonly (Spot | null)[];
  readonly unplaced: readonly number[];
  readonly measures: HangMeasures;
  readonly reasons: readonly HangReason[];
}
