/** Three ways to hang a halo: the first as loose as was asked for, two more that visibly differ from it. Pure. */
import { halo } from '@enfilade/arrangement/halo';
import { displacementMm, haloCandidates } from '@enfilade/arrangement/halo-candidates';
import type { HaloCandidate } from '@enfilade/arrangement/halo-task';
import type { HaloQuestion } from './halo-task.ts';

/** Tries of the way asked for; the one with most placed and most even gaps is kept. */
const TRIES = 3;
/** The share of the work that goes into the way asked for. */
const FIRST_SHARE = 0.25;

export function waysOf(question: HaloQuestion, progress: (share: number) => void): readonly HaloCandidate[] {
  const { engine, seed, exclude } = question;
  const { looseness, ...task } = engine;
  let asked: HaloCandidate | null = null;
  const tries = engine.pieces.length > 80 ? 1 : TRIES;
  for (let attempt = 0; attempt < tries; attempt++) {
    const candidate = halo({
      ...task,
      looseness,
      seed: seed * 7919 + attempt,
      progress: (done, of) => {
        progress((FIRST_SHARE * (attempt + done / of)) / tries);
        return true;
      },
    });
    if (asked === null || worthOf(candidate) > worthOf(asked)) asked = candidate;
  }
  if (asked === null) return [];
  const first = asked;
  const others = haloCandidates(
    {
      ...task,
      progress: (done, of) => {
        progress(FIRST_SHARE + (1 - FIRST_SHARE) * (done / of));
        return true;
      },
    },
    { seed, exclude: [first, ...exclude] },
  );
  // The nearest to what was asked for would teach least beside it.
  const farthest = [...others].sort((a, b) => displacementMm(first, b) - displacementMm(first, a)).slice(0, 2);
  return [first, ...others.filter((other) => farthest.includes(other))];
}

function worthOf(candidate: HaloCandidate): number {
  return -10 * candidate.unplaced.length - candidate.measures.facingGapCv;
}
