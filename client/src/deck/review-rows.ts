/** What a colour file would do to the deck: each paint beside its line, what is wrong of it, and where it goes. Pure. */
import { deltaE2000 } from '@enfilade/colour/differences';
import type { FileIssue, PaintFile } from '@enfilade/colour/paint-file';
import type { MeasuredPaint } from '@enfilade/colour/paints';
import type { PaintIn } from '@enfilade/shared/commands';
import { knownPaintOf, paintFrom } from '@enfilade/shared/paint-records';
import type { Paint, PaintId } from '@enfilade/shared/schema';

/** Where a paint goes: into the place of the one it is, as a new one, or nowhere. */
export type Way = 'corrects' | 'new' | 'out';

export interface ReviewRow {
  readonly where: string;
  readonly source: string;
  readonly measured: MeasuredPaint;
  readonly paint: Omit<Paint, 'order'>;
  readonly issues: readonly FileIssue[];
  /** The paint of the deck that it is, and how far it lies from it (ΔE00). */
  readonly known: { readonly id: PaintId; readonly paint: Paint; readonly deltaE: number } | null;
  /** The line of this file that says the same paint before. */
  readonly twice: string | null;
  readonly way: Way;
}

export interface Review {
  readonly rows: readonly ReviewRow[];
  /** Of lines that are left out, and of the file itself. */
  readonly leftOut: readonly FileIssue[];
}

/** 'deck.csv, line 7, L*' → 'line 7' and 'L*'. */
export function placeOf(issue: FileIssue, file: string): { readonly place: string; readonly field: string } {
  const rest = issue.where.startsWith(`${file}, `) ? issue.where.slice(file.length + 2) : '';
  const cut = rest.lastIndexOf(', ');
  return cut < 0 ? { place: rest, field: '' } : { place: rest.slice(0, cut), field: rest.slice(cut + 2) };
}

export function reviewOf(read: PaintFile, file: string, deck: ReadonlyMap<PaintId, Paint>): Review {
  const byPlace = new Map<string, FileIssue[]>();
  for (const issue of read.issues) {
    const { place } = placeOf(issue, file);
    byPlace.set(place, [...(byPlace.get(place) ?? []), issue]);
  }
  const before = new Map<string, string>();
  const rows = read.paints.map((measured, i): ReviewRow => {
    const { where = '', source = '' } = read.origins[i] ?? {};
    const paint = paintFrom(measured);
    const id = knownPaintOf(deck, measured);
    const there = id === null ? undefined : deck.get(id);
    const key = id ?? `${measured.name} ${measured.code ?? ''}`.toLowerCase();
    const twice = before.get(key) ?? null;
    if (twice === null) before.set(key, where);
    const known =
      id === null || there === undefined ? null : { id, paint: there, deltaE: deltaE2000(paint.lab, there.lab) };
    const way = twice !== null ? 'out' : known === null ? 'new' : 'corrects';
    const issues = byPlace.get(where) ?? [];
    byPlace.delete(where);
    return { where, source, measured, paint, issues, known, twice, way };
  });
  return { rows, leftOut: [...byPlace.values()].flat() };
}

/** Whether the file leaves L*a*b* without a white point, so that a person may say it. */
export function lacksWhite(read: PaintFile): boolean {
  return read.issues.some(({ where, value }) => where.endsWith(', white point') && value === '');
}

/** The paints that go in, as the command takes them. */
export function paintsIn(rows: readonly ReviewRow[], ways: ReadonlyMap<string, Way>): PaintIn[] {
  return rows.flatMap((row): PaintIn[] => {
    const way = ways.get(row.where) ?? row.way;
    if (way === 'out') return [];
    return [way === 'corrects' && row.known !== null ? { id: row.known.id, paint: row.paint } : { paint: row.paint }];
  });
}
