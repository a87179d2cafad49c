/** Days of the show's calendar, as people name them. Pure; ISO dates in, words out. */

/** '14 May'; with the year where it is another than today's. */
export function shortDay(iso: string, today: string): string {
  const date = new Date(`${iso}T12:00:00`);
  const year = iso.slice(0, 4) === today.slice(0, 4) ? undefined : ('numeric' as const);
  return date.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', ...(year ? { year } : {}) });
}

export function todayIso(now = new Date()): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T12:00:00Z`) - Date.parse(`${from}T12:00:00Z`)) / 86_400_000);
}

export type Span = 'overdue' | 'this week' | 'before the hang' | 'later' | 'no day set';

/** When something is due, seen from today: a week is seven days, today counted in. */
export function spanOf(byDay: string | null, today: string, hangBegins: string): Span {
  if (byDay === null) return 'no day set';
  const days = daysBetween(today, byDay);
  if (days < 0) return 'overdue';
  if (days < 7) return 'this week';
  return hangBegins !== '' && byDay <= hangBegins ? 'before the hang' : 'later';
}

export const SPANS: readonly Span[] = ['overdue', 'this week', 'before the hang', 'later', 'no day set'];
