/** How a work reads on its wall, from least to most. */
export type ReadingWord = 'lost' | 'weak' | 'holds' | 'carries';

/** Where one word ends and the next begins: distances in ΔE00, shares 0..1 of the area that is within ΔE00 10. */
export interface ReadingThresholds {
  readonly lostShare: number;
  readonly lostEdge: number;
  readonly weakShare: number;
  readonly weakEdge: number;
  readonly weakMean: number;
  readonly carriesMean: number;
  readonly carriesEdge: number;
  readonly carriesShare: number;
  readonly carriesRim: number;
}

/**
 * Common practice put into figures, not measured on people: set on written palettes of oil views, dyed hangings,
 * copper, pear wood, paper and enamel over saffron, verdigris, slate and weld, to be tuned on real walls.
 */
export const DEFAULT_THRESHOLDS: ReadingThresholds = {
  // Half a picture in the wall's own colour is gone already; 0.4, as a palette spreads a field over several swatches.
  lostShare: 0.4,
  // An outline at ΔE00 16 is a step of about 16 to 20 in L*: short of the 20 by which a frame parts work and wall.
  lostEdge: 16,
  // A quarter in the wall's own colour opens a hole that the eye must close, whatever the rest does.
  weakShare: 0.25,
  // Just above the 10 within which an outline counts as the wall's own.
  weakEdge: 11,
  // A step of 20 in L* is a ΔE00 of 14 (pale) to 19 (mid); a hue 60° away at middling chroma about 19.
  weakMean: 19,
  // Twice that, near enough: far off in lightness and in hue, so that a change of lamp does not take it back.
  carriesMean: 35,
  // The outline well past the frame's step, seen from across the room.
  carriesEdge: 24,
  // Under a twentieth is an accent; more is a gap.
  carriesShare: 0.05,
  // An outline that is the wall's own for a quarter of its length is not whole.
  carriesRim: 0.25,
};

const SHARES = new Set<keyof ReadingThresholds>(['lostShare', 'weakShare', 'carriesShare', 'carriesRim']);

/** What of a show's own thresholds could not be taken. */
export interface ThresholdIssue {
  readonly where: keyof ReadingThresholds | string;
  readonly what: string;
  readonly value: unknown;
}

/**
 * A show's own thresholds over the default ones: shares 0..1, distances ΔE00 0..100. What is no such number, or breaks
 * the order of the words (lost over weak over carries for shares, the other way for distances), is left as it was and told.
 */
export function thresholdsFrom(given: Readonly<Record<string, unknown>>): {
  thresholds: ReadingThresholds;
  issues: ThresholdIssue[];
} {
  const issues: ThresholdIssue[] = [];
  let thresholds = DEFAULT_THRESHOLDS;
  for (const [where, value] of Object.entries(given)) {
    if (!(where in DEFAULT_THRESHOLDS)) {
      issues.push({ where, what: 'There is no threshold of this name.', value });
      continue;
    }
    const key = where as keyof ReadingThresholds;
    const most = SHARES.has(key) ? 1 : 100;
    if (typeof value !== 'number' || !(value >= 0 && value <= most)) {
      issues.push({ where, what: `A number from 0 to ${most} is wanted.`, value });
      continue;
    }
    thresholds = { ...thresholds, [key]: value };
  }
  const ordered = (...values: number[]): boolean => values.every((value, i) => i === 0 || values[i - 1]! <= value);
  const { carriesShare, weakShare, lostShare, weakMean, carriesMean, weakEdge, carriesEdge } = thresholds;
  const disorder: [boolean, string][] = [
    [ordered(carriesShare, weakShare, lostShare), 'Shares must not fall from carries over weak to lost.'],
    [ordered(weakMean, carriesMean), 'The mean of what carries must not be under that of what is weak.'],
    [ordered(weakEdge, carriesEdge), 'The edge of what carries must not be under that of what is weak.'],
  ];
  const broken = disorder.filter(([holds]) => !holds);
  if (broken.length === 0) return { thresholds, issues };
  return {
    thresholds: DEFAULT_THRESHOLDS,
    issues: [...issues, ...broken.map(([, what]) => ({ where: 'thresholds', what, value: given }))],
  };
}
