/** What is looked for: by which looks, among which things; kept in the address. */
import type { Look } from '@enfilade/grouping/columns';

export const LOOKS: readonly Look[] = ['colour', 'shape', 'size', 'use', 'age'];

/** Each look that is asked for counts, no other. */
export function weightsOf(looks: readonly Look[]): Record<Look, number> {
  return Object.fromEntries(LOOKS.map((look) => [look, looks.includes(look) ? 1 : 0])) as Record<Look, number>;
}

/** `unplaced`, `checklist`, or what came from one lender or source, by its name. */
export type Among = 'unplaced' | 'checklist' | { readonly from: string };

export interface LikenessWish {
  readonly looks: readonly Look[];
  readonly among: Among;
}

/** `colour-shape/unplaced`, `size/from/Parish%20of%20Saint%20Osk`. */
export function wishText({ looks, among }: LikenessWish): string {
  const pool = typeof among === 'string' ? among : `from/${encodeURIComponent(among.from)}`;
  return `${looks.join('-')}/${pool}`;
}

/** The wish a text says, or null when it says none. */
export function wishFrom(text: string): LikenessWish | null {
  const [first = '', pool, name = ''] = text.split('/');
  const asked = first.split('-');
  const looks = LOOKS.filter((look) => asked.includes(look));
  if (looks.length === 0) return null;
  if (pool === 'unplaced' || pool === 'checklist') return { looks, among: pool };
  if (pool !== 'from' || name === '') return null;
  try {
    return { looks, among: { from: decodeURIComponent(name) } };
  } catch {
    return null;
  }
}
