/** Days as people write them. */

/** '9 May 2026' on this person's calendar. */
export function dayText(iso: string): string {
  return new Date(iso).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
}
