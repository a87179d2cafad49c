/** The smallest whole that a date text states: a day, a month, a year, a decade, a century, or a stretch of one. */
import { isReal } from './calendar.ts';
import type { CalendarDate } from './date-reading.ts';
import type { DateToken } from './date-tokens.ts';
import type { DateWord } from './date-words.ts';

/** `early`, `mid`, `late`, or the index-th of so many equal shares (`second half`). */
export type Share = 'early' | 'mid' | 'late' | { readonly index: number; readonly of: number };

export interface Core {
  /** 'share' and 'ordinal' wait for what follows a dash: `late 18th–early 19th century`. */
  readonly unit: 'day' | 'month' | 'season' | 'year' | 'decade' | 'century' | 'millennium' | 'share' | 'ordinal';
  /** Year, first year of the decade, number of the century. */
  readonly value: number;
  /** Written digits of a year or decade, to complete `1880–90`. */
  readonly digits: number;
  readonly month?: number;
  readonly day?: number;
  readonly season?: number;
  readonly shares: readonly Share[];
  /** Null where no era is written. */
  readonly bce: boolean | null;
  /** A turn of centuries: around its first year. */
  readonly turn?: true;
  /** Days that the same figures may be. */
  readonly either?: readonly CalendarDate[];
}

export interface CoreRead {
  readonly core: Core;
  readonly next: number;
}

const MARK: Core = { unit: 'year', value: 0, digits: 0, shares: [], bce: null };

/** Reads one core at `tokens[from]`; null where there is none. */
export function coreAt(tokens: readonly DateToken[], from: number): CoreRead | null {
  let at = skip(tokens, from);
  const era = eraAt(tokens, at);
  if (era !== null) at = skip(tokens, at + 1);
  const turn = isWord(tokens[at], 'turn');
  if (turn) at = skip(tokens, at + 1);
  const { shares, next } = sharesAt(tokens, at);
  const read = wholeAt(tokens, skip(tokens, next));
  if (read === null) {
    return shares.length === 0 ? null : { core: { ...MARK, unit: 'share', shares }, next };
  }
  let end = read.next;
  const after = eraAt(tokens, end);
  if (after !== null) end += 1;
  const bce = after ?? era ?? read.core.bce;
  // A figure of one or two digits is a year only with an era, or beside one that is whole.
  return { core: { ...read.core, shares, bce, ...(turn ? { turn } : {}) }, next: end };
}

export function isWord(token: DateToken | undefined, word: DateWord): boolean {
  return token?.kind === 'word' && token.word === word;
}

export function isMark(token: DateToken | undefined, marks: string): boolean {
  return token?.kind === 'mark' && marks.includes(token.text);
}

/** Past words that say nothing. */
export function skip(tokens: readonly DateToken[], from: number): number {
  let at = from;
  while (isWord(tokens[at], 'filler')) at += 1;
  return at;
}

function eraAt(tokens: readonly DateToken[], at: number): boolean | null {
  const token = tokens[at];
  return token?.kind === 'era' ? token.bce : null;
}

/** `early`, `early to mid-`, `second half of the`, `last quarter`. */
function sharesAt(tokens: readonly DateToken[], from: number): { shares: Share[]; next: number } {
  const shares: Share[] = [];
  let at = from;
  for (;;) {
    const read = shareAt(tokens, at);
    if (read === null) return { shares, next: at };
    shares.push(read.share);
    at = skip(tokens, read.next);
    // `mid-18th`, `early-mid 18th`, `mid- to late`.
    if (isMark(tokens[at], '-')) at += 1;
    const joins = isWord(tokens[at], 'to') || isMark(tokens[at], '/');
    const joint = skip(tokens, joins ? at + 1 : at);
    const second = shares.length === 1 ? shareAt(tokens, isMark(tokens[joint], '-') ? joint + 1 : joint) : null;
    if (second === null) return { shares, next: at };
    at = isMark(tokens[joint], '-') ? joint + 1 : joint;
  }
}

function shareAt(tokens: readonly DateToken[], at: number): { share: Share; next: number } | null {
  const token = tokens[at];
  if (token?.kind === 'word' && (token.word === 'early' || token.word === 'mid' || token.word === 'late')) {
    return { share: token.word, next: at + 1 };
  }
  const last = isWord(token, 'last');
  if (token?.kind !== 'ordinal' && !last) return null;
  const unit = tokens[at + 1];
  const third = isWord(unit, 'third') || (unit?.kind === 'ordinal' && unit.text === 'third');
  const of = isWord(unit, 'half') ? 2 : isWord(unit, 'quarter') ? 4 : third ? 3 : 0;
  const index = token?.kind === 'ordinal' ? token.value : of;
  return of === 0 || index < 1 || index > of ? null : { share: { index, of }, next: at + 2 };
}

function wholeAt(tokens: readonly DateToken[], at: number): CoreRead | null {
  const token = tokens[at];
  if (token?.kind === 'figures') {
    const [date] = token.dates as readonly [CalendarDate];
    const unit = date.day === undefined ? 'month' : 'day';
    const either = token.dates.length > 1 ? { either: token.dates } : {};
    return { core: { ...MARK, ...partsOf(date), unit, value: date.year, digits: 4, ...either }, next: at + 1 };
  }
  if (token?.kind === 'ordinal') return ordinalAt(tokens, at, token.value);
  if (token?.kind === 'decade') {
    return { core: { ...MARK, unit: 'decade', value: token.value, digits: token.digits }, next: at + 1 };
  }
  if (token?.kind === 'masked') return { core: { ...MARK, unit: 'century', value: token.value }, next: at + 1 };
  if (isWord(token, 'decade')) {
    const year = tokens[at + 1];
    if (year?.kind !== 'number' || year.value % 10 !== 0) return null;
    return { core: { ...MARK, unit: 'decade', value: year.value, digits: year.digits }, next: at + 2 };
  }
  if (token?.kind === 'month' || token?.kind === 'season') return monthAt(tokens, at, null);
  if (token?.kind !== 'number' || token.digits > 4 || token.value === 0) return null;
  if (token.value <= 21 && isWord(tokens[at + 1], 'century')) return ordinalAt(tokens, at, token.value);
  if (token.value <= 31 && token.digits <= 2) {
    const month = skip(tokens, at + 1);
    if (tokens[month]?.kind === 'month') return monthAt(tokens, month, token.value);
  }
  return { core: { ...MARK, value: token.value, digits: token.digits }, next: at + 1 };
}

/** `19th century`; `12th May 1876`; `19th` alone waits for the century after a dash. */
function ordinalAt(tokens: readonly DateToken[], at: number, value: number): CoreRead | null {
  let next = isMark(tokens[at + 1], '-') ? at + 2 : at + 1;
  if (isWord(tokens[next], 'century')) return { core: { ...MARK, unit: 'century', value }, next: next + 1 };
  if (isWord(tokens[next], 'millennium')) return { core: { ...MARK, unit: 'millennium', value }, next: next + 1 };
  next = skip(tokens, at + 1);
  if (tokens[next]?.kind === 'month') return monthAt(tokens, next, value);
  // `early 20th c.`: here the letter is for century.
  const letter = tokens[at + 1];
  if (isWord(letter, 'approximate') && letter?.text === 'c') {
    return { core: { ...MARK, unit: 'century', value }, next: at + 2 };
  }
  return { core: { ...MARK, unit: 'ordinal', value }, next: at + 1 };
}

/** `May 27th, 1934`, `12 May 1876`, `March 1894`, `Spring 1890`; without a year it waits for one after a dash. */
function monthAt(tokens: readonly DateToken[], at: number, dayBefore: number | null): CoreRead | null {
  const token = tokens[at] as DateToken & { kind: 'month' | 'season' };
  let next = at + 1;
  let day = dayBefore;
  const figure = tokens[next];
  const two = (figure?.kind === 'number' && figure.digits <= 2) || figure?.kind === 'ordinal';
  if (day === null && two && token.kind === 'month' && figure.value >= 1 && figure.value <= 31) {
    day = figure.value;
    next += 1;
  }
  const beforeYear = isMark(tokens[next], ',') || isWord(tokens[next], 'filler') ? next + 1 : next;
  const year = tokens[beforeYear];
  const named = token.kind === 'month' ? { month: token.value } : { season: token.value };
  const unit = day !== null ? 'day' : token.kind;
  const core = { ...MARK, ...named, unit, ...(day === null ? {} : { day }) } as const;
  if (year?.kind !== 'number' || year.digits < 3 || year.digits > 4) return { core, next };
  if (day !== null && !isReal({ year: year.value, month: token.value, day })) return null;
  return { core: { ...core, value: year.value, digits: year.digits }, next: beforeYear + 1 };
}

function partsOf({ month, day }: CalendarDate): { month?: number; day?: number } {
  return { ...(month === undefined ? {} : { month }), ...(day === undefined ? {} : { day }) };
}
