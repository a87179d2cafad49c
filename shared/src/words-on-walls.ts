/** How legible wall text and labels are on a paint, and how large letters must be to be read from a distance. */
import type { LabD65 } from '@enfilade/colour/lab';
import { type Legibility, type LetterUse, legibilityOf } from '@enfilade/colour/legibility';
import {
  LARGE_POINTS,
  type LetterSize,
  SMALLEST_POINTS,
  smallestLettersAt,
  type WordsKind,
} from '@enfilade/colour/letter-sizes';
import { paintRecordLrvOf } from './paint-records.ts';
import type { Paint } from './schema.ts';

/** Letters as they are cut or printed: their colours are common practice, no source. */
export const LETTERS: readonly { readonly name: string; readonly lab: LabD65 }[] = [
  { name: 'Black letters', lab: { L: 18, a: 0, b: 0 } },
  { name: 'White letters', lab: { L: 95, a: 0, b: 1 } },
];

const LABEL_CARD: LabD65 = { L: 93, a: 0, b: 2 };

export interface LettersOnPaint extends Legibility {
  readonly name: string;
  readonly lab: LabD65;
}

export interface WordsOnPaint {
  /** The most legible first. */
  readonly letters: readonly LettersOnPaint[];
  /** How a white label's card stands off the wall, so that it is found. */
  readonly label: { readonly lrvPoints: number; readonly words: string };
  readonly lrv: number;
  /** How the paint's LRV is known: "as its maker states it". */
  readonly lrvBasis: string;
}

const BASIS = {
  stated: 'as its maker states it',
  reflectance: 'summed from its reflectance',
  lightness: 'from its lightness, within 2',
} as const;

/** What words and labels do on a paint; advice, by WCAG 2.2 and BS 8300-2:2018 (see `legibilityOf`). */
export function wordsOnPaint(paint: Paint): WordsOnPaint {
  const { lrv, basis } = paintRecordLrvOf(paint);
  const letters = LETTERS.map(({ name, lab }) => ({ name, lab, ...legibilityOf({ lab }, { lab: paint.lab, lrv }) }));
  const card = legibilityOf({ lab: LABEL_CARD }, { lab: paint.lab, lrv });
  return {
    letters: letters.sort((a, b) => b.ratio - a.ratio),
    label: { lrvPoints: card.lrvPoints, words: LABEL_WORDS[card.lrvWord] },
    lrv,
    lrvBasis: BASIS[basis],
  };
}

const LABEL_WORDS = {
  enough: 'A white label is found at once.',
  'for large areas': 'A white label is found, if it is a large one.',
  short: 'A white label hardly stands off the wall: give it an edge.',
} as const;

export interface SizeOfWords extends LetterSize {
  readonly kind: WordsKind;
  /** What sets the size: the distance, the least for such words, or that only large letters have the contrast. */
  readonly by: 'distance' | 'standard' | 'contrast';
}

const KINDS: readonly WordsKind[] = ['object label', 'panel', 'introduction'];

/** The least sizes of words read from a distance (mm), in letters that the paint allows; none where it allows none. */
export function sizesOfWords(distanceMm: number, use: LetterUse): SizeOfWords[] {
  if (use === 'none') return [];
  const least = smallestLettersAt(distanceMm);
  return KINDS.map((kind) => {
    const large = use === 'large' ? LARGE_POINTS.regular : 0;
    const points = Math.max(least.points, SMALLEST_POINTS[kind], large);
    const by = points === least.points ? 'distance' : points === SMALLEST_POINTS[kind] ? 'standard' : 'contrast';
    const scale = points / least.points;
    return { kind, by, points, xHeightMm: least.xHeightMm * scale, capitalMm: least.capitalMm * scale };
  });
}
