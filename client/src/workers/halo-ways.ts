/** Three ways to hang a halo: the first as loose as was asked for, two more unlike it; asked again, three others. Pure. */
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
  // Asked again, the person has seen what they asked for and wants others.
  if (exclude.length > 0) return others;
  // One more of the kind asked for would teach least beside it; of the rest, the nearest to it.
  const unlike = others.filter((other) => other.name !== first.name);
  const farthest = [...unlike].sort((a, b) => displacementMm(first, b) - displacementMm(first, a)).slice(0, 2);
  return [first, ...unlike.filter((other) => farthest.includes(other))];
}

function worthOf(candidate: HaloCandidate): number {
  return -10 * candidate.unplaced.length - candidate.measures.facingGapCv;
}
