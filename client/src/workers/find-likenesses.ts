/** Sets, types and what goes with a thing, out of records: the engines put together, with the house's colours. */
import { colourNameOf } from '@enfilade/colour/colour-words';
import { deltaE2000 } from '@enfilade/colour/differences';
import { clustersOf } from '@enfilade/grouping/clusters';
import { dealtAgain } from '@enfilade/grouping/dealt-again';
import { echoesOf } from '@enfilade/grouping/echoes';
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

/** What of the types there are a thing goes with, and what echoes it: quick, so that a card need not wait. */
export function findBeside({ records, id, notFocal }: Extract<LikenessQuestion, { kind: 'beside' }>): Beside {
  const features = featuresOf(records);
  const options = { difference: deltaE2000, colourWords: colourNameOf };
  const kinds = kindsOf(features, options);
  const carriers = new Set(notFocal);
  const goes = goesWith(id, features, kinds, { ...options, mayBeFocal: (other) => !carriers.has(other) });
  const echoes = echoesOf([id], features, { ...options, count: ECHOES }).filter(({ score }) => score >= HEARD);
  return { goes, set: goes.set === undefined ? [] : (kinds[goes.set.at]?.members ?? []), echoes };
}
