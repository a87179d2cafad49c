/** Sets, types and what goes with a thing, out of records: the engines put together, with the house's colours. */
import { colourNameOf } from '@enfilade/colour/colour-words';
import { deltaE2000 } from '@enfilade/colour/differences';
import { clustersOf } from '@enfilade/grouping/clusters';
import { dealtAgain } from '@enfilade/grouping/dealt-again';
import { type Echo, echoesOf } from '@enfilade/grouping/echoes';
import { featuresOf } from '@enfilade/grouping/features';
import { goesWith } from '@enfilade/grouping/goes-with';
import { kindsOf } from '@enfilade/grouping/kinds';
import type { Beside, FoundSets, LikenessQuestion } from './likeness-task.ts';

/** More are no card's matter; the first are the best. */
const ECHOES = 6;
// Common practice, no source: an echo under this is one that nobody would see.
const HEARD = 0.15;

export function findSets(
  { records, weights, dealt }: Extract<LikenessQuestion, { kind: 'sets' }>,
  progress: (share: number) => void,
): FoundSets {
  const from = performance.now();
  const features = featuresOf(dealt ? dealtAgain(records, 1) : records);
  const options = { weights, colourWords: colourNameOf };
  const likenesses = clustersOf(features, { ...options, progress });
  const kinds = dealt ? [] : kindsOf(features, options);
  return { likenesses, kinds, ms: performance.now() - from };
}

/**
 * What a thing goes with: a set that was found and that it is in or would join, else the others of its type; the focal work
 * that would carry them, and a companion.
 */
export function findBeside(
  { records, id, notFocal, sets }: Extract<LikenessQuestion, { kind: 'beside' }>,
  progress: (share: number) => void,
): Beside {
  const features = featuresOf(records);
  const colourWords = colourNameOf;
  const found = sets ?? clustersOf(features, { colourWords, progress }).sets;
  const carriers = new Set(notFocal);
  const options = { difference: deltaE2000, colourWords, mayBeFocal: (other: string) => !carriers.has(other) };
  const goes = goesWith(id, features, found, options);
  if (goes.set !== undefined) return { goes, set: found[goes.set.at] ?? null, sets: found };
  const kinds = kindsOf(features, options);
  const byType = goesWith(id, features, kinds, options);
  const members = byType.set === undefined ? undefined : kinds[byType.set.at]?.members;
  return { goes: byType, set: members === undefined ? null : { members }, sets: found };
}

/** What echoes it: quick, so that a card need not wait. */
export function findEchoes({ records, id }: Extract<LikenessQuestion, { kind: 'echoes' }>): readonly Echo[] {
  const options = { difference: deltaE2000, colourWords: colourNameOf, count: ECHOES };
  return echoesOf([id], featuresOf(records), options).filter(({ score }) => score >= HEARD);
}
