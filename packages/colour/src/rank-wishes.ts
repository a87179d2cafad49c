import type { Swatch } from './palette.ts';
import type { ReadingThresholds, ReadingWord } from './reading-thresholds.ts';

/** What is asked of a paint for one work: to let it carry, or to keep it quiet; works without a wish are not heeded. */
export type Wish = 'let carry' | 'keep quiet';

export interface WishedWork {
  readonly name: string;
  /** Body and edge as they meet the wall (see `framedColoursOf`), CIELAB D65. */
  readonly body: readonly Swatch[];
  readonly edge: readonly Swatch[];
  readonly framed?: boolean;
  readonly wish: Wish;
  /** How much this work counts beside the others, over 0; 1 unless given. */
  readonly weight?: number;
}

/** How far a word is what was asked for: 1 it is, 0 it is not. A work that should be quiet is not to be lost. */
export function metBy(wish: Wish, word: ReadingWord): number {
  if (wish === 'let carry') return word === 'carries' ? 1 : word === 'holds' ? 0.5 : 0;
  return word === 'weak' ? 1 : word === 'holds' ? 0.6 : word === 'lost' ? 0.3 : 0;
}

/**
 * How a work stands off its wall, 0 to under 1, rising with every distance (mean ΔE00 of body and edge) and falling
 * with the share, 0..1, of the body that is the wall's own colour: within one word, which of two paints does more.
 */
export function standingOf(body: number, edge: number, share: number, thresholds: ReadingThresholds): number {
  const off = 0.55 * (body / (body + thresholds.weakMean)) + 0.45 * (edge / (edge + thresholds.lostEdge));
  return off * (1 - 0.5 * share);
}
