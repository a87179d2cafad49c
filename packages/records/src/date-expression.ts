/** One date as written, with what qualifies it: `probably c. 1880–90`, `before 1850`, `1911 or 1912`, `12–9 BCE`. */
import { shifted } from './calendar.ts';
import { coreAt, isMark, isWord, skip } from './date-cores.ts';
import { doubtOf, type ExpressionRead, flagsOf, qualifier, rangeFrom, type Side } from './date-ranges.ts';
import type { DateFlag, DateSpan } from './date-reading.ts';
import type { DateRules } from './date-rules.ts';
import { compareDates, coveredBy, edtfOf, markedWith, memberOf } from './date-spans.ts';
import type { DateToken } from './date-tokens.ts';

type Limit = 'before' | 'until' | 'after' | 'since' | null;

/** Nobody doubts more than this; it keeps a hostile run of signs from being read again at each of its places. */
const MOST_QUALIFIERS = 12;

/** Reads one expression at `tokens[from]`, or null. */
export function expressionAt(tokens: readonly DateToken[], from: number, rules: DateRules): ExpressionRead | null {
  let at = skip(tokens, from);
  let limit: Limit = null;
  let [approximate, uncertain, between] = [false, false, false];
  for (const end = at + MOST_QUALIFIERS; at < end; at = skip(tokens, at + 1)) {
    const token = tokens[at];
    if (isMark(token, '?')) uncertain = true;
    else if (isMark(token, '~±')) approximate = true;
    else if (token?.kind !== 'word') break;
    else if (token.word === 'approximate') approximate = true;
    else if (token.word === 'uncertain') uncertain = true;
    else if (token.word === 'between') between = true;
    else if (isLimit(token.word) && (token.word !== 'since' || limit === null)) limit = token.word;
    else if (token.word === 'or' && limit !== null) limit = limit === 'before' ? 'until' : 'since';
    else if (token.word === 'ongoing' && isMark(tokens[at + 1], '/-')) {
      limit = 'until';
      at += 1;
    } else break;
  }
  const first = sideAt(tokens, at, approximate, uncertain);
  if (first === null) return null;
  const joint = jointAt(tokens, first.next, between || limit === 'since');
  const second = joint === null ? null : sideAt(tokens, joint, false, false);
  const range = second === null ? null : rangeFrom(first, second, rules);
  if (range === null) {
    const either = eitherFrom(tokens, first, rules);
    if (either !== null) return either;
  }
  return alternatives(tokens, range ?? alone(tokens, first, limit, rules), rules);
}

function isLimit(word: string): word is Exclude<Limit, null> {
  return word === 'before' || word === 'until' || word === 'after' || word === 'since';
}

/** A core with the qualifiers right before and after it. */
function sideAt(tokens: readonly DateToken[], from: number, approx: boolean, unsure: boolean): Side | null {
  let [approximate, uncertain] = [approx, unsure];
  let at = skip(tokens, from);
  for (const end = at + MOST_QUALIFIERS; at < end; at = skip(tokens, at + 1)) {
    if (isWord(tokens[at], 'approximate') || isMark(tokens[at], '~')) approximate = true;
    else if (isWord(tokens[at], 'uncertain') || isMark(tokens[at], '?')) uncertain = true;
    else break;
  }
  const read = coreAt(tokens, at);
  if (read === null) return null;
  let next = read.next;
  for (;;) {
    const open = isMark(tokens[next], '([') ? 1 : 0;
    const doubt = isMark(tokens[next + open], '?%') || isWord(tokens[next + open], 'uncertain');
    const about = isMark(tokens[next + open], '~%');
    if (!(doubt || about) || (open === 1 && !isMark(tokens[next + 2], ')]'))) break;
    if (open === 0 && !isMark(tokens[next], '?~%')) break;
    uncertain ||= doubt;
    approximate ||= about;
    next += 1 + 2 * open;
  }
  return { core: read.core, approximate, uncertain, next };
}

/** Where the second side of a range begins; null where there is no joint. */
function jointAt(tokens: readonly DateToken[], at: number, andJoins: boolean): number | null {
  const token = tokens[at];
  if (isMark(token, '-/') || isWord(token, 'to')) return at + 1;
  if (token?.kind === 'word' && token.word === 'until' && token.text !== 'by') return at + 1;
  return andJoins && isWord(token, 'and') ? at + 1 : null;
}

function alone(tokens: readonly DateToken[], side: Side, limit: Limit, rules: DateRules): ExpressionRead | null {
  const { core } = side;
  // 30, 12, 7: no year without an era.
  if (core.unit === 'year' && core.bce === null && core.digits < 3) return null;
  const covered = coveredBy(core, rules);
  if (covered === null) return null;
  let next = side.next;
  const approximate = side.approximate || covered.approximate;
  const circa = side.approximate && core.unit === 'year' ? rules.circaYears : 0;
  const flags = flagsOf({ approximate, uncertain: side.uncertain, bce: core.bce === true });
  const mark = qualifier(approximate, side.uncertain);
  const doubt = doubtOf(core, rules);
  const open = isMark(tokens[next], '-/') || isWord(tokens[next], 'to') ? next + 1 : next;
  if (isWord(tokens[open], 'ongoing')) [limit, next] = ['since', open + 1];
  else if (limit === null && open === next + 1 && isEnd(tokens[open])) [limit, next] = ['since', open];
  // Before a day or a month may still be in its year.
  const whole = core.month === undefined && core.season === undefined;
  if (limit === 'before' || limit === 'until') {
    const latest = limit === 'before' && whole ? shifted(covered.first, circa - 1) : shifted(covered.last, circa);
    const span: DateSpan = {
      earliest: null,
      latest,
      flags: [...flags, 'open start'],
      edtf: `../${edtfOf(latest)}${mark}`,
    };
    return { span, next, doubt };
  }
  if (limit !== null) {
    const earliest = limit === 'after' && whole ? shifted(covered.last, 1 - circa) : shifted(covered.first, -circa);
    const span: DateSpan = {
      earliest,
      latest: null,
      flags: [...flags, 'open end'],
      edtf: `${edtfOf(earliest)}${mark}/..`,
    };
    return { span, next, doubt };
  }
  const edtf = markedWith(covered.edtf, mark);
  const [earliest, latest] = [shifted(covered.first, -circa), shifted(covered.last, circa)];
  return { span: { earliest, latest, flags, edtf }, next, doubt };
}

/** `1911 or 1912`, `1950 or later`. */
function alternatives(
  tokens: readonly DateToken[],
  read: ExpressionRead | null,
  rules: DateRules,
): ExpressionRead | null {
  if (read === null) return null;
  const { span, next, doubt } = read;
  const [joint, word] = [tokens[next], tokens[next + 1]];
  if (!isWord(joint, 'or')) return read;
  const open = { span, next: next + 2, doubt };
  if (isWord(word, 'later') || isWord(word, 'after')) {
    const edtf = `${(span.edtf ?? '').split('/')[0] ?? ''}/..`;
    return { ...open, span: { ...span, latest: null, flags: [...span.flags, 'open end'], edtf } };
  }
  if (isWord(word, 'earlier') || isWord(word, 'before')) {
    const edtf = `../${(span.edtf ?? '').split('/').at(-1) ?? ''}`;
    return { ...open, span: { ...span, earliest: null, flags: [...span.flags, 'open start'], edtf } };
  }
  const other = expressionAt(tokens, next + 1, rules) ?? shortAt(tokens, next + 1, span, rules);
  if (other === null || span.earliest === null || span.latest === null) return read;
  const { earliest, latest, flags, edtf } = other.span;
  if (earliest === null || latest === null) return read;
  const whole: DateSpan = {
    earliest: compareDates(span.earliest, earliest) <= 0 ? span.earliest : earliest,
    latest: compareDates(span.latest, latest) >= 0 ? span.latest : latest,
    flags: [...new Set<DateFlag>([...span.flags, ...flags, 'one of'])],
    edtf: `[${memberOf(span.edtf)},${memberOf(edtf)}]`,
  };
  return { span: whole, next: other.next, doubt: doubt ?? other.doubt };
}

/** `late 18th or early 19th century`: the first side takes its century from the second. */
function eitherFrom(tokens: readonly DateToken[], first: Side, rules: DateRules): ExpressionRead | null {
  const { core } = first;
  const waits = core.value === 0 || core.unit === 'share' || core.unit === 'ordinal';
  if (!waits || !isWord(tokens[first.next], 'or')) return null;
  const second = sideAt(tokens, first.next + 1, false, false);
  const range = second === null ? null : rangeFrom(first, second, rules);
  if (range === null) return null;
  const { span } = range;
  return { ...range, span: { ...span, flags: [...span.flags, 'one of'], edtf: `[${memberOf(span.edtf)}]` } };
}

/** `1911 or 12`. */
function shortAt(
  tokens: readonly DateToken[],
  at: number,
  { latest }: DateSpan,
  rules: DateRules,
): ExpressionRead | null {
  const side = sideAt(tokens, at, false, false);
  if (side === null || latest === null || side.core.unit !== 'year' || side.core.digits > 2) return null;
  const step = 10 ** side.core.digits;
  const value = Math.floor(latest.year / step) * step + side.core.value;
  return latest.year < 100 ? null : alone(tokens, { ...side, core: { ...side.core, value, digits: 4 } }, null, rules);
}

function isEnd(token: DateToken | undefined): boolean {
  return token === undefined || isMark(token, ',;)]');
}
