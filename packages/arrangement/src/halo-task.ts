import type { Box, Extent } from './boxes.ts';

/** Pieces of given sizes to be hung freely round a focal work that already has its place. All in mm, y up. */
export interface HaloTask {
  /** Where pieces may be, already inset from the surface's edges. */
  readonly surface: Extent;
  readonly focal: Box;
  readonly pieces: readonly { readonly widthMm: number; readonly heightMm: number }[];
  /** Openings, fixtures with their margins, other things hanging there: the least gap is kept from these too. */
  readonly keepClear: readonly Box[];
  /** The least gap between pieces, kept across or up. */
  readonly gapMm: number;
  /** The least gap to the focal work, when it is to stand freer or closer than the rest. */
  readonly focalGapMm?: number;
  /** 0 even … 1 loose. */
  readonly looseness: number;
  readonly seed: number;
  /** The height that tops should stay below where they can; waived where the focal work reaches so high that none could. */
  readonly reachMm?: number;
  /** The gap to aim at over the least one, ≥ 1; 1.4 unless given. It is given up where room is short. */
  readonly roominess?: number;
  /** Outline, width over height round the focal work: 1.2 unless given, more is wider, less is taller. */
  readonly across?: number;
  /** Where the halo leans to, degrees anticlockwise from the right; upright unless given. */
  readonly leanDegrees?: number;
  /** Told how far it is; answers false to have it stop. */
  readonly progress?: (done: number, of: number) => boolean;
}

export type HaloName = 'even halo' | 'loose halo' | 'leaning halo' | 'wide halo' | 'tall halo';

/** What speaks for or against a candidate, in figures (mm) that the screen puts into the person's unit. */
export type HaloReason =
  /** Nine of ten gaps lie between. */
  | { readonly kind: 'gaps'; readonly leastMm: number; readonly mostMm: number }
  | { readonly kind: 'outline'; readonly widthMm: number; readonly heightMm: number }
  | { readonly kind: 'largest void'; readonly mm: number }
  | { readonly kind: 'leans'; readonly to: 'left' | 'right' }
  | { readonly kind: 'above reach'; readonly count: number; readonly reachMm: number }
  | { readonly kind: 'no room'; readonly count: number }
  | { readonly kind: 'stopped' };

export interface HaloMeasures {
  /** Standard deviation over mean of the gaps between neighbours that face each other. */
  readonly facingGapCv: number;
  readonly meanGapMm: number;
  readonly largestVoidMm: number;
  /** −1 … 1: where the pieces' weight lies from the middle of the focal work; positive is right, above. */
  readonly balanceX: number;
  readonly balanceY: number;
  /** The focal work included. */
  readonly outline: { readonly widthMm: number; readonly heightMm: number };
  /** The highest top edge of a piece; null when none is placed. */
  readonly highestTopMm: number | null;
}

export interface HaloCandidate {
  /** Whole mm, by piece; null where a piece found no room. */
  readonly places: readonly ({ readonly xMm: number; readonly yMm: number } | null)[];
  readonly unplaced: readonly number[];
  readonly looseness: number;
  readonly measures: HaloMeasures;
  readonly name: HaloName;
  readonly reasons: readonly HaloReason[];
}
