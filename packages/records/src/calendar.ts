/** Days that exist, by the Gregorian calendar reckoned back. */
import type { CalendarDate } from './date-reading.ts';

/** Whether the calendar knows such a day. */
export function isReal({ year, month, day }: CalendarDate): boolean {
  if (year === 0 || (month !== undefined && (month < 1 || month > 12))) return false;
  return day === undefined || (month !== undefined && day >= 1 && day <= lastDayOf(year, month));
}

/** Days of a month in the Gregorian calendar. */
function lastDayOf(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** So many years later; there is no year 0. */
export function shifted(date: CalendarDate, years: number): CalendarDate {
  if (years === 0) return date;
  const year = date.year + years;
  const crossed = date.year < 0 && year >= 0 ? year + 1 : date.year > 0 && year <= 0 ? year - 1 : year;
  return { ...date, year: crossed };
}
