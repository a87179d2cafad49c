/** Sets, types and what goes with a thing, out of records: the engines put together, with the house's colours. */
import { colourNameOf } from '@enfilade/colour/colour-words';
import { deltaE2000 } from '@enfilade/colour/differences';
import { clustersOf } from '@enfilade/grouping/clusters';
import type { Look } from '@enfilade/grouping/columns';
import { dealtAgain } from '@enfilade/grouping/dealt-again';
import { type Echo, echoesOf } from '@enfilade/grouping/echoes';
import { type Features, featuresOf } from '@enfilade/grouping/features';
import { goesWith } from '@enfilade/grouping/goes-with';
import { kindsOf } from '@enfilade/grouping/kinds';
import { LOOKS, weightsOf } from '../likenesses/wish.ts';
import type { Beside, FoundSets, LikenessQuestion, SetsByLooks } from './likeness-task.ts';

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

/** All looks together, then each by itself: what is alike in shape alone is lost among five. */
const LOOKED_BY: readonly (readonly Look[])[] = [LOOKS, ...LOOKS.map((look) => [look])];

function setsByLooks(features: Features, progress: (share: number) => void): SetsByLooks[] {
  return LOOKED_BY.map((looks, turn) => {
    const told = (share: number): void => progress((turn + share) / LOOKED_BY.length);
    const options = { weights: weightsOf(looks), colourWords: colourNameOf, progress: told };
    return { looks, sets: clustersOf(features, options).sets };
  });
}

/**
 * What a thing goes with: a set that was found and that it is in, else one it would join, else the others of its type; the
 * focal work that would carry them, and a companion.
 */
export function findBeside(
  { records, id, notFocal, sets }: Extract<LikenessQuestion, { kind: 'beside' }>,
  progress: (share: number) => void,
): Beside {
  const features = featuresOf(records);
  const found = sets ?? setsByLooks(features, progress);
  const carriers = new Set(notFocal);
  const mayBeFocal = (other: string) => !carriers.has(other);
  const options = { difference: deltaE2000, colourWords: colourNameOf, mayBeFocal };
  const joined = found.flatMap(({ looks, sets: some }) => {
    if (some.length === 0) return [];
    const goes = goesWith(id, features, some, { ...options, weights: weightsOf(looks) });
    const likeness = goes.set === undefined ? undefined : some[goes.set.at];
    return likeness === undefined ? [] : [{ goes, set: { kind: 'found', likeness, looks } as const }];
  });
  const first = joined.find(({ set }) => set.likeness.members.includes(id)) ?? joined[0];
  if (first !== undefined) return { ...first, sets: found };
  const kinds = kindsOf(features, options);
  const goes = goesWith(id, features, kinds, options);
  const members = goes.set === undefined ? undefined : kinds[goes.set.at]?.members;
  return { goes, set: members === undefined ? null : { kind: 'type', members }, sets: found };
}

/** What echoes it: quick, so that a card need not wait. */
export function findEchoes({ records, id }: Extract<LikenessQuestion, { kind: 'echoes' }>): readonly Echo[] {
  const options = { difference: deltaE2000, colourWords: colourNameOf, count: ECHOES };
  return echoesOf([id], featuresOf(records), options).filter(({ score }) => score >= HEARD);
}
