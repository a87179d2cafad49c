import { differences } from './differences.ts';
import type { LabD65 } from './lab.ts';

/** ΔE00 at which two paints are no longer one choice twice: e-folding of their likeness. */
const ALIKE = 12;

/**
 * Indices of at most `most` of the scored colours, best first, each weighed against its likeness to those before it
 * (maximal marginal relevance, Carbonell & Goldstein 1998): `diversity` 0 takes the best scores, towards 1 the most unlike.
 * RangeError when diversity is outside 0..1.
 */
export function diverseOf(
  labs: readonly LabD65[],
  scores: ArrayLike<number>,
  most: number,
  diversity: number,
): number[] {
  if (!(diversity >= 0 && diversity <= 1)) throw new RangeError(`diverseOf: diversity ${diversity} is outside 0..1`);
  const triples = Float64Array.from(labs.flatMap(({ L, a, b }) => [L, a, b]));
  const nearest = new Float64Array(labs.length).fill(Number.POSITIVE_INFINITY);
  const to = new Float64Array(labs.length);
  const chosen: number[] = [];
  const taken = new Uint8Array(labs.length);
  while (chosen.length < Math.min(most, labs.length)) {
    let best = -1;
    let worth = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < labs.length; i++) {
      if (taken[i] !== 0) continue;
      const alike = chosen.length === 0 ? 0 : Math.exp(-nearest[i]! / ALIKE);
      const now = (1 - diversity) * scores[i]! - diversity * alike;
      if (now > worth) {
        worth = now;
        best = i;
      }
    }
    taken[best] = 1;
    chosen.push(best);
    differences(triples, labs[best]!, to);
    for (let i = 0; i < labs.length; i++) nearest[i] = Math.min(nearest[i]!, to[i]!);
  }
  return chosen;
}
