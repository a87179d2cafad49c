/**
 * What a registrar's dimension text says: parts (overall, framed, image, sheet …) with height × width × depth and the
 * unit as stated. The first-stated unit stands; a second system is checked against it. A unit is never guessed.
 */
import { partsFrom } from './dimension-parts.ts';
import type { DimensionReading } from './dimension-reading.ts';
import { remarksIn } from './dimension-remarks.ts';
import { SegmentReader } from './dimension-segments.ts';
import { measureTokens } from './measure-tokens.ts';
import { MAX_MEASURE_TEXT, plainMeasureText } from './plain-measure-text.ts';

export interface DimensionOptions {
  /** Two systems agree within this: 1/16 in and half a millimetre of rounding (own rule). */
  readonly toleranceMm?: number;
}

/** `H 38,5 x B 24 x T 10 cm`: on a line with an H or L the letters B, T and P name dimensions; else parts (`b: 3 × 4 in.`). */
function hasOtherLetters(text: string): boolean {
  return text.split('\n').some((line) => LETTER_ORDER.test(line) || (OWN_LETTER.test(line) && OTHER_LETTER.test(line)));
}

const OWN_LETTER = /(?:^|[^\p{L}])[hl][.:]? ?\d/iu;
const OTHER_LETTER = /(?:^|[^\p{L}]|x)[btp]\.? ?\d/iu;
const LETTER_ORDER = /(?:^|[^\p{L}])(?:h ?[x×] ?[blt]|[bl] ?[x×] ?[ht])(?![\p{L}])/iu;

/** Reads a dimension text into parts in mm; what is not understood comes back as issues, never as an error. */
export function dimensionsFrom(text: string, options: DimensionOptions = {}): DimensionReading {
  const { rest, ...remarks } = remarksIn(plainMeasureText(text));
  const { reads, weight, issues } = new SegmentReader(measureTokens(rest), rest, hasOtherLetters(rest));
  const { parts, issues: doubts } = partsFrom(reads, options.toleranceMm ?? 2.2);
  const cut =
    text.length > MAX_MEASURE_TEXT
      ? [
          {
            kind: 'not understood',
            where: 'text',
            what: 'Too long to be a size; only its beginning is read.',
            value: '',
          } as const,
        ]
      : [];
  return {
    written: text,
    parts,
    issues: [...doubts, ...issues, ...cut],
    ...remarks,
    ...(weight === null ? {} : { weight }),
  };
}
