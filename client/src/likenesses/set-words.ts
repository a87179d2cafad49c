/** Sets and types in the words of the page. */
import type { Kind } from '@enfilade/grouping/kinds';
import type { Likeness } from '@enfilade/grouping/likeness';
import { capital } from '@enfilade/shared/surface-names';
import type { SetWords } from './found-set.tsx';

export const figure = (value: number): string => value.toFixed(2);

export function wordsOfSet(set: Likeness): SetWords {
  const by = set.found === 'by density' ? 'where things lie close' : 'by who shares neighbours';
  return {
    members: set.members,
    title: capital(set.reasons.map(({ words }) => words).join(', ')),
    reason: `${set.together.words}.`,
    standing: `${capital(set.strength)}: ${figure(set.stability)} of it comes back when a fifth is left away; ${figure(set.tightness)} closer than things of the same types, where chance reached ${figure(set.chance)}. Found ${by}.`,
    besides: set.nearMisses,
    besidesAre: 'Near misses',
  };
}

export function wordsOfKind(kind: Kind): SetWords {
  return {
    members: kind.members,
    title: `${capital(kind.type)}, ${kind.members.length}`,
    reason: `${kind.together.words}.`,
    standing: 'Of one type, as the checklist says: no discovery.',
    besides: kind.unlike,
    besidesAre: 'Unlike the others in it',
  };
}
