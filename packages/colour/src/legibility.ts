import type { LabD65 } from './lab.ts';
import { contrastOf, lightnessFromLrv, lrvOf } from './spaces.ts';

/** What words may be set in on a wall, by the contrast they reach: none, large letters, all, all and for weaker eyes. */
export type LetterUse = 'none' | 'large' | 'all' | 'enhanced';

/** A colour to set words in or on, with its measured LRV where there is one. */
export interface Ground {
  readonly lab: LabD65;
  readonly lrv?: number;
}

export interface Legibility {
  /** Contrast ratio 1 to 21 (WCAG 2.2). */
  readonly ratio: number;
  readonly use: LetterUse;
  /** Difference of light reflectance values, in points 0 to 100. */
  readonly lrvPoints: number;
  /** By BS 8300-2:2018, annex B: 30 points and more; 20 for large areas or above 200 lux. */
  readonly lrvWord: 'enough' | 'for large areas' | 'short';
  /** A sentence or two, without figures. */
  readonly words: string;
}

/** The thresholds, for a show to change: WCAG 2.2, 1.4.3 and 1.4.6; BS 8300-2:2018, annex B. */
export interface LegibilityThresholds {
  readonly largeRatio: number;
  readonly allRatio: number;
  readonly enhancedRatio: number;
  readonly lrvPoints: number;
  readonly lrvPointsForLargeAreas: number;
}

export const LEGIBILITY_THRESHOLDS: LegibilityThresholds = {
  largeRatio: 3,
  allRatio: 4.5,
  enhancedRatio: 7,
  lrvPoints: 30,
  lrvPointsForLargeAreas: 20,
};

const SAID: Readonly<Record<LetterUse, string>> = {
  none: 'Not for words: they are too close to the wall.',
  large: 'For large letters only, as of a title.',
  all: 'Words are legible at any usual size.',
  enhanced: 'Words are legible at any usual size, for weaker eyes too.',
};

/**
 * How legible words in one colour are on another. A screen's ratio is but a sign of print on paint: the LRV, measured where
 * it was, is the one to go by on a wall.
 */
export function legibilityOf(
  words: Ground,
  wall: Ground,
  thresholds: LegibilityThresholds = LEGIBILITY_THRESHOLDS,
): Legibility {
  const [one, other] = [words, wall].map(({ lab, lrv }) => lrv ?? lrvOf(lab)) as [number, number];
  const grey = (lrv: number): LabD65 => ({ L: lightnessFromLrv(lrv), a: 0, b: 0 });
  const ratio = contrastOf(grey(one), grey(other));
  const lrvPoints = Math.abs(one - other);
  const use = useOf(ratio, thresholds);
  const enoughForLarge = lrvPoints >= thresholds.lrvPointsForLargeAreas;
  const lrvWord = lrvPoints >= thresholds.lrvPoints ? 'enough' : enoughForLarge ? 'for large areas' : 'short';
  const caution =
    use !== 'none' && lrvWord === 'short'
      ? ' Their reflectances are close: try them printed, on the wall, in its light.'
      : '';
  return { ratio, use, lrvPoints, lrvWord, words: SAID[use] + caution };
}

function useOf(ratio: number, { largeRatio, allRatio, enhancedRatio }: LegibilityThresholds): LetterUse {
  if (ratio < largeRatio) return 'none';
  if (ratio < allRatio) return 'large';
  return ratio < enhancedRatio ? 'all' : 'enhanced';
}
