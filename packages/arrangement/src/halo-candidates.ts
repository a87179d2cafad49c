import { halo } from './halo.ts';
import type { HaloCandidate, HaloTask } from './halo-task.ts';
import { seeded } from './seeded.ts';

type Style = Pick<HaloTask, 'looseness' | 'roominess' | 'across' | 'leanDegrees'>;

/** How far two candidates must lie apart, in mean sizes of a piece, to be worth showing both. */
const APART = 1;

/**
 * Three visibly different halos of one task: an even one, a loose one that leans, and one with wider gaps and another
 * outline, wide or tall as the surface has room. Of several tries of each, the one kept is good by itself (all placed,
 * low spread for the even one, small void) and far from those kept before and from `exclude` (maximal marginal
 * relevance). Fewer than three only when stopped by `progress`. The same seed has the same answer.
 */
export function haloCandidates(
  task: Omit<HaloTask, 'seed' | 'looseness' | 'roominess' | 'across' | 'leanDegrees'>,
  options: { readonly seed: number; readonly exclude?: readonly Pick<HaloCandidate, 'places'>[] },
): readonly HaloCandidate[] {
  const random = seeded(options.seed);
  const { surface, focal, progress } = task;
  const roomUp = Math.min(surface.topMm - focal.yMm, focal.yMm - surface.bottomMm) - focal.heightMm / 2;
  const roomAcross = Math.min(surface.rightMm - focal.xMm, focal.xMm - surface.leftMm) - focal.widthMm / 2;
  const tall = roomUp > roomAcross;
  const leanRight = surface.rightMm - focal.xMm > focal.xMm - surface.leftMm;
  const styles: readonly Style[] = [
    { looseness: 0 },
    { looseness: 0.7, leanDegrees: leanRight ? 20 : 160 },
    { looseness: 0.3, roominess: 2.2, across: tall ? 0.5 : 2.4 },
  ];
  const tries = task.pieces.length > 80 ? 1 : 3;
  const steps = styles.length * tries;
  const sizeMm =
    task.pieces.reduce((sum, { widthMm, heightMm }) => sum + (widthMm + heightMm) / 2, 0) / (task.pieces.length || 1);
  const kept: HaloCandidate[] = [];
  for (const [index, style] of styles.entries()) {
    let best: HaloCandidate | undefined;
    let most = -Infinity;
    for (let attempt = 0; attempt < tries; attempt++) {
      const before = index * tries + attempt;
      const candidate = halo({
        ...task,
        ...style,
        seed: Math.floor(random() * 2 ** 32),
        ...(progress && { progress: (done: number, of: number) => progress(before + done / of, steps) }),
      });
      if (candidate.reasons.some(({ kind }) => kind === 'stopped')) return kept;
      const nearest = [...kept, ...(options.exclude ?? [])].reduce(
        (least, other) => Math.min(least, displacementMm(candidate, other)),
        Infinity,
      );
      const apart = Math.min(1, nearest / (APART * (sizeMm || 1)));
      const { facingGapCv, largestVoidMm } = candidate.measures;
      const good = -facingGapCv * (1 - style.looseness) - (0.2 * largestVoidMm) / (sizeMm || 1);
      const worth = good + 2 * apart - 10 * candidate.unplaced.length;
      if (worth > most) [best, most] = [candidate, worth];
    }
    if (best) kept.push(best);
  }
  return kept;
}

/** How far the pieces of one candidate lie from where another has them, on average (mm), over those placed in both. */
export function displacementMm(a: Pick<HaloCandidate, 'places'>, b: Pick<HaloCandidate, 'places'>): number {
  let sum = 0;
  let both = 0;
  a.places.forEach((place, i) => {
    const other = b.places[i];
    if (!place || !other) return;
    sum += Math.hypot(place.xMm - other.xMm, place.yMm - other.yMm);
    both++;
  });
  return both === 0 ? 0 : sum / both;
}
