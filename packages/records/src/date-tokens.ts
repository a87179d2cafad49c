/** A date text as tokens: figures, ordinals, decades, months, dates in figures, known words, marks and what is left. */
import { isReal } from './calendar.ts';
import type { CalendarDate } from './date-reading.ts';
import {
  type DateWord,
  dateWordOf,
  eventNamed,
  monthNamed,
  ordinalNamed,
  partNamed,
  seasonNamed,
} from './date-words.ts';

export type DateToken =
  | { readonly kind: 'number'; readonly value: number; readonly digits: number; readonly text: string }
  /** `1880s`, `90s`. */
  | { readonly kind: 'decade'; readonly value: number; readonly digits: number; readonly text: string }
  | { readonly kind: 'ordinal'; readonly value: number; readonly text: string }
  /** `18XX`: the number of its century. */
  | { readonly kind: 'masked'; readonly value: number; readonly text: string }
  | { readonly kind: 'month' | 'season'; readonly value: number; readonly text: string }
  /** Written in figures; two where day and month can be told apart by nothing. */
  | { readonly kind: 'figures'; readonly dates: readonly CalendarDate[]; readonly text: string }
  | { readonly kind: 'era'; readonly bce: boolean; readonly text: string }
  | { readonly kind: 'word'; readonly word: DateWord; readonly text: string }
  | { readonly kind: 'event' | 'part'; readonly name: string; readonly text: string }
  | { readonly kind: 'undated'; readonly text: string }
  | { readonly kind: 'mark'; readonly text: string }
  | { readonly kind: 'unknown'; readonly text: string };

/** A longer text is no date; what follows is not read. */
export const MAX_DATE_TEXT = 1000;

const END = String.raw`(?![\p{L}\d])`;
const UNDATED = new RegExp(
  `(?:n\\.? ?d\\.?|no date|not dated|undated|date unknown|unknown date|unknown|(?:date )?not known|o\\. ?j\\.?|ohne jahr|ohne datum|undatiert|unbekannt|s\\. ?d\\.?|sans date|non daté|inconnue?)${END}`,
  'uy',
);
const BCE = new RegExp(
  `(?:b\\. ?c\\. ?e\\.?|b\\. ?c\\.?|bce?|v\\. ?chr\\.?|v\\. ?u\\. ?z\\.?|av(?:ant|\\.)? ?j\\.?-? ?c\\.?)${END}`,
  'uy',
);
const CE = new RegExp(
  `(?:a\\. ?d\\.?|c\\. ?e\\.|ad|ce|n\\. ?chr\\.?|n\\. ?u\\. ?z\\.?|ap(?:rès|\\.)? ?j\\.?-? ?c\\.?)${END}`,
  'uy',
);
/** `may have` is a doubt, not a month. */
const DOUBT = /(?:may have|not certain|date uncertain)/y;
const LIMIT = /(no|not) (later|earlier|before|after)(?: than)?/y;
const ISO = /(\d{4})-(\d{2})-(\d{2})(?!\d)/y;
const DOTTED = /(\d{1,2})\. ?(\d{1,2})\. ?(\d{3,4})(?!\d)/y;
const MONTH_DOT = /(\d{1,2})\.(\d{4})(?!\d)/y;
const STROKES = /(\d{1,2})\/(\d{1,2})\/(\d{4})(?!\d)/y;
const DASHED = /(\d{1,2})-(\d{1,2})-(\d{4})(?!\d)/y;
const MONTH_STROKE = /(\d{1,2})\/(\d{4})(?!\d)/y;
/** `188-`, `188X`, `18--`, `18XX`: unknown figures, as libraries and ISO 8601-2 write them. */
const MASKED = /(\d{3}|\d{2})(xx|--|\.\.|x|-|(?=\?))(?![\p{L}\d-])/uy;
const OPEN = /\.\./y;
const DECADE = new RegExp(`(\\d{1,3}0)(?:'? ?s|er(?: jahren?)?)${END}`, 'uy');
const ORDINAL = new RegExp(`(\\d{1,2}) ?(?:st|nd|rd|th|ème|eme|er|re|e|º)${END}`, 'uy');
const GERMAN = /(\d{1,2})\.(?= ?(?:-|\/|bis|jahrh|jh|hälfte|viertel|drittel|jahrt))/uy;
const ROMAN = /([ivx]{1,6})(?:e|er|ème)?(?= ?(?:siècle|siecle|s\.|century|cent|jh|-|et|au|à)(?!\d))/y;
const NUMBER = /\d+/y;
const WORD = /[\p{L}\p{M}]+(?:['-][\p{L}\p{M}]+)*/uy;

/** Tokens of the first thousand characters; nothing but spaces and full stops is dropped. */
export function dateTokens(text: string): readonly DateToken[] {
  const plain = plainDateText(text);
  const tokens: DateToken[] = [];
  for (let at = 0; at < plain.length; ) {
    const sign = plain[at] as string;
    const read = sign === ' ' || (sign === '.' && plain[at + 1] !== '.') ? null : tokenAt(plain, at);
    if (read !== null) tokens.push(...read.tokens);
    at += read?.length ?? 1;
  }
  return tokens;
}

export function plainDateText(text: string): string {
  // After two strokes the same date stands in another language.
  return (text.slice(0, MAX_DATE_TEXT).split('||')[0] as string)
    .normalize('NFC')
    .toLowerCase()
    .replace(/<[a-z/][^<>]{0,100}>/g, ' ')
    .replace(/&nbsp;/g, ' ')
    .replace(/&[nm]dash;|[\u2010-\u2015\u2212]/g, '-')
    .replace(/[’‘´`′]/g, "'")
    .replace(/\s+/g, ' ');
}

interface Read {
  readonly tokens: readonly DateToken[];
  readonly length: number;
}

function tokenAt(text: string, at: number): Read {
  const found = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(text);
  };
  const one = (token: DateToken): Read => ({ tokens: [token], length: token.text.length });
  if (/[\p{L}]/u.test(text[at] ?? '')) {
    const undated = found(UNDATED);
    if (undated) return one({ kind: 'undated', text: undated[0] });
    const bce = found(BCE);
    if (bce) return one({ kind: 'era', bce: true, text: bce[0] });
    const ce = found(CE);
    if (ce) return one({ kind: 'era', bce: false, text: ce[0] });
    const doubt = found(DOUBT);
    if (doubt) return one({ kind: 'word', word: 'uncertain', text: doubt[0] });
    const limit = found(LIMIT);
    if (limit)
      return one({ kind: 'word', word: /later|after/.test(limit[2] ?? '') ? 'until' : 'since', text: limit[0] });
    const roman = found(ROMAN);
    const value = roman ? romanValue(roman[1] ?? '') : 0;
    if (roman && value > 0 && value <= 21) return one({ kind: 'ordinal', value, text: roman[0] });
    return wordRead(found(WORD)?.[0] ?? (text[at] as string));
  }
  if (/\d/.test(text[at] ?? '')) {
    const figures = figuresAt(found);
    if (figures !== null) return one(figures);
    const masked = maskedFrom(found(MASKED));
    if (masked !== null) return one(masked);
    const decade = found(DECADE);
    const [run, digits = ''] = decade ?? [];
    if (run !== undefined) return one({ kind: 'decade', value: Number(digits), digits: digits.length, text: run });
    const ordinal = found(ORDINAL) ?? found(GERMAN);
    if (ordinal) return one({ kind: 'ordinal', value: Number(ordinal[1]), text: ordinal[0] });
    const number = found(NUMBER)?.[0] ?? '';
    return one({ kind: 'number', value: Number(number), digits: number.length, text: number });
  }
  if (found(OPEN)) return one({ kind: 'word', word: 'ongoing', text: '..' });
  return one({ kind: 'mark', text: text[at] as string });
}

function figuresAt(found: (pattern: RegExp) => RegExpExecArray | null): DateToken | null {
  const iso = found(ISO);
  const dotted = iso ? null : found(DOTTED);
  const strokes = iso || dotted ? null : (found(STROKES) ?? found(DASHED));
  const monthOnly = iso || dotted || strokes ? null : (found(MONTH_DOT) ?? found(MONTH_STROKE));
  const run = iso ?? dotted ?? strokes ?? monthOnly;
  if (run === null) return null;
  const [text, a, b, c] = [run[0], Number(run[1]), Number(run[2]), Number(run[3])];
  const dates = iso
    ? [{ year: a, month: b, day: c }]
    : dotted
      ? [{ year: c, month: b, day: a }]
      : strokes
        ? [
            { year: c, month: a, day: b },
            { year: c, month: b, day: a },
          ]
        : [{ year: b, month: a }];
  const real = dates.filter(isReal);
  const [first, second] = real;
  const same = first !== undefined && second !== undefined && first.month === second.month;
  return real.length === 0 ? null : { kind: 'figures', dates: same ? [first] : real, text };
}

/** `188?` is no year of the second century; what marks two figures is for a century. */
function maskedFrom(found: RegExpExecArray | null): DateToken | null {
  const [text, digits = '', mask = ''] = found ?? [];
  if (text === undefined || (digits.length === 2 ? mask.length !== 2 : mask.length === 2)) return null;
  const value = digits.length === 3 ? Number(digits) * 10 : Number(digits) + 1;
  return digits.length === 3 ? { kind: 'decade', value, digits: 4, text } : { kind: 'masked', value, text };
}

/** A word, or the words that hyphens join: `mid-18th`, `spätes-19`. */
function wordRead(run: string): Read {
  const whole = wordToken(run);
  const [first = '', ...rest] = run.split('-');
  if (whole.kind !== 'unknown' || rest.length === 0) return { tokens: [whole], length: run.length };
  return { tokens: [wordToken(first)], length: first.length };
}

function wordToken(text: string): DateToken {
  const month = monthNamed(text);
  if (month !== null) return { kind: 'month', value: month, text };
  const season = seasonNamed(text);
  if (season !== null) return { kind: 'season', value: season, text };
  const word = dateWordOf(text);
  if (word !== null) return { kind: 'word', word, text };
  const ordinal = ordinalNamed(text);
  if (ordinal !== null) return { kind: 'ordinal', value: ordinal, text };
  const event = eventNamed(text);
  if (event !== null) return { kind: 'event', name: event, text };
  const part = partNamed(text);
  return part === null ? { kind: 'unknown', text } : { kind: 'part', name: part, text };
}

function romanValue(text: string): number {
  const worth: Readonly<Record<string, number>> = { i: 1, v: 5, x: 10 };
  return [...text].reduce((sum, letter, i) => {
    const own = worth[letter] ?? 0;
    return sum + (own < (worth[text[i + 1] ?? ''] ?? 0) ? -own : own);
  }, 0);
}
