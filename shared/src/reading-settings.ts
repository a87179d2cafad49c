/** A show's own word on where lost, weak, holds and carries part, one threshold at a time, and what comes of it. */
import { readingOn } from '@enfilade/colour/reading';
import {
  DEFAULT_THRESHOLDS,
  type ReadingThresholds,
  type ReadingWord,
  thresholdsFrom,
} from '@enfilade/colour/reading-thresholds';
import { deskWorksOf } from './colour-desk.ts';
import type { Judgements } from './judgements.ts';

/** What a show keeps of its thresholds: those that are not as by default. */
export type OwnThresholds = Partial<ReadingThresholds>;

/** Its own thresholds with one of them set; a sentence where that cannot be, and nothing is changed. */
export function withThreshold(
  now: ReadingThresholds,
  name: keyof ReadingThresholds,
  value: number,
): { readonly own: OwnThresholds } | { readonly issue: string } {
  const next = { ...now, [name]: value };
  const [issue] = thresholdsFrom(next).issues;
  return issue === undefined ? { own: ownOf(next) } : { issue: issue.what };
}

export function ownOf(thresholds: ReadingThresholds): OwnThresholds {
  const names = Object.keys(DEFAULT_THRESHOLDS) as (keyof ReadingThresholds)[];
  const own = names.filter((name) => thresholds[name] !== DEFAULT_THRESHOLDS[name]);
  return Object.fromEntries(own.map((name) => [name, thresholds[name]]));
}

/** How many pieces that hang on painted walls would read how under these thresholds. */
export function wordsUnder(judgements: Judgements, thresholds: ReadingThresholds): Record<ReadingWord, number> {
  const counts = { lost: 0, weak: 0, holds: 0, carries: 0 };
  for (const { surface, pieces } of deskWorksOf(judgements, 'hung')) {
    const wall = surface === null ? undefined : judgements.paintOf(surface)?.lab;
    if (wall === undefined) continue;
    for (const pieceId of pieces) {
      const colours = judgements.coloursOf(pieceId);
      if (colours !== null) counts[readingOn(colours, wall, thresholds).word] += 1;
    }
  }
  return counts;
}
