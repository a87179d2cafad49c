/** Figures that state the ones before them again: `24 x 36 in. (61 x 91.4 cm)`, `62.2 cm / 24 1/2 in.`. */
import type { ChainFigure, ReadChain } from './measure-chains.ts';
import { isLength, isMetric, MM_PER, type Unit } from './measure-units.ts';

/** Near enough to be the same measure, though perhaps wrong. */
const NEAR_MM = 5;

/**
 * The chains of `first` (all, or the last) that `figures` repeat in order; null where they do not. `sure`: brackets or a
 * stroke say that they do; else one of the figures has to agree. Repeated in the same system, they say nothing new.
 */
export function repeatedBy(
  first: readonly ReadChain[],
  figures: readonly ChainFigure[],
  sure: boolean,
): { readonly chains: readonly ReadChain[]; readonly nothingNew: boolean } | null {
  const counts = (reads: readonly ReadChain[]) => reads.reduce((sum, read) => sum + read.figures.length, 0);
  const chains = [first, first.slice(-1)].find((reads) => reads.length > 0 && counts(reads) === figures.length);
  if (chains === undefined || chains.some(({ second }) => second !== null)) return null;
  const pairs = chains.flatMap((read) => read.figures).map((figure, i) => [figure, figures[i] as ChainFigure] as const);
  const named = pairs.every(([a, b]) => a.axis === null || b.axis === null || a.axis === b.axis);
  if (!named || pairs.some(([, { unit }]) => !isLength(unit))) return null;
  const agreeing = pairs.filter(([a, b]) => Math.abs(mmOf(a) - mmOf(b)) <= NEAR_MM).length;
  const same = pairs.filter(([a, b]) => isOneSystem(a.unit, b.unit)).length;
  if (same === pairs.length && sure && agreeing === pairs.length) return { chains, nothingNew: true };
  return same > 0 || (!sure && agreeing === 0) ? null : { chains, nothingNew: false };
}

/** NaN without a unit. */
function mmOf({ figure, unit }: ChainFigure): number {
  return isLength(unit) ? figure.value * MM_PER[unit] : Number.NaN;
}

function isOneSystem(a: Unit | null, b: Unit | null): boolean {
  return isLength(a) && isLength(b) && isMetric(a) === isMetric(b);
}
