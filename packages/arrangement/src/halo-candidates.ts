import { halo } from './halo.ts';
import type { HaloCandidate, HaloTask } from './halo-task.ts';
import { seeded } from './seeded.ts';

type Style = Pick<HaloTask, 'looseness' | 'roominess' | 'across' | 'leanDegrees'>;

/** How far two candidates must lie apart, in mean sizes of a piece, to be worth showing both. */
const APART = 1;
/** Above so many pieces one try of each has to do, and gaps are less generous. */
const MANY = 80;

/**
 * Three visibly different halos of one task: an even one, a loose one with wider and more varied gaps, and one that
 * leans and tapers off to the side with more room; asked again, a wide or tall one instead of the even, leaning the
 * other way. Of several tries of each, the one kept is good by itself (all placed, low spread for the even one, small
 * void) and far from those kept before and from `exclude` (maximal marginal relevance). Fewer than three only when
 * stopped by `progress`. The same seed has the same answer.
 */
export function haloCandidates(
  task: Omit<HaloTask, 'seed' | 'looseness' | 'roominess' | 'across' | 'leanDegrees'>,
  options: { readonly seed: number; readonly exclude?: readonly Pick<HaloCandidate, 'places'>[] },
): readonly HaloCandidate[] {
  const random = seeded(options.seed);
  const { progress } = task;
  const tries = task.pieces.length > MANY ? 1 : 3;
  const styles = stylesOf(task, (options.exclude?.length ?? 0) >= 3);
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

function stylesOf(
  { surface, focal, pieces, reachMm }: Pick<HaloTask, 'surface' | 'focal' | 'pieces' | 'reachMm'>,
  again: boolean,
): readonly Style[] {
  const room = {
    right: surface.rightMm - focal.xMm,
    left: focal.xMm - surface.leftMm,
    above: surface.topMm - focal.yMm,
    below: focal.yMm - surface.bottomMm,
  };
  const tall =
    Math.min(room.above, room.below) - focal.heightMm / 2 > Math.min(room.right, room.left) - focal.widthMm / 2;
  const upward = Math.min(room.above, (reachMm ?? Infinity) - focal.yMm) > room.below ? 1 : -1;
  const [toRight, toLeft] = tall ? [65, 115] : [25, 155];
  const leanDegrees = upward * (room.right > room.left !== again ? toRight : toLeft);
  const many = pieces.length > MANY;
  return [
    again ? { looseness: 0.3, roominess: 2.2, across: tall ? 0.5 : 2.4 } : { looseness: 0 },
    { looseness: 0.85, roominess: many ? 1.6 : again ? 2.8 : 2.2 },
    { looseness: 0.6, roominess: many ? 1.2 : 1.6, leanDegrees },
  ];
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
