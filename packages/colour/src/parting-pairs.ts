import { deltaE2000 } from './differences.ts';
import type { LabD65 } from './lab.ts';
import type { Light } from './lights.ts';
import { type Surface, seenUnder } from './seen.ts';

/** Two paints that match under one light and not under the other; ΔE00 under each. */
export interface PartingPair {
  readonly one: string;
  readonly other: string;
  readonly deltaEFirst: number;
  readonly deltaESecond: number;
}

export interface PartingOptions {
  /** Up to this ΔE00 two paints are taken for the same: 2, what a trained eye may miss, unless said. */
  readonly alike?: number;
  /** From this ΔE00 anyone sees two colours: 3.5 unless said. */
  readonly apart?: number;
}

/**
 * Pairs of paints that part company (or come together) between two lights, the widest step first, and the paints of which
 * nothing can be said because their reflectance was not measured. Each colour is seen by an eye settled to its light.
 */
export function partingPairsOf(
  paints: readonly { readonly id: string; readonly surface: Surface }[],
  first: Light,
  second: Light,
  { alike = 2, apart = 3.5 }: PartingOptions = {},
): { pairs: PartingPair[]; unjudged: string[] } {
  const judged = paints
    .filter(({ surface }) => surface.basis === 'reflectance')
    .map(({ id, surface }) => ({ id, first: seenUnder(surface, first), second: seenUnder(surface, second) }));
  const pairs: PartingPair[] = [];
  for (const [i, p] of judged.entries()) {
    for (const q of judged.slice(i + 1)) {
      if (isFarInLightness(p.first, q.first, alike) && isFarInLightness(p.second, q.second, alike)) continue;
      const deltaEFirst = deltaE2000(p.first, q.first);
      const deltaESecond = deltaE2000(p.second, q.second);
      if (Math.min(deltaEFirst, deltaESecond) > alike || Math.max(deltaEFirst, deltaESecond) < apart) continue;
      pairs.push({ one: p.id, other: q.id, deltaEFirst, deltaESecond });
    }
  }
  const step = (pair: PartingPair): number => Math.abs(pair.deltaESecond - pair.deltaEFirst);
  return {
    pairs: pairs.sort((p, q) => step(q) - step(p)),
    unjudged: paints.filter(({ surface }) => surface.basis !== 'reflectance').map(({ id }) => id),
  };
}

/** ΔE00 is never under ΔL* / 1.75, the largest S_L: such a pair cannot be alike. */
function isFarInLightness(p: LabD65, q: LabD65, alike: number): boolean {
  return Math.abs(p.L - q.L) > 1.75 * alike;
}
