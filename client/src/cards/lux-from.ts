/** Reads a number of lux as typed ('50', '50 lux'); empty: none. Answers what is wrong, or null once it is taken. */
export function luxFrom(typed: string, take: (lux: number | null) => boolean): string | null {
  const lux = typed === '' ? null : Number(typed.replace(/\s*(lux|lx)$/i, '').replace(',', '.'));
  if (lux !== null && !(lux > 0 && lux <= 100_000)) return 'a number of lux above 0; empty for none of its own';
  return take(lux) ? null : 'cannot be set just now';
}
