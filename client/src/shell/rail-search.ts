/** Finding among the unplaced: words, and sizes under or over a length. Pure. */
import { type LengthUnit, lengthFrom } from '@enfilade/space/lengths';

/** One record on the rail, as it is searched and sorted. Sizes in mm, 0 where not known. */
export interface Findable {
  readonly objectId: string;
  readonly number: string;
  readonly title: string;
  readonly kind: string;
  readonly medium: string;
  readonly maker: string;
  readonly dateText: string;
  readonly lender: string;
  readonly sizeKnown: boolean;
  readonly heightMm: number;
  readonly widthMm: number;
}

export interface Search {
  readonly words: readonly string[];
  /** The longer side is under, or over, so many mm. */
  readonly underMm: number | null;
  readonly overMm: number | null;
}

export type Sorting = 'size' | 'kind' | 'lender';

const LIMIT = /\b(under|over)\s+(\d[\d\s.,/½¼¾⅛⅜⅝⅞]*\s*(?:mm|cm|m|inches|inch|in|ft|"|')?)(?=$|[\s,;])/gi;

/** Reads 'copper, 1868, under 30 cm'; a bare number after under or over is in the person's unit. */
export function searchFrom(text: string, unit: LengthUnit): Search {
  let underMm: number | null = null;
  let overMm: number | null = null;
  const rest = text.replace(LIMIT, (whole, word: string, length: string) => {
    const read = lengthFrom(length.trim().replace(/[,;]$/, ''), unit);
    if (read.mm === undefined) return whole;
    if (word.toLowerCase() === 'under') underMm = read.mm;
    else overMm = read.mm;
    return ' ';
  });
  return {
    words: plain(rest)
      .split(/[\s,;]+/)
      .filter((word) => word !== ''),
    underMm,
    overMm,
  };
}

/** Whether a record has every word somewhere in what it is called, and a size within the limits. */
export function found(search: Search, one: Findable): boolean {
  const longer = Math.max(one.heightMm, one.widthMm);
  if (search.underMm !== null && !(one.sizeKnown && longer < search.underMm)) return false;
  if (search.overMm !== null && !(one.sizeKnown && longer > search.overMm)) return false;
  if (search.words.length === 0) return true;
  const text = textOf(one);
  return search.words.every((word) => text.includes(word));
}

/** Sorted copy: by size the largest first and unsized last; by kind or lender in the alphabet, then by number. */
export function sorted<F extends Findable>(all: readonly F[], by: Sorting): F[] {
  const byNumber = (a: F, b: F): number => COLLATOR.compare(a.number, b.number);
  const area = (one: F): number => (one.sizeKnown ? one.heightMm * one.widthMm : -1);
  return [...all].sort((a, b) => {
    const first =
      by === 'size'
        ? area(b) - area(a)
        : by === 'kind'
          ? COLLATOR.compare(a.kind || a.title, b.kind || b.title)
          : COLLATOR.compare(a.lender, b.lender);
    return first || byNumber(a, b);
  });
}

const COLLATOR = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
const texts = new WeakMap<Findable, string>();

function textOf(one: Findable): string {
  const known = texts.get(one);
  if (known !== undefined) return known;
  const parts = [one.number, one.title, one.kind, one.medium, one.maker, one.dateText, one.lender];
  const text = plain(parts.join(' '));
  texts.set(one, text);
  return text;
}

function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
