/** What was measured of an arrangement, in figures: mm, shares 0 … 1, ΔE2000. The screen puts them into words. */
import type { HangCandidate } from '@enfilade/arrangement/hang-task';
import type { MassCandidate } from '@enfilade/arrangement/mass-task';
import type { PlinthCandidate } from '@enfilade/arrangement/plinth-group';

export type ArrangementTerm =
  | { readonly kind: 'gaps'; readonly leastMm: number; readonly mostMm: number; readonly cv: number }
  | { readonly kind: 'void'; readonly mm: number }
  /** −1 … 1; positive is right. */
  | { readonly kind: 'balance'; readonly x: number }
  | { readonly kind: 'aligned'; readonly share: number }
  | { readonly kind: 'rhythm'; readonly mean: number; readonly cv: number }
  | { readonly kind: 'eye height'; readonly aboveMm: number; readonly centreLineMm: number }
  | { readonly kind: 'outline'; readonly widthMm: number; readonly heightMm: number; readonly fill?: number }
  | { readonly kind: 'in plan'; readonly widthMm: number; readonly depthMm: number }
  | { readonly kind: 'above reach'; readonly count: number; readonly reachMm: number }
  | { readonly kind: 'stands out'; readonly count: number; readonly mostMm: number }
  | { readonly kind: 'seen'; readonly leastShare: number }
  | { readonly kind: 'rows'; readonly count: number; readonly levels: number }
  | { readonly kind: 'risers'; readonly highestMm: number }
  | { readonly kind: 'density'; readonly perSquareMetre: number }
  | { readonly kind: 'narrow ways'; readonly count: number }
  | { readonly kind: 'over the load'; readonly mm: number }
  | { readonly kind: 'no room'; readonly count: number };

/** Of anything that hangs on one wall. */
export function termsOfHang(found: HangCandidate, centreLineMm: number): ArrangementTerm[] {
  const { measures, reasons } = found;
  const terms: ArrangementTerm[] = [{ kind: 'balance', x: measures.balanceX }];
  for (const reason of reasons) if (reason.kind === 'gaps') terms.push({ ...reason, cv: measures.facingGapCv });
  terms.push({ kind: 'void', mm: measures.largestVoidMm }, { kind: 'aligned', share: measures.alignment });
  if (measures.colourRhythm !== null) terms.push({ kind: 'rhythm', ...measures.colourRhythm });
  terms.push({ kind: 'eye height', aboveMm: measures.aboveCentreLineMm, centreLineMm });
  terms.push({ kind: 'outline', ...measures.outline });
  for (const reason of reasons) {
    if (reason.kind === 'above reach' || reason.kind === 'no room') terms.push(reason);
    if (reason.kind === 'stands out')
      terms.push({ kind: 'stands out', count: reason.pieces.length, mostMm: reason.mostMm });
  }
  return terms;
}

/** Of what is massed, level by level. */
export function termsOfMass(levels: readonly MassCandidate[], unplaced: number): ArrangementTerm[] {
  const used = levels.filter(({ places }) => places.some((at) => at !== null));
  const rows = used.reduce((sum, { measures }) => sum + measures.rows, 0);
  const weighed = used.map(({ measures, places }) => ({ measures, count: places.filter((at) => at !== null).length }));
  const all = weighed.reduce((sum, { count }) => sum + count, 0) || 1;
  const mean = (of: (one: MassCandidate['measures']) => number) =>
    weighed.reduce((sum, { measures, count }) => sum + of(measures) * count, 0) / all;
  const highestMm = Math.max(0, ...used.flatMap(({ places }) => places.map((at) => at?.liftMm ?? 0)));
  return [
    { kind: 'rows', count: rows, levels: used.length },
    { kind: 'seen', leastShare: Math.min(1, ...used.map(({ measures }) => measures.leastSeen)) },
    { kind: 'balance', x: mean(({ balanceX }) => balanceX) },
    { kind: 'density', perSquareMetre: mean(({ perSquareMetre }) => perSquareMetre) },
    ...(highestMm > 0 ? [{ kind: 'risers', highestMm } as const] : []),
    ...(unplaced > 0 ? [{ kind: 'no room', count: unplaced } as const] : []),
  ];
}

export function termsOfPlinths({ measures, unplaced }: PlinthCandidate): ArrangementTerm[] {
  return [
    { kind: 'balance', x: measures.balanceX },
    { kind: 'seen', leastShare: measures.leastSeen },
    { kind: 'in plan', ...measures.outline },
    ...(measures.narrowWays > 0 ? [{ kind: 'narrow ways', count: measures.narrowWays } as const] : []),
    ...(unplaced.length > 0 ? [{ kind: 'no room', count: unplaced.length } as const] : []),
  ];
}
