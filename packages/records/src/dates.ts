/**
 * What a date text says: when a thing was made, at the earliest and at the latest, and what else happened to it or its parts.
 * What the text leaves open is settled by house rules, which are settings (date-rules.ts); the text itself is kept.
 */
import { eventsFrom } from './date-events.ts';
import type { DateIssue, DateReading } from './date-reading.ts';
import { type DateRules, HOUSE_DATES } from './date-rules.ts';
import { dateTokens, MAX_DATE_TEXT } from './date-tokens.ts';

/** Reads English, German and French date texts; never throws, and what is not understood is in `issues`. */
export function dateFrom(text: string, options: Partial<DateRules> = {}): DateReading {
  const { events, issues } = eventsFrom(dateTokens(text), { ...HOUSE_DATES, ...options });
  const made = events.find(({ kind, part }) => kind === 'made' && part === undefined) ?? events[0];
  const cut: DateIssue[] =
    text.length > MAX_DATE_TEXT
      ? [
          {
            kind: 'not understood',
            where: 'date',
            what: 'Too long to be a date; only its beginning is read.',
            value: '',
          },
        ]
      : [];
  return {
    written: text,
    earliest: made?.earliest ?? null,
    latest: made?.latest ?? null,
    flags: made?.flags ?? [],
    edtf: made?.edtf ?? null,
    events,
    issues: [...issues, ...cut],
  };
}
