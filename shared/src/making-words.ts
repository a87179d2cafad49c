/**
 * What a record's maker and date texts are understood to say, in words for a screen. The texts are what is stored; what is
 * read in them is derived anew, by the house rules of date-rules.ts.
 */
import type { CalendarDate, DateEvent, DateFlag, DateSpan } from '@enfilade/records/date-reading';
import { dateFrom } from '@enfilade/records/dates';
import { type Maker, makerFrom } from '@enfilade/records/makers';

export interface DateWords {
  /** '1875 to 1885', 'made 1962; printed 1974'. */
  readonly span: string;
  /** ISO 8601-2 (EDTF); null where nothing is dated. */
  readonly edtf: string | null;
  /** Sentences on what could not be read, or in two ways. */
  readonly doubts: readonly string[];
}

const MONTHS = 'January February March April May June July August September October November December'.split(' ');
/** Flags that the span itself does not show. */
const SAID: readonly DateFlag[] = ['approximate', 'uncertain', 'one of', 'several', 'undated'];

/** Null for an empty text. */
export function dateWordsOf(text: string): DateWords | null {
  if (text.trim() === '') return null;
  const reading = dateFrom(text);
  const { events, edtf, issues } = reading;
  const several = events.length > 1;
  const dated = events.filter(({ earliest, latest }) => earliest !== null || latest !== null);
  const span = dated.map((event) => [nameOf(event, several), spanText(event)].filter((one) => one !== '').join(' '));
  return {
    span: span.length > 0 ? span.join('; ') : reading.flags.includes('undated') ? 'undated' : 'not read as a date',
    edtf,
    doubts: issues.filter(({ kind }) => kind !== 'undated').map(({ what }) => what),
  };
}

function nameOf({ kind, part }: DateEvent, several: boolean): string {
  if (part !== undefined) return part;
  return several || kind !== 'made' ? kind : '';
}

/** '1875 to 1885, approximate'; an open end as 'from 1921', 'to 1849'. */
function spanText({ earliest, latest, flags }: DateSpan): string {
  const [from, to] = [earliest, latest].map((date) => (date === null ? '' : dayText(date)));
  const span = from === '' ? `to ${to}` : to === '' ? `from ${from}` : from === to ? from : `${from} to ${to}`;
  return [span, ...flags.filter((flag) => SAID.includes(flag))].join(', ');
}

function dayText({ year, month, day }: CalendarDate): string {
  const inWords = [day, month === undefined ? undefined : MONTHS[month - 1], year < 0 ? `${-year} BCE` : year];
  return inWords.filter((one) => one !== undefined).join(' ');
}

export interface MakerWords {
  /** 'Jona Lind'; 'not known' where nobody is named. */
  readonly name: string;
  /** What qualifies the name, apart from it: 'attributed to', 'designer', 'French', '1840–1912'. */
  readonly said: readonly string[];
}

/** One for each maker that the text names, in its order. */
export function makerWordsOf(text: string): readonly MakerWords[] {
  return makerFrom(text).makers.map(wordsOf);
}

function wordsOf({ name, unknown, qualifiers, role, culture, dates, uncertain }: Maker): MakerWords {
  const said = [...qualifiers, role, culture, dates, uncertain === true ? 'uncertain' : undefined];
  return { name: unknown || name === '' ? 'not known' : name, said: said.filter((one) => one !== undefined) };
}

/** Both as one line each: '1875 to 1885 (1875/1885)', 'Jona Lind: attributed to, designer'. */
export function dateLine(words: DateWords): string {
  return words.edtf === null || words.edtf === words.span ? words.span : `${words.span} (${words.edtf})`;
}

export function makerLine(words: readonly MakerWords[]): string {
  return words.map(({ name, said }) => (said.length === 0 ? name : `${name}: ${said.join(', ')}`)).join('; ');
}
