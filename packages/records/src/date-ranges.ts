/** Ranges, and what the one side of a range leaves to the other: `1880–90`, `12–9 BCE`, `late 18th–early 19th century`. */
import type { Core } from './date-cores.ts';
import type { DateFlag, DateSpan } from './date-reading.ts';
import type { DateRules } from './date-rules.ts';
import { type Covered, compareDates, coveredBy, edtfOf } from './date-spans.ts';

export interface ExpressionRead {
  readonly span: DateSpan;
  readonly next: number;
  /** A sentence where the text can be read two ways. */
  readonly doubt: string | null;
}

/** A core with the qualifiers right before and after it. */
export interface Side {
  readonly core: Core;
  readonly approximate: boolean;
  readonly uncertain: boolean;
  readonly next: number;
}

/** Two sides as one span; null where they do not go together. A circa before a range widens nothing. */
export function rangeFrom(first: Side, second: Side, rules: DateRules): ExpressionRead | null {
  const pair = completed(first.core, second.core);
  if (pair === null) return null;
  const [a, b] = pair;
  // `26–30` is a range of years only with an era.
  if (a.unit === 'year' && a.digits < 3 && b.digits < 3 && a.bce === null && b.bce === null) return null;
  const month = monthFrom(a, second.core);
  const [left, right] = [coveredBy(month ?? a, rules), coveredBy(month ?? b, rules)];
  if (left === null || right === null) return null;
  const backwards = compareDates(left.first, right.last) > 0;
  const uncertain = first.uncertain || second.uncertain;
  const flags = flagsOf({
    approximate: first.approximate || second.approximate || left.approximate || right.approximate,
    uncertain: uncertain || backwards,
    bce: a.bce === true,
  });
  // What stands before a range (`c. 1880–90`) or after it (`1880–90?`) is said of the whole of it.
  const start = bound(left, 'first') + qualifier(first.approximate || left.approximate, uncertain);
  const end = bound(right, 'last') + qualifier(first.approximate || second.approximate || right.approximate, uncertain);
  const [from, to] = backwards ? [right, left] : [left, right];
  const edtf = month !== null ? start : backwards ? `${end}/${start}` : `${start}/${end}`;
  const doubt = backwards ? 'The range runs backwards.' : (doubtOf(a, rules) ?? doubtOf(b, rules));
  return { span: { earliest: from.first, latest: to.last, flags, edtf }, next: second.next, doubt };
}

/** What can be read two ways: day and month in figures, or `1900s`. */
export function doubtOf({ either, unit, value }: Core, rules: DateRules): string | null {
  if (either !== undefined && rules.figures === null) return 'Day and month could be either way round; both are kept.';
  return unit === 'decade' && value % 100 === 0 ? `${value}s may be ten years or a hundred; a hundred are kept.` : null;
}

/** What the one side leaves out is taken from the other; null where they do not go together. */
function completed(first: Core, second: Core): readonly [Core, Core] | null {
  let [a, b] = [first, second];
  if (a.unit === 'share' && b.unit !== 'share') a = { ...b, shares: a.shares };
  if (b.unit === 'share' && a.unit !== 'share') b = { ...a, shares: b.shares };
  if (a.unit === 'ordinal' && (b.unit === 'century' || b.unit === 'millennium')) a = { ...a, unit: b.unit };
  if (a.unit === 'ordinal' && b.unit === 'day' && b.month !== undefined) {
    a = { ...b, day: a.value };
  }
  if (a.unit === 'year' && a.digits <= 2 && b.unit === 'day' && b.value > 0 && a.bce === null)
    a = { ...b, day: a.value };
  if (a.value === 0 && b.value > 0) a = { ...a, value: b.value };
  if (b.value === 0 && a.value > 0) b = { ...b, value: a.value };
  if (a.bce === null && b.bce === true) a = { ...a, bce: true };
  if (b.bce === null && a.bce === true && b.value < a.value) b = { ...b, bce: true };
  const dated = a.unit === 'year' || a.unit === 'decade' || a.unit === 'month' || a.unit === 'day';
  const bare = (b.unit === 'year' || b.unit === 'decade') && b.bce === null && a.bce !== true && b.digits < a.digits;
  if (dated && bare && b.value < 10 ** b.digits) {
    const step = 10 ** b.digits;
    const value = Math.floor(a.value / step) * step + b.value;
    b = { ...b, value, digits: a.digits };
  }
  return a.unit === 'ordinal' || b.unit === 'ordinal' || a.value === 0 || b.value === 0 ? null : [a, b];
}

/** `1898-02` is a month where the figures after the dash can be no later year; `1880–90` and `1901–12` are ranges. */
function monthFrom(a: Core, written: Core): Core | null {
  const two = written.unit === 'year' && written.digits === 2 && a.unit === 'year' && a.digits === 4;
  if (!two || a.bce === true || written.value > 12 || written.value > a.value % 100) return null;
  return { ...a, unit: 'month', month: written.value };
}

export function flagsOf(said: { approximate: boolean; uncertain: boolean; bce: boolean }): DateFlag[] {
  return [
    ...(said.approximate ? (['approximate'] as const) : []),
    ...(said.uncertain ? (['uncertain'] as const) : []),
    ...(said.bce ? (['BCE'] as const) : []),
  ];
}

/** EDTF: ~ approximate, ? uncertain, % both. */
export function qualifier(approximate: boolean, uncertain: boolean): string {
  return approximate && uncertain ? '%' : approximate ? '~' : uncertain ? '?' : '';
}

function bound(covered: Covered, end: 'first' | 'last'): string {
  return covered.edtf.includes('/') || covered.edtf.includes('X') || covered.edtf.includes('[')
    ? edtfOf(covered[end])
    : covered.edtf;
}
