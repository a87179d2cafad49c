/** What happened when: `1962, printed 1974` is two events, `c. 1910 (frame c. 1840)` one of a part. */
import { isMark, isWord } from './date-cores.ts';
import { expressionAt } from './date-expression.ts';
import type { CalendarDate, DateEvent, DateFlag, DateIssue, DateSpan } from './date-reading.ts';
import type { DateRules } from './date-rules.ts';
import { compareDates, markedWith, memberOf } from './date-spans.ts';
import type { DateToken } from './date-tokens.ts';

interface Draft {
  kind: string | null;
  part: string | null;
  period: string | null;
  readonly spans: DateSpan[];
  undated: boolean;
  /** Its kind stood after its date: what follows is another event. */
  closed: boolean;
}

const PERIOD = /^(?:period|dynasty|dynasties|reign|era|epoch|age|culture|zeit|dynastie|époque|règne|periode|épisode)$/;

/** Events in the order of the text. */
export function eventsFrom(
  tokens: readonly DateToken[],
  rules: DateRules,
): { readonly events: readonly DateEvent[]; readonly issues: readonly DateIssue[] } {
  const reader = new EventReader(tokens, rules);
  const events = reader.drafts.map(eventOf).filter((event) => event !== null);
  return { events, issues: reader.issues };
}

class EventReader {
  readonly drafts: Draft[] = [];
  readonly issues: DateIssue[] = [];
  private readonly tokens: readonly DateToken[];
  private readonly rules: DateRules;
  private at = 0;
  private words: string[] = [];
  private bracketed = false;
  /** A doubt before the name of an event: `likely printed 1946`. */
  private unsure = false;

  constructor(tokens: readonly DateToken[], rules: DateRules) {
    this.tokens = tokens;
    this.rules = rules;
    while (this.at < tokens.length) this.step();
    this.leftOver();
  }

  private step(): void {
    const token = this.tokens[this.at] as DateToken;
    const read = expressionAt(this.tokens, this.at, this.rules);
    if (read !== null) {
      this.at = read.next;
      this.take(read.span, read.doubt);
      return;
    }
    this.at += 1;
    if (isMark(token, '?') || isWord(token, 'uncertain')) this.unsure = true;
    else if (token.kind === 'event' || token.kind === 'part') this.name(token);
    else if (token.kind === 'undated') this.undated(token.text);
    else if (token.kind === 'mark') {
      if (isMark(token, '([')) this.bracketed = true;
      if (isMark(token, ')]')) this.bracketed = false;
      if (isMark(token, ',;')) this.leftOver();
      else if (!isMark(token, '()[]/:?.~-') || (isMark(token, '-') && this.at === 1)) this.words.push(token.text);
    } else if (!isWord(token, 'filler') && !isWord(token, 'and') && !isWord(token, 'approximate'))
      this.words.push(token.text);
  }

  /** A word such as `printed` begins an event, unless it ends one: `1953 (designed)`. */
  private name(token: DateToken & { kind: 'event' | 'part' }): void {
    const current = this.current();
    const dated = current !== null && current.spans.length > 0;
    if (token.kind === 'event' && dated && current.kind === null && this.ends()) {
      current.kind = token.name;
      current.closed = true;
      return;
    }
    const again = current !== null && !dated && (token.kind === 'part' ? current.part === null : current.kind === null);
    const draft = again ? current : this.begin();
    if (token.kind === 'part') draft.part = token.name;
    else draft.kind = token.name;
  }

  /** True where no date follows before the next comma, bracket or end. */
  private ends(): boolean {
    for (let at = this.at; at < Math.min(this.tokens.length, this.at + 12); at += 1) {
      if (isMark(this.tokens[at], ',;)]([')) return true;
      if (expressionAt(this.tokens, at, this.rules) !== null) return false;
    }
    return true;
  }

  private take(span: DateSpan, doubt: string | null): void {
    const current = this.current();
    const period = this.words.some((word) => PERIOD.test(word)) || (this.bracketed && this.words.length > 0);
    const draft = current === null || current.closed ? this.begin() : current;
    if (doubt !== null) this.issues.push({ kind: 'two readings', where: 'date', what: doubt, value: span.edtf ?? '' });
    if (period && draft.spans.length === 0) {
      draft.period = this.words.join(' ');
      this.words = [];
    } else this.leftOver();
    const known = draft.spans.some(({ edtf }) => edtf === span.edtf);
    const unsure = this.unsure && !span.flags.includes('uncertain');
    this.unsure = false;
    if (!known)
      draft.spans.push(
        unsure ? { ...span, flags: [...span.flags, 'uncertain'], edtf: markedWith(span.edtf ?? '', '?') } : span,
      );
  }

  private undated(text: string): void {
    const draft = this.current() ?? this.begin();
    draft.undated = true;
    this.issues.push({ kind: 'undated', where: 'date', what: 'No date is known.', value: text });
  }

  private current(): Draft | null {
    return this.drafts.at(-1) ?? null;
  }

  private begin(): Draft {
    const draft: Draft = { kind: null, part: null, period: null, spans: [], undated: false, closed: false };
    this.drafts.push(draft);
    return draft;
  }

  private leftOver(): void {
    // The name of a period stands before its years: `Edo period (1603–1867)`.
    const next = this.tokens[this.at];
    if (
      this.words.length === 0 ||
      (this.words.some((word) => PERIOD.test(word)) && next !== undefined && this.current() === null)
    )
      return;
    const value = this.words.join(' ');
    this.words = [];
    this.issues.push({
      kind: 'not understood',
      where: 'date',
      what: `“${value}” can’t be read; it is kept as written.`,
      value,
    });
  }
}

function eventOf({ kind, part, period, spans, undated }: Draft): DateEvent | null {
  const named = {
    kind: kind ?? 'made',
    ...(part === null ? {} : { part }),
    ...(period === null ? {} : { period }),
  };
  const flags: DateFlag[] = period === null ? [] : ['period'];
  const dated = period === null ? spans : narrowed(spans);
  const [only] = dated;
  if (only === undefined) {
    if (kind === null && part === null && !undated) return null;
    return { ...named, earliest: null, latest: null, flags: undated ? ['undated'] : [], edtf: null };
  }
  const whole = dated.length === 1 ? only : (limitsOf(dated) ?? hullOf(dated));
  return { ...named, ...whole, flags: [...whole.flags, ...flags] };
}

/** `after 1945, before 1957` is one span. */
function limitsOf(spans: readonly DateSpan[]): DateSpan | null {
  const after = spans.find(({ flags }) => flags.includes('open end'));
  const before = spans.find(({ flags }) => flags.includes('open start'));
  if (spans.length !== 2 || !after?.earliest || !before?.latest || compareDates(after.earliest, before.latest) > 0)
    return null;
  const open: readonly DateFlag[] = ['open start', 'open end'];
  const flags = [...after.flags, ...before.flags].filter((flag) => !open.includes(flag));
  const edtf = `${after.edtf?.split('/')[0]}/${before.edtf?.split('/')[1]}`;
  return { earliest: after.earliest, latest: before.latest, flags: [...new Set(flags)], edtf };
}

/** Several dates of one event: from the first to the last. */
function hullOf(spans: readonly DateSpan[]): DateSpan {
  const starts = spans.map(({ earliest }) => earliest);
  const ends = spans.map(({ latest }) => latest);
  const known = (dates: readonly (CalendarDate | null)[]) =>
    dates.filter((date) => date !== null).toSorted(compareDates);
  return {
    earliest: starts.includes(null) ? null : (known(starts)[0] ?? null),
    latest: ends.includes(null) ? null : (known(ends).at(-1) ?? null),
    flags: [...new Set<DateFlag>([...spans.flatMap(({ flags }) => flags), 'several'])],
    edtf: `{${spans.map(({ edtf }) => memberOf(edtf)).join(',')}}`,
  };
}

/** `Edo period (1603–1867), 19th century`: beside the period's own years the other dates are meant. */
function narrowed(spans: readonly DateSpan[]): readonly DateSpan[] {
  const [period, ...others] = spans;
  const within = others.filter(({ earliest, latest }) => {
    const begins = latest === null || !period?.earliest || compareDates(period.earliest, latest) <= 0;
    return begins && (earliest === null || !period?.latest || compareDates(earliest, period.latest) <= 0);
  });
  return within.length > 0 ? within : spans;
}
